import { evaluateCoupon, flowOf, madeCoupon } from '@hoopwright/core/steel';
import { describe, expect, test } from 'vitest';
import { readCouponFile } from './coupon.ts';
import type { CouponHints } from './hints.ts';
import { noteText } from './note.ts';

const seeded = (seed: number) => () => {
  seed = (seed * 48271) % 2147483647;
  return seed / 2147483647;
};
const { test: made, truth } = madeCoupon(
  {
    flow: flowOf({ law: 'swift', K: 1313, n: 0.457, e0: 0.0289 }),
    young: 196_500,
    rate: 2.3e-4,
    points: { elastic: 44, yield: 51, plastic: 83, neck: 17 },
    neck: { strain: 0.083, left: 0.71 },
    noise: { strain: 2e-6, stress: 0.3 },
  },
  seeded(29),
);

const table = (
  head: string,
  row: (e: number, s: number, t: number) => string,
  lines: readonly string[] = [],
) => `${[...lines, head, ...made.strain.map((e, k) => row(e, made.stress[k], made.time![k]))].join('\n')}\n`;
const dotted = table('Strain (mm/mm),Stress (MPa)', (e, s) => `${e.toFixed(7)},${s.toFixed(2)}`);

const proofOf = (file: string | Uint8Array, hints: CouponHints = {}) => {
  const read = readCouponFile(file, hints);
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return { proof: evaluateCoupon(read.test).proof02! / truth.proof02, notes: read.notes.map(noteText), read };
};
const issueOf = (file: string, hints: CouponHints = {}) => {
  const read = readCouponFile(file, hints);
  if (read.ok) throw new Error(`no issue, but ${read.notes.map(noteText).join('; ')}`);
  return read.issues[0];
};

describe('what is read without a word', () => {
  test.each([
    ['points between commas', dotted],
    [
      'commas between semicolons',
      table('Dehnung [%];Spannung [MPa]', (e, s) => `${(100 * e).toFixed(5)};${s.toFixed(2)}`).replaceAll(
        '.',
        ',',
      ),
    ],
    [
      'columns of blanks with wide headings',
      table(
        'Strain [mm/mm]   Stress [MPa]',
        (e, s) => `${e.toFixed(7).padStart(14)}${s.toFixed(2).padStart(15)}`,
      ),
    ],
    [
      'thousands parted by blanks',
      table(
        'Force (N);Extension (mm)',
        (e, s) => {
          const force = (s * 31.2).toFixed(1);
          return `${force.replace(/^(\d+)(\d{3})\./, '$1 $2.')};${(e * 50).toFixed(5)}`;
        },
        ['Area: 31.2 mm2', 'Gauge length: 50 mm'],
      ).replaceAll('.', ','),
    ],
    [
      'kN, inches and a diameter',
      table(
        'Load [kN]\tDisplacement [in]',
        (e, s) => `${(s * 0.0314159265).toFixed(6)}\t${(e * 2).toFixed(7)}`,
        ['Diameter: 6.32455532 mm', 'Gauge length: 2 in'],
      ),
    ],
    [
      'a dict before the table',
      table('strain, stress_MPa', (e, s) => `${e.toExponential(9)}, ${s.toExponential(9)}`, [
        "{'temperature': 21.5, 'rate': 0.00023 }",
      ]),
    ],
    ['psi and per cent', table('Strain %|Stress, psi', (e, s) => `${100 * e}|${s / 0.006894757}`)],
  ])('%s', (_, file) => {
    const { proof, notes } = proofOf(file);
    expect(Math.abs(proof - 1)).toBeLessThan(0.005);
    expect(notes).toEqual([]);
  });
});

describe('what is taken for granted is said', () => {
  test('ksi without a name', () => {
    const { proof, notes } = proofOf(table('strain,stress', (e, s) => `${e},${s / 6.894757}`));
    expect(Math.abs(proof - 1)).toBeLessThan(0.005);
    expect(notes).toEqual([expect.stringContaining('taken as ksi')]);
  });

  test('two columns without headings, the wrong way round', () => {
    const { proof, notes } = proofOf(
      made.stress.map((s, k) => `${s.toFixed(3)},${(100 * made.strain[k]).toFixed(6)}`).join('\n'),
    );
    expect(Math.abs(proof - 1)).toBeLessThan(0.005);
    expect(notes[0]).toContain('"column 2" is taken as strain in %');
  });

  test('true strain and true stress are turned back', () => {
    const { proof, notes } = proofOf(
      table('True strain [mm/mm],True stress [MPa]', (e, s) => `${Math.log1p(e)},${s * (1 + e)}`),
    );
    expect(Math.abs(proof - 1)).toBeLessThan(0.005);
    expect(notes).toEqual([expect.stringContaining('engineering')]);
  });

  test('a gauge length without a unit', () => {
    const file = table('Force (N),Extension (mm)', (e, s) => `${s * 20},${e * 80}`, [
      'Area: 20 mm2',
      'L0: 80',
    ]);
    expect(proofOf(file).notes).toEqual(['line 2: l0 80: no unit that is known; taken as mm']);
  });
});

describe('what is left out is named', () => {
  const torn = (last: string) => `${dotted}${last}`;
  const rowsOf = (file: string) => proofOf(file).read.test.strain.length;

  test('a last line that the file breaks off, in its fields or within a figure', () => {
    const line = made.strain.length + 2;
    expect(proofOf(torn('0.70')).notes[0]).toMatch(new RegExp(`^line ${line}: not 2 fields`));
    // The stress has come down to 2 MPa by then; a strain of 0.07 behind 0.7 is a torn one.
    expect(proofOf(torn('0.07,2')).notes[0]).toMatch(
      new RegExp(`^line ${line}: the file ends within this line`),
    );
    expect(proofOf(torn('0.07,2\n')).notes).toEqual([]);
  });

  test('a row that comes twice, with its time', () => {
    const timed = table('Time (s),Strain (mm/mm),Stress (MPa)', (e, s, t) => `${t},${e},${s}`).split('\n');
    timed.splice(60, 0, timed[59]);
    const { notes } = proofOf(timed.join('\n'));
    expect(notes).toEqual(['line 61: the same as the row before; left out']);
    expect(rowsOf(timed.join('\n'))).toBe(made.strain.length);
  });

  test('a row out of its place, and a clock that cannot be used', () => {
    const timed = table('Time (s),Strain (mm/mm),Stress (MPa)', (e, s, t) => `${t},${e},${s}`).split('\n');
    const swapped = [...timed.slice(0, 70), timed[71], timed[70], ...timed.slice(72)];
    expect(proofOf(swapped.join('\n')).notes).toEqual(['line 72: time runs back; left out']);
    const mad = timed.map((line, k) => (k % 9 === 4 ? line.replace(/^[\d.]+/, '0.5') : line)).join('\n');
    expect(proofOf(mad).notes[0]).toContain('time runs back; the order of the lines is kept');
    expect(evaluateCoupon(proofOf(mad).read.test).rate).toBeUndefined();
  });

  test('a machine that counts a pull negative is turned round, and said', () => {
    const { proof, notes } = proofOf(table('Strain (mm/mm),Stress (MPa)', (e, s) => `${e},${-s}`));
    expect(Math.abs(proof - 1)).toBeLessThan(0.005);
    expect(notes).toEqual(['the load is negative throughout: taken as tension']);
  });
});

describe('what the person says rules', () => {
  test('columns by number, by heading and by heading without its unit', () => {
    const file = table('t,a,Stress (MPa),b', (e, s, t) => `${t},${e},${s},${e * 3}`);
    for (const strain of ['2', 'a', 'A'])
      expect(Math.abs(proofOf(file, { strain, stress: 'stress' }).proof - 1)).toBeLessThan(0.005);
  });

  test('force is used where it is named, though there is stress', () => {
    const file = table('Strain (mm/mm),Stress (MPa),Load (N)', (e, s) => `${e},${s * 1.5},${s * 20}`);
    expect(Math.abs(proofOf(file, { force: 'Load', area: 20 }).proof - 1)).toBeLessThan(0.005);
  });

  test('a unit that contradicts the heading is used, and said', () => {
    const file = table('Strain (mm/mm),Stress (MPa)', (e, s) => `${e},${s / 6.894757}`);
    expect(proofOf(file, { stressUnit: 'ksi' }).notes[0]).toContain('is read in ksi as you say, not in MPa');
  });

  test('the decimal sign, where 1,234 could be either', () => {
    const file = table('Strain (mm/mm);Stress (MPa)', (e, s) => `${e.toFixed(7)};${Math.abs(s).toFixed(3)}`)
      .split('\n')
      .filter((line) => !/;\d?\d?\.|;0/.test(line))
      .map((line) => line.replace(/(\d{2,3})\.(\d{3})$/, '$1,$2'))
      .join('\n');
    const asked = issueOf(file);
    expect(asked.path).toMatch(/^line \d+$/);
    expect(asked.suggestion).toContain('--decimal');
    const { stress } = proofOf(file, { decimal: ',' }).read.test;
    expect(Math.max(...stress)).toBeCloseTo(Math.max(...made.stress), 2);
  });
});

describe('what is asked', () => {
  test('a misspelt column has a near one named', () => {
    expect(issueOf(dotted, { strain: 'Strian (mm/mm)', stress: '2' })).toMatchObject({
      path: '--strain',
      suggestion: 'did you mean "Strain (mm/mm)"?',
    });
  });

  test('force without a cross-section, extension without a gauge length', () => {
    const file = table('Force (N),Extension (mm)', (e, s) => `${s * 20},${e * 80}`);
    const read = readCouponFile(file);
    expect(read.ok ? [] : read.issues.map(({ path }) => path)).toEqual(['gauge length', 'cross-section']);
  });

  test('per cent named as a fraction, with the mend in the suggestion', () => {
    const issue = issueOf(table('Strain (mm/mm),Stress (MPa)', (e, s) => `${100 * e},${s}`));
    expect(issue.suggestion).toContain('--strain-unit %');
  });

  test('MPa named as ksi', () => {
    expect(issueOf(dotted.replace('MPa', 'ksi')).suggestion).toContain('--stress-unit MPa');
  });

  test('inches named as mm', () => {
    const file = table('Force (N),Extension (mm)', (e, s) => `${s * 20},${(e * 80) / 25.4}`, [
      'Area: 20 mm2',
      'Gauge length: 80 mm',
    ]);
    expect(issueOf(file).suggestion).toContain('--extension-unit inch');
  });

  test('columns that changed places', () => {
    const issue = issueOf(table('Stress (MPa),Strain (mm/mm)', (e, s) => `${e},${s}`));
    expect(issue.suggestion).toContain('changed places');
  });

  test('a decimal comma between commas names the first such line', () => {
    const file = table('Strain (mm/mm),Stress (MPa)', (e, s) => `${e.toFixed(7)},${s.toFixed(2)}`).replace(
      /(\d)\.(\d)/g,
      '$1,$2',
    );
    expect(issueOf(file)).toMatchObject({
      path: 'line 2',
      suggestion: expect.stringContaining('semicolons'),
    });
  });

  test('half of it true, half of it engineering', () => {
    expect(issueOf(dotted.replace('Stress', 'True stress')).received).toBe('one of each');
  });

  test('a second test in the same file names its line', () => {
    expect(issueOf(dotted + dotted).path).toBe(`line ${made.strain.length + 2}`);
  });

  test('a file without figures', () => {
    expect(issueOf('dear colleague,\nhere are the results.\n')).toMatchObject({ path: 'line 1' });
    expect(issueOf('').received).toBe('an empty file');
  });
});

test('crosshead travel is known by its heading', () => {
  const file = table('Crosshead (mm),Force (N)', (e, s) => `${e * 80 + s / 900},${s * 20}`, [
    'Area: 20 mm2',
    'Gauge length: 80 mm',
  ]);
  expect(proofOf2(file)).toBe('crosshead');
});
const proofOf2 = (file: string) => {
  const read = readCouponFile(file);
  return read.ok ? read.test.extension : JSON.stringify(read.issues);
};

test('what the lines before the table say of the specimen is kept', () => {
  const head = [
    '# INVENTED figures',
    '# Coupon: across the seam',
    '# Seam width: 6,5 mm',
    '# Gauge length: 50 mm',
    '# Broke: in the weld',
    '# Preload stress: 402 MPa',
    '# Preload strain: 9 %',
    '# Plate: A 7',
    '# Heat no.: 31-4',
    '# Temperature: 21,5 °C',
  ];
  const file = table('Strain (mm/mm);Stress (MPa)', (e, s) => `${e};${s}`, head);
  expect(proofOf(file).read.specimen).toEqual({
    gauge: 50,
    seamWidth: 6.5,
    preloadStress: 402,
    preloadStrain: 0.09,
    plate: 'A 7',
    heat: '31-4',
    temperature: 21.5,
    coupon: 'across the seam',
    broke: 'seam',
    invented: true,
    notes: [],
  });
});
