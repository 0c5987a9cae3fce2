import { describe, expect, test } from 'vitest';
import { GRADES, gradeNamed, md30, minimaOf, physicalOf, strengthenedOf, typicalOf } from './grade.ts';
import { MINIMA, TYPICAL } from './library.ts';

describe('the grade library', () => {
  test('has least values and physical figures for every grade, each with its source', () => {
    for (const grade of GRADES) {
      const rows = [...minimaOf(grade, 'cold-rolled'), ...physicalOf(grade)];
      expect(minimaOf(grade, 'cold-rolled').length, grade).toBeGreaterThan(0);
      expect(
        physicalOf(grade).some(({ density }) => density !== undefined),
        grade,
      ).toBe(true);
      for (const row of rows) expect(row.source.length, grade).toBeGreaterThan(5);
    }
  });

  test('where sources differ both rows are shown', () => {
    const rows = minimaOf('1.4307', 'hot-rolled');
    expect(rows.map(({ proof02 }) => proof02).sort((a, b) => (a ?? 0) - (b ?? 0))).toEqual([200, 220]);
    expect(new Set(rows.map(({ confidence }) => confidence)).size).toBe(2);
    expect(physicalOf('1.4307').flatMap(({ young }) => young ?? [])).toEqual([200_000, 195_000]);
  });

  test('no row contradicts itself', () => {
    for (const row of MINIMA) {
      expect(row.proof02).toBeLessThan(row.proof10 ?? Infinity);
      expect(row.proof10 ?? row.proof02).toBeLessThan(row.strength);
      expect(row.strength).toBeLessThan(row.strengthTo ?? Infinity);
    }
    for (const row of TYPICAL) {
      const least = minimaOf(row.grade, row.form)[0];
      if (least !== undefined)
        expect(row.proof02, `${row.grade} ${row.thickness}`).toBeGreaterThan(least.proof02);
    }
  });

  test('a grade is found however it is written', () => {
    expect(gradeNamed('1.4307')).toBe('1.4307');
    expect(gradeNamed('EN 1.4307')).toBe('1.4307');
    expect(gradeNamed('304L')).toBe('ASTM 304L');
    expect(gradeNamed('astm 316l')).toBe('ASTM 316L');
    expect(gradeNamed('S355')).toBeUndefined();
  });

  test('the strengthened proof stress agrees with the design stress seen in print', () => {
    // EN 13458-2: 273 MPa for 1.4301 is 410/1.5 (printed to whole MPa).
    expect(Math.round((strengthenedOf('1.4301')[0].proof ?? 0) / 1.5)).toBe(273);
  });

  test('typical values are those of the producer data page', () => {
    expect(typicalOf('1.4404').map(({ proof02 }) => proof02)).toEqual([300, 300, 260]);
  });

  test('Md30 follows its formula, element by element', () => {
    const plain = { C: 0, N: 0, Si: 0, Mn: 0, Cr: 0, Ni: 0, Mo: 0 };
    expect(md30(plain)).toBe(413);
    // By hand: 413 - 462 x 0.06 - 9.2 x 0.5 - 8.1 x 1.5 - 13.7 x 18.1 - 9.5 x 8.1 - 18.5 x 0.3
    //        = 413 - 27.72 - 4.6 - 12.15 - 247.97 - 76.95 - 5.55 = 38.06
    expect(md30({ C: 0.02, N: 0.04, Si: 0.5, Mn: 1.5, Cr: 18.1, Ni: 8.1, Mo: 0.3 })).toBeCloseTo(38.06, 9);
  });
});
