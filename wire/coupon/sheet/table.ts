/** The rows of a file fall into what stands before the table, its headings, its figures, and lines that are neither. */
import { looksNumeric } from './decimal.ts';
import { type Heading, headingOf } from './column.ts';
import { fieldsOf, type Row, type Rows } from './row.ts';
import { isUnitWord } from './unit.ts';

export interface Table {
  /** Lines before the headings. */
  readonly preface: readonly Row[];
  /** One per column; empty where the file has none. */
  readonly headings: readonly Heading[];
  readonly headingLine?: number;
  readonly width: number;
  /** Rows of the full width, though a field may be empty or no figure. */
  readonly rows: readonly Row[];
  /** Rows after the first figures that have another width: broken, or text. */
  readonly broken: readonly Row[];
  /** Headings that come again: another test in the same file. */
  readonly again?: number;
}

/** Undefined where no two lines after each other hold figures side by side. */
export const tableOf = ({ rows, delimiter }: Rows): Table | undefined => {
  const width = commonWidth(rows.filter(isData));
  const start = rows.findIndex((row) => isData(row) && widthOf(row) === width);
  if (start < 0) return undefined;
  const before = rows.slice(0, start);
  const wide = (row: Row): Row =>
    widthOf(row) === width ? row : { ...row, fields: looseFields(row.text, delimiter, width) };
  const head = before.map(wide);
  const under = head.length > 0 && isUnits(head[head.length - 1], width) ? head.length - 1 : head.length;
  const at = under - 1;
  const headed = at >= 0 && isHeading(head[at], width);
  const after = rows.slice(start);
  const full = after.filter((row) => widthOf(row) === width && row.fields.filter(looksNumeric).length > 0);
  const broken = after.filter((row) => !full.includes(row));
  const again = broken.find((row) => headed && row.fields.join() === before[at].fields.join());
  return {
    preface: before.slice(0, headed ? at : under),
    headings: headed ? headingsOf(head[at], head[under]) : [],
    ...(headed && { headingLine: head[at].line }),
    width,
    rows: full,
    broken,
    ...(again && { again: again.line }),
  };
};

/** Empty fields at the end come from a sign after the last figure. */
const widthOf = ({ fields }: Row): number => fields.findLastIndex((field) => field !== '') + 1;

const isData = (row: Row): boolean => {
  const written = row.fields.filter((field) => field !== '');
  const figures = written.filter(looksNumeric).length;
  return figures >= 2 && figures >= written.length / 2;
};

const commonWidth = (rows: readonly Row[]): number => {
  const counts = new Map<number, number>();
  for (const row of rows) counts.set(widthOf(row), (counts.get(widthOf(row)) ?? 0) + 1);
  return [...counts].toSorted((a, b) => b[1] - a[1])[0]?.[0] ?? 0;
};

/** Headings of blank-parted tables hold blanks themselves: two or more part them, or brackets close them. */
const looseFields = (line: string, delimiter: Rows['delimiter'], width: number): readonly string[] => {
  if (delimiter !== 'blank') return fieldsOf(line, delimiter).slice(0, width);
  const wide = line.trim().split(/\t|\s{2,}/);
  if (wide.length === width) return wide;
  const closed = line.trim().match(/[^[(]+?\s*[[(][^\])]*[\])]|\S+/g) ?? [];
  return closed.length === width ? closed.map((field) => field.trim()) : fieldsOf(line, delimiter);
};

const isUnits = (row: Row, width: number): boolean =>
  row.fields.length <= width && row.fields.every(isUnitWord) && row.fields.some((field) => field !== '');

const isHeading = (row: Row, width: number): boolean =>
  widthOf(row) === width && row.fields.filter(looksNumeric).length < width / 2;

const headingsOf = (names: Row, units?: Row): Heading[] =>
  names.fields.map((name, k) => headingOf(name, units?.fields[k] ?? ''));
