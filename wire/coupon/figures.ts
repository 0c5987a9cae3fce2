/** The fields of the used columns become numbers, and rows that cannot are left out and named. */
import { type Issue, shown } from '../issue/issue.ts';
import { decimalOf, type DecimalAnswer, type DecimalSign, numberIn, witnessOf } from './sheet/decimal.ts';
import { type CouponHints, OPTION } from './hints.ts';
import { type Note, noteOnLines } from './note.ts';
import type { Column, Picked } from './pick.ts';
import type { Row } from './sheet/row.ts';
import type { Table } from './sheet/table.ts';

export interface Figures {
  readonly stretch: readonly number[];
  readonly load: readonly number[];
  readonly time?: readonly number[];
  /** Line of each row that was kept. */
  readonly lines: readonly number[];
}

export type FiguresRead =
  | { readonly ok: true; readonly figures: Figures; readonly notes: readonly Note[] }
  | { readonly ok: false; readonly issues: Issue[] };

/** More unreadable rows than this part of all: the file is not understood. */
const UNREADABLE = 0.2;
/** A test has at least this many rows; fewer are a list of results or a torn file. */
export const FEWEST_ROWS = 5;

export const figuresOf = (table: Table, picked: Picked, hints: CouponHints): FiguresRead => {
  const columns = [picked.stretch, picked.load, ...(picked.time ? [picked.time] : [])];
  const signs = signsOf(table, columns, hints);
  if (!signs.ok) return signs;
  const read = table.rows.map((row) =>
    columns.map((column, k) => numberIn(row.fields[column.index], signs.decimals[k])),
  );
  const bad = table.rows.filter((_, k) => !whole(read[k]));
  const broken = table.broken.filter(({ fields }) => fields.some((field) => /\d/.test(field)));
  const unreadable = [...bad, ...broken].toSorted((a, b) => a.line - b.line);
  const kept = table.rows.length - bad.length;
  if (kept < FEWEST_ROWS) return { ok: false, issues: [tooFew(table, unreadable, kept)] };
  if (unreadable.length > UNREADABLE * kept)
    return { ok: false, issues: [notUnderstood(unreadable, columns)] };
  const good = read.filter(whole);
  return {
    ok: true,
    figures: {
      stretch: good.map((values) => values[0]),
      load: good.map((values) => values[1]),
      ...(picked.time && { time: good.map((values) => values[2]) }),
      lines: table.rows.filter((_, k) => whole(read[k])).map(({ line }) => line),
    },
    notes: [...signs.notes, ...leftOut(bad, columns, signs.decimals), ...textNotes(table, broken)],
  };
};

const whole = (values: (number | undefined)[]): values is number[] =>
  values.every((value) => value !== undefined);

type Signs =
  | { readonly ok: true; readonly decimals: readonly DecimalSign[]; readonly notes: readonly Note[] }
  | { readonly ok: false; readonly issues: Issue[] };

const signsOf = (table: Table, columns: readonly Column[], hints: CouponHints): Signs => {
  const fields = columns.map(({ index }) => table.rows.map((row) => row.fields[index]));
  const elsewhere = commonSign(fields);
  const answers = fields.map((column) =>
    decimalOf(column, { ...(elsewhere && { elsewhere }), ...(hints.decimal && { wish: hints.decimal }) }),
  );
  const issues = answers.flatMap((answer, k) => decimalIssue(answer, columns[k], table.rows));
  if (issues.length > 0) return { ok: false, issues };
  const settled = answers.flatMap((answer) => (answer.kind === 'sign' ? [answer] : []));
  const notes = settled.flatMap(({ grouped, decimal }, k): Note[] => {
    if (!grouped) return [];
    const group = decimal === '.' ? 'comma' : 'point';
    return [
      { says: `${shown(columns[k].name)}: a ${group} before three figures is read as a sign of thousands` },
    ];
  });
  return { ok: true, decimals: settled.map(({ decimal }) => decimal), notes };
};

/** The sign that most fields of all columns testify to; undefined where none does. */
const commonSign = (fields: readonly (readonly string[])[]): DecimalSign | undefined => {
  const witnesses = fields.flat().map(witnessOf);
  const points = witnesses.filter((witness) => witness === '.').length;
  const commas = witnesses.filter((witness) => witness === ',').length;
  if (points === commas) return undefined;
  return points > commas ? '.' : ',';
};

const decimalIssue = (answer: DecimalAnswer, column: Column, rows: readonly Row[]): Issue[] => {
  if (answer.kind === 'sign') return [];
  const line = rows[answer.place].line;
  const suggestion = `say which sign parts the decimals: ${OPTION.decimal} . or ${OPTION.decimal} ,`;
  const expected =
    answer.kind === 'ask'
      ? `figures of ${shown(column.name)} whose decimal sign is clear`
      : `one decimal sign throughout ${shown(column.name)}`;
  const doubt = answer.kind === 'ask' ? ', which may be one number or a thousand times another' : '';
  return [{ path: `line ${line}`, expected, received: `${shown(answer.field)}${doubt}`, suggestion }];
};

const leftOut = (
  bad: readonly Row[],
  columns: readonly Column[],
  decimals: readonly DecimalSign[],
): Note[] => {
  if (bad.length === 0) return [];
  const [{ fields }] = bad;
  const column =
    columns.find(({ index }, k) => numberIn(fields[index], decimals[k]) === undefined) ?? columns[0];
  const came = fields[column.index] === '' ? 'nothing' : shown(fields[column.index]);
  const says = `${shown(column.name)} holds ${came}, which is no figure`;
  return [
    noteOnLines(
      bad.map(({ line }) => line),
      `${says}; left out`,
    ),
  ];
};

const textNotes = (table: Table, broken: readonly Row[]): Note[] => {
  const text = table.broken.filter((row) => !broken.includes(row));
  return [
    ...(broken.length === 0
      ? []
      : [
          noteOnLines(
            broken.map(({ line }) => line),
            `not ${table.width} fields like the others; left out`,
          ),
        ]),
    ...(text.length === 0
      ? []
      : [
          noteOnLines(
            text.map(({ line }) => line),
            'text among the figures; left out',
          ),
        ]),
  ];
};

const tooFew = (table: Table, unreadable: readonly Row[], kept: number): Issue => ({
  path: unreadable.length > 0 ? `line ${unreadable[0].line}` : `line ${table.rows[0].line}`,
  expected: `a test: at least ${FEWEST_ROWS} rows of figures, better hundreds`,
  received: `${kept} readable row${kept === 1 ? '' : 's'}${unreadable.length > 0 ? `, and ${unreadable.length} that cannot be read` : ''}`,
});

const notUnderstood = (unreadable: readonly Row[], columns: readonly Column[]): Issue => ({
  path: `line ${unreadable[0].line}`,
  expected: `figures in ${columns.map(({ name }) => shown(name)).join(' and ')}`,
  received: `${shown(unreadable[0].text)}, and ${unreadable.length - 1} more rows that cannot be read`,
  suggestion: `check the sign between the fields and the decimal sign (${OPTION.decimal} . or ,)`,
});
