import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { difference } from './difference.ts';

const tank = {
  name: 'Dunlin 2',
  heads: { top: { wall_mm: 2 }, bottom: { wall_mm: 2.5 } },
  courses: [
    { length_mm: 800, wall_mm: 1.5 },
    { length_mm: 750, wall_mm: 2 },
  ],
  girths: [
    { name: 'belt', at_mm: 400 },
    { name: 'low ring', at_mm: 120 },
  ],
};

describe('the difference of two versions', () => {
  it('is nothing when only the spelling changed', () => {
    expect(difference(JSON.parse('{"a":1.50,"b":[2e3]}'), JSON.parse('{ "b": [2000], "a": 1.5 }'))).toEqual(
      [],
    );
  });

  it('takes minus nothing for nothing', () => {
    expect(difference(JSON.parse('[-0.0]'), [0])).toEqual([]);
  });

  it('names the place, what stood there and what stands there', () => {
    const after = structuredClone(tank);
    after.courses[1].wall_mm = 1.75;
    after.heads.top.wall_mm = 3;
    expect(difference(tank, after)).toEqual([
      { path: 'heads.top.wall_mm', before: 2, after: 3 },
      { path: 'courses[1].wall_mm', before: 2, after: 1.75 },
    ]);
  });

  it('tells a place that is new from one that is gone', () => {
    const { name: _, ...nameless } = tank;
    expect(difference(tank, nameless)).toStrictEqual([{ path: 'name', before: 'Dunlin 2' }]);
    expect(difference(nameless, tank)).toStrictEqual([{ path: 'name', after: 'Dunlin 2' }]);
  });

  it('shows one course put in between as one course, not as all the later ones changed', () => {
    const put = { length_mm: 333, wall_mm: 1.2 };
    const after = { ...tank, courses: [tank.courses[0], put, tank.courses[1]] };
    expect(difference(tank, after)).toEqual([{ path: 'courses[1]', after: put }]);
    expect(difference(after, tank)).toEqual([{ path: 'courses[1]', before: put }]);
  });

  it('shows a course copied onto the end as the last one', () => {
    const [course] = tank.courses;
    expect(difference([course], [course, course])).toStrictEqual([{ path: '[1]', after: course }]);
  });

  it('follows a named entry by its name', () => {
    const after = { ...tank, girths: [{ name: 'low ring', at_mm: 130 }] };
    expect(difference(tank, after)).toEqual([
      { path: 'girths["belt"]', before: tank.girths[0] },
      { path: 'girths["low ring"].at_mm', before: 120, after: 130 },
    ]);
  });

  it('shows named entries that have changed places', () => {
    const after = { ...tank, girths: tank.girths.toReversed() };
    expect(difference(tank, after).map(({ path }) => path)).toEqual([
      'girths[0].name',
      'girths[0].at_mm',
      'girths[1].name',
      'girths[1].at_mm',
    ]);
  });

  it('shows a whole value that became another kind of value', () => {
    expect(difference([1], { 0: 1 })).toEqual([{ path: 'the file', before: [1], after: { 0: 1 } }]);
    expect(difference({ 'a b': null }, { 'a b': 0 })).toEqual([{ path: '"a b"', before: null, after: 0 }]);
  });

  it('is empty exactly when the two mean the same, whatever they are', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (a, b) => {
        expect(difference(a, structuredClone(a))).toEqual([]);
        expect(difference(a, b).length > 0).toBe(meaning(a) !== meaning(b));
      }),
    );
  });
});

/** An independent view of sameness: JSON text with its keys sorted (-0 is 0 in JSON text). */
const meaning = (value: unknown): string =>
  JSON.stringify(value, (_, item: unknown) =>
    typeof item === 'object' && item !== null && !Array.isArray(item)
      ? Object.fromEntries(Object.entries(item).sort(([a], [b]) => (a < b ? -1 : 1)))
      : item,
  );
