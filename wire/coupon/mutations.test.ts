/** 500 spoilt files of made-up tests: each gives the true figures, or says what is wrong; no wrong figure in silence. */
import { type CouponTruth, evaluateCoupon, flowOf, madeCoupon } from '@hoopwright/core/steel';
import { describe, expect, test } from 'vitest';
import { noteText } from './note.ts';
import { readCouponFile } from './coupon.ts';

const AREA = 25.3;
const GAUGE = 50;
const MPA_PER_KSI = 6.894757;

/** Park & Miller, Commun. ACM 31 (1988) 1192. */
const dice = (seed: number) => () => {
  seed = (seed * 48271) % 2147483647;
  return seed / 2147483647;
};

interface Sheet {
  preface: string[];
  heads: string[];
  rows: string[][];
  delimiter: string;
  decimal: '.' | ',';
  truth: CouponTruth;
  kind: 'stress' | 'force';
  percent: boolean;
}

/** A clean file in one of the usual manners; read as it stands it gives no warning at all. */
const clean = (seed: number): Sheet => {
  const roll = dice(7919 * seed + 13);
  for (let k = 0; k < 5; k++) roll();
  const flow =
    roll() < 0.5
      ? flowOf({ law: 'swift', K: 1270 + 90 * roll(), n: 0.45, e0: 0.028 + 0.006 * roll() })
      : flowOf({ law: 'voce', yield: 262 + 30 * roll(), rise: 960 + 80 * roll(), steepness: 2.4 });
  const { test: made, truth } = madeCoupon(
    {
      flow,
      young: 193_000 + 6000 * roll(),
      rate: 2.4e-4,
      points: { elastic: 60, yield: 60, plastic: 90, neck: 20 },
      neck: { strain: 0.07, left: 0.7 },
      noise: { strain: 3e-6, stress: 0.35 },
    },
    roll,
  );
  const kind = roll() < 0.5 ? 'stress' : 'force';
  const percent = roll() < 0.5;
  const decimal = roll() < 0.4 ? ',' : '.';
  const delimiter = decimal === ',' ? pickOne([';', '\t'], roll) : pickOne([',', ';', '\t', '|'], roll);
  const write = (value: number, digits: number) => value.toFixed(digits).replace('.', decimal);
  const rows = made.strain.map((strain, k) => [
    write(made.time![k], 2),
    kind === 'force' ? write(strain * GAUGE, 5) : percent ? write(100 * strain, 5) : write(strain, 7),
    kind === 'force' ? write(made.stress[k] * AREA, 1) : write(made.stress[k], 2),
  ]);
  const strainUnit = percent ? '%' : 'fraction';
  const heads =
    kind === 'force'
      ? ['Time (s)', 'Extension (mm)', 'Force (N)']
      : ['Time (s)', `Strain (${strainUnit})`, 'Stress (MPa)'];
  const preface =
    kind === 'force' ? [`Area: ${write(AREA, 1)} mm2`, `Gauge length: ${GAUGE} mm`] : ['Specimen P7'];
  return { preface, heads, rows, delimiter, decimal, truth, kind, percent };
};

const pickOne = <T>(list: readonly T[], roll: () => number): T => list[Math.floor(roll() * list.length)];

const text = ({ preface, heads, rows, delimiter }: Sheet): string =>
  `${[...preface, heads.join(delimiter), ...rows.map((row) => row.join(delimiter))].join('\n')}\n`;

/** Line of row k in the text. */
const lineOf = ({ preface }: Sheet, k: number): number => preface.length + 2 + k;

interface Spoilt {
  readonly file: string | Uint8Array;
  /** Line that was touched, where it was one. */
  readonly line?: number;
  /** Figures cannot come out right: something must be said. */
  readonly mustSay?: boolean;
  /** Nothing is wrong with the file: the figures must come out right. */
  readonly mustRead?: boolean;
}

type Spoil = (sheet: Sheet, roll: () => number) => Spoilt | undefined;

const scaled = (sheet: Sheet, column: number, factor: number, digits = 6): Sheet => ({
  ...sheet,
  rows: sheet.rows.map((row) =>
    row.map((field, k) =>
      k === column
        ? (Number(field.replace(',', '.')) * factor).toFixed(digits).replace('.', sheet.decimal)
        : field,
    ),
  ),
});
const headed = (sheet: Sheet, column: number, head: string): Sheet => ({
  ...sheet,
  heads: sheet.heads.map((old, k) => (k === column ? head : old)),
});
const rowsOf = (sheet: Sheet, change: (rows: string[][]) => string[][]): Sheet => ({
  ...sheet,
  rows: change(sheet.rows.map((row) => [...row])),
});
const anyRow = (sheet: Sheet, roll: () => number): number =>
  8 + Math.floor(roll() * (sheet.rows.length - 16));
const says = (sheet: Sheet): Spoilt => ({ file: text(sheet), mustSay: true });
const reads = (file: string | Uint8Array): Spoilt => ({ file, mustRead: true });
const cellChanged = (sheet: Sheet, roll: () => number, change: (field: string) => string): Spoilt => {
  const k = anyRow(sheet, roll);
  const column = 1 + Math.floor(roll() * 2);
  const spoilt = rowsOf(sheet, (rows) =>
    rows.map((row, j) => (j === k ? row.map((f, c) => (c === column ? change(f) : f)) : row)),
  );
  return { file: text(spoilt), line: lineOf(sheet, k) };
};

const utf16 = (words: string, mark: boolean): Uint8Array => {
  const marked = `${mark ? '\uFEFF' : ''}${words}`;
  const codes = Array.from({ length: marked.length }, (_, k) => marked.charCodeAt(k));
  return Uint8Array.from(codes.flatMap((code) => [code & 255, code >> 8]));
};

const SPOILS: Readonly<Record<string, Spoil>> = {
  // The four that the work asks for by name
  'MPa labelled ksi': (s) => (s.kind === 'stress' ? says(headed(s, 2, 'Stress (ksi)')) : undefined),
  'ksi labelled MPa': (s) => (s.kind === 'stress' ? says(scaled(s, 2, 1 / MPA_PER_KSI)) : undefined),
  'psi labelled MPa': (s) => (s.kind === 'stress' ? says(scaled(s, 2, 1000 / MPA_PER_KSI)) : undefined),
  'per cent labelled fraction': (s) =>
    s.kind === 'stress' && s.percent ? says(headed(s, 1, 'Strain (mm/mm)')) : undefined,
  'fraction labelled per cent': (s) =>
    s.kind === 'stress' && !s.percent ? says(headed(s, 1, 'Strain (%)')) : undefined,
  'mm labelled inch': (s) => (s.kind === 'force' ? says(headed(s, 1, 'Extension (in)')) : undefined),
  'inch labelled mm': (s) => (s.kind === 'force' ? says(scaled(s, 1, 1 / 25.4)) : undefined),
  'gauge length in inches labelled mm': (s) =>
    s.kind === 'force' ? says({ ...s, preface: [s.preface[0], 'Gauge length: 2 mm'] }) : undefined,
  'N labelled kN': (s) => (s.kind === 'force' ? says(headed(s, 2, 'Force (kN)')) : undefined),
  'kN labelled N': (s) => (s.kind === 'force' ? says(scaled(s, 2, 0.001)) : undefined),
  'N labelled lbf': (s) => (s.kind === 'force' ? says(headed(s, 2, 'Force (lbf)')) : undefined),
  'lbf labelled N': (s) => (s.kind === 'force' ? says(scaled(s, 2, 1 / 4.4482)) : undefined),
  'section in cm2 labelled mm2': (s) =>
    s.kind === 'force' ? says({ ...s, preface: ['Area: 0.253 mm2', s.preface[1]] }) : undefined,
  'decimal comma between commas': (s) =>
    s.decimal === ',' ? { file: text({ ...s, delimiter: ',' }), mustSay: true } : undefined,
  'decimal point lost throughout a column': (s) =>
    says(rowsOf(s, (rows) => rows.map((row) => row.map((f, c) => (c === 2 ? f.replace(/[.,]/, '') : f))))),
  'thousands with the other sign': (s) => {
    if (s.kind !== 'force' || s.delimiter === ',') return undefined;
    const group = s.decimal === '.' ? ',' : '.';
    const grouped = (field: string) => field.replace(/^(\d+)(\d{3})(?=[.,])/, `$1${group}$2`);
    return { file: text(rowsOf(s, (rows) => rows.map((row) => [row[0], row[1], grouped(row[2])]))) };
  },
  'whole thousands with the other sign': (s) => {
    if (s.kind !== 'force' || s.delimiter === ',') return undefined;
    const group = s.decimal === '.' ? ',' : '.';
    const whole = (field: string) => field.replace(/[.,]\d+$/, '').replace(/^(\d+)(\d{3})$/, `$1${group}$2`);
    return { file: text(rowsOf(s, (rows) => rows.map((row) => [row[0], row[1], whole(row[2])]))) };
  },
  'three decimals after a comma among points': (s) => {
    if (s.kind !== 'stress' || s.decimal !== '.' || s.delimiter === ',') return undefined;
    const comma = (field: string) => Number(field).toFixed(3).replace('.', ',');
    return { file: text(rowsOf(s, (rows) => rows.map((row) => [row[0], row[1], comma(row[2])]))) };
  },
  'one cell with the other decimal sign': (s, roll) =>
    s.delimiter === ','
      ? undefined
      : cellChanged(s, roll, (f) => f.replace(/[.,]/, s.decimal === '.' ? ',' : '.')),
  // Headings
  'no units at all': (s) => ({
    file: text({ ...s, heads: s.heads.map((head) => head.replace(/ \(.*/, '')) }),
  }),
  'no headings': (s) => ({
    file: text(s)
      .split('\n')
      .filter((line) => !line.includes('Time'))
      .join('\n'),
  }),
  'headings that change places': (s) => says({ ...s, heads: [s.heads[0], s.heads[2], s.heads[1]] }),
  'headings that mean nothing': (s) => says({ ...s, heads: ['A', 'B', 'C'] }),
  'a strange unit': (s) => says(headed(s, 2, s.kind === 'force' ? 'Force (dyn)' : 'Stress (tsi)')),
  'no gauge length': (s) => (s.kind === 'force' ? says({ ...s, preface: [s.preface[0]] }) : undefined),
  'no section': (s) => (s.kind === 'force' ? says({ ...s, preface: [s.preface[1]] }) : undefined),
  'minutes labelled seconds': (s) => says(scaled(s, 0, 1 / 60, 5)),
  'seconds labelled minutes': (s) => says(headed(s, 0, 'Time (min)')),
  // Rows
  'a row gone': (s, roll) => {
    const k = anyRow(s, roll);
    return { file: text(rowsOf(s, (rows) => rows.filter((_, j) => j !== k))) };
  },
  'twenty rows gone': (s, roll) => {
    const k = anyRow(s, roll);
    return { file: text(rowsOf(s, (rows) => rows.filter((_, j) => j < k || j > k + 20))) };
  },
  'a row twice': (s, roll) => {
    const k = anyRow(s, roll);
    return {
      file: text(rowsOf(s, (rows) => rows.flatMap((row, j) => (j === k ? [row, row] : [row])))),
      line: lineOf(s, k + 1),
    };
  },
  'two rows change places': (s, roll) => {
    const k = anyRow(s, roll);
    const swap = (rows: string[][]) =>
      rows.map((row, j) => (j === k ? rows[k + 1] : j === k + 1 ? rows[k] : row));
    return { file: text(rowsOf(s, swap)), line: lineOf(s, k + 1) };
  },
  'rows from the end first': (s) => says(rowsOf(s, (rows) => rows.toReversed())),
  'the test twice': (s) => says(rowsOf(s, (rows) => [...rows, ...rows])),
  'the file twice': (s) => ({ file: text(s) + text(s), mustSay: true }),
  'headings only': (s) => says({ ...s, rows: [] }),
  'three rows only': (s) => says(rowsOf(s, (rows) => rows.slice(40, 43))),
  'an empty file': () => ({ file: '', mustSay: true }),
  'text in the middle': (s, roll) => {
    const k = anyRow(s, roll);
    const lines = text(s).split('\n');
    lines.splice(
      lineOf(s, k) - 1,
      0,
      pickOne(['Extensometer removed', '', '# pause', 'Operator: ---'], roll),
    );
    return { file: lines.join('\n') };
  },
  'cut anywhere': (s, roll) => {
    const whole = text(s);
    return { file: whole.slice(0, Math.floor(whole.length * (0.25 + 0.75 * roll()))) };
  },
  'a broken last line': (s) => ({ file: text(s).slice(0, -9), line: lineOf(s, s.rows.length - 1) }),
  'only every sixth row': (s) => ({ file: text(rowsOf(s, (rows) => rows.filter((_, j) => j % 6 === 0))) }),
  // Cells
  'an empty cell': (s, roll) => cellChanged(s, roll, () => ''),
  'a word in a cell': (s, roll) =>
    cellChanged(s, roll, () => pickOne(['NaN', '---', 'n/a', '#REF!', '1.2.3,4'], roll)),
  'a lost decimal sign in a cell': (s, roll) => cellChanged(s, roll, (f) => f.replace(/[.,]/, '')),
  'a cell times ten': (s, roll) =>
    cellChanged(s, roll, (f) => (Number(f.replace(',', '.')) * 10).toFixed(4).replace('.', s.decimal)),
  'a cell with a minus': (s, roll) => cellChanged(s, roll, (f) => `-${f}`),
  'a letter for a figure': (s, roll) => cellChanged(s, roll, (f) => `${f.slice(0, 1)}o${f.slice(2)}`),
  'one sign more between fields': (s, roll) => cellChanged(s, roll, (f) => `${f}${s.delimiter}`),
  // The machine
  'pulls that count negative': (s) => ({
    file: text(
      rowsOf(s, (rows) =>
        rows.map((row) => [row[0], row[1], row[2].startsWith('-') ? row[2].slice(1) : `-${row[2]}`]),
      ),
    ),
    mustSay: true,
  }),
  'force zeroed under load': (s) => shifted(s, 2, s.kind === 'force' ? 45 * AREA : 45),
  'extension that begins late': (s) => shifted(s, 1, s.kind === 'force' ? 0.1 : s.percent ? 0.2 : 0.002),
  'a load cell at its limit': (s) => limited(s, 2, 0.8),
  'an extensometer at its end': (s) => limited(s, 1, 0.4),
  'an extensometer that slips': (s, roll) => {
    const k = 105 + Math.floor(roll() * 60);
    const jump = (s.kind === 'force' ? GAUGE : s.percent ? 100 : 1) * 0.02;
    const moved = (f: string) => (Number(f.replace(',', '.')) + jump).toFixed(6).replace('.', s.decimal);
    return {
      file: text(rowsOf(s, (rows) => rows.map((row, j) => (j > k ? [row[0], moved(row[1]), row[2]] : row)))),
      line: lineOf(s, k + 1),
      mustSay: true,
    };
  },
  // Harmless
  'as it stands': (s) => reads(text(s)),
  'a byte order mark': (s) => reads(`\uFEFF${text(s)}`),
  'UTF-16 with its mark': (s) => reads(utf16(text(s), true)),
  'UTF-16 without': (s) => reads(utf16(text(s), false)),
  'line ends of Windows': (s) => reads(text(s).replaceAll('\n', '\r\n')),
  'line ends of an old machine': (s) => reads(text(s).replaceAll('\n', '\r')),
  'quotes round every field': (s) =>
    reads(
      text({
        ...s,
        heads: s.heads.map((f) => `"${f}"`),
        rows: s.rows.map((row) => row.map((f) => `"${f}"`)),
      }),
    ),
  'a sign after the last field': (s) => reads(text({ ...s, rows: s.rows.map((row) => [...row, '']) })),
  'a blank before every field': (s) =>
    reads(text({ ...s, rows: s.rows.map((row) => row.map((f) => ` ${f}`)) })),
  'units in a row of their own': (s) => {
    const units = s.heads.map((head) => /\((.*)\)/.exec(head)![1]);
    return reads(
      text({ ...s, heads: s.heads.map((head) => head.replace(/ \(.*/, '')), rows: [units, ...s.rows] }),
    );
  },
  'German headings': (s) =>
    reads(
      text({
        ...s,
        heads:
          s.kind === 'force'
            ? ['Zeit [s]', 'Verlängerung [mm]', 'Standardkraft [N]']
            : ['Zeit [s]', `Dehnung [${s.percent ? '%' : 'mm/mm'}]`, 'Spannung [MPa]'],
      }),
    ),
  'powers of ten': (s) =>
    reads(
      text(
        rowsOf(s, (rows) =>
          rows.map((row) =>
            row.map((f) => Number(f.replace(',', '.')).toExponential(8).replace('.', s.decimal)),
          ),
        ),
      ),
    ),
};

const shifted = (s: Sheet, column: number, by: number): Spoilt =>
  says(
    rowsOf(s, (rows) =>
      rows.map((row) =>
        row.map((f, c) =>
          c === column ? (Number(f.replace(',', '.')) + by).toFixed(6).replace('.', s.decimal) : f,
        ),
      ),
    ),
  );

const limited = (s: Sheet, column: number, part: number): Spoilt => {
  const values = s.rows.map((row) => Number(row[column].replace(',', '.')));
  const most = part * Math.max(...values);
  return says(
    rowsOf(s, (rows) =>
      rows.map((row, j) =>
        row.map((f, c) => (c === column && values[j] > most ? most.toFixed(4).replace('.', s.decimal) : f)),
      ),
    ),
  );
};

interface Outcome {
  readonly said: readonly string[];
  /** Figures that came out wrong, with what came and what is true. */
  readonly wrong: readonly string[];
  readonly issues: boolean;
}

/** Tolerances of a test with this noise: E 2 %, proof strengths 1 %, Rm 0.5 %, Ag 6 % (plateau), A 2 %, rate 2 %. */
const TOLERANCE = {
  young: 0.02,
  proof02: 0.01,
  proof10: 0.01,
  strength: 0.005,
  uniform: 0.06,
  elongation: 0.02,
} as const;

const outcome = (file: string | Uint8Array, truth: CouponTruth): Outcome => {
  const read = readCouponFile(file);
  if (!read.ok)
    return { said: read.issues.map((issue) => Object.values(issue).join(' | ')), wrong: [], issues: true };
  const result = evaluateCoupon(read.test);
  const found = result.findings.map((finding) => {
    const line = 'at' in finding ? `line ${read.lines[finding.at]}: ` : '';
    return `${line}${JSON.stringify(finding)}`;
  });
  const wrong = (Object.keys(TOLERANCE) as (keyof typeof TOLERANCE)[]).flatMap((key) => {
    const ours = result[key];
    const off = ours === undefined ? Infinity : Math.abs(ours / truth[key] - 1);
    return off > TOLERANCE[key] ? [`${key} ${ours} for ${truth[key]}`] : [];
  });
  const rateOff = result.rate === undefined || Math.abs(result.rate / 2.4e-4 - 1) > 0.02;
  return {
    said: [...read.notes.map(noteText), ...found],
    wrong: rateOff ? [...wrong, `rate ${result.rate}`] : wrong,
    issues: false,
  };
};

/** Messages speak of "line 17", "lines 17 and 18"; a neighbour will do, since a jump lies between two lines. */
const namesLine = (said: readonly string[], line: number): boolean =>
  said.some((words) => {
    const lines = [...words.matchAll(/lines? ([\d, and]+)/g)].flatMap(([, list]) => list.match(/\d+/g) ?? []);
    return lines.some((number) => Math.abs(Number(number) - line) <= 1);
  });

const names = Object.keys(SPOILS);

describe('500 spoilt files', () => {
  const cases = Array.from({ length: 4000 }, (_, k) => k).flatMap((k) => {
    const name = names[k % names.length];
    const roll = dice(k + 1);
    roll();
    const sheet = clean(1 + (k % 97));
    const spoilt = SPOILS[name](sheet, roll);
    return spoilt ? [{ k, name, sheet, spoilt }] : [];
  });
  const chosen = cases.slice(0, 500);

  test('there are 500, and every kind is among them', () => {
    expect(chosen).toHaveLength(500);
    expect(new Set(chosen.map(({ name }) => name)).size).toBe(names.length);
  });

  test.each(names)('%s', (name) => {
    for (const { k, sheet, spoilt } of chosen.filter((one) => one.name === name)) {
      const { said, wrong, issues } = outcome(spoilt.file, sheet.truth);
      const story = `case ${k}, ${sheet.kind}, "${sheet.delimiter}" "${sheet.decimal}": ${said.join('; ') || 'nothing said'}; ${wrong.join(', ')}`;
      if (spoilt.mustRead) expect(`${issues} ${wrong.join(', ')} ${said.join('; ')}`, story).toBe('false  ');
      else if (spoilt.mustSay) expect(said.length, story).toBeGreaterThan(0);
      else expect(issues || wrong.length === 0 || said.length > 0, story).toBe(true);
      if (spoilt.line !== undefined && (issues || wrong.length > 0))
        expect(namesLine(said, spoilt.line), story).toBe(true);
    }
  });
});
