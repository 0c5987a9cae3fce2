/** Tensile tests as a text table: one line each, figures under each other. */
import type { CouponResult } from '@hoopwright/core/steel';
import { fixed } from '../figure/figure.ts';
import { type Manner, USUAL_MANNER } from '../figure/manner.ts';

export interface CouponRow {
  /** File or specimen. */
  readonly name: string;
  readonly result: CouponResult;
}

interface Column {
  readonly head: string;
  readonly cell: (row: CouponRow, manner: Manner) => string;
}

/** What was not measured is a dash, never a nought. */
const MISSING = '–';

const number =
  (read: (result: CouponResult) => number | undefined, one: number, digits: number) =>
  ({ result }: CouponRow, manner: Manner): string => {
    const value = read(result);
    return value === undefined ? MISSING : fixed(manner, value / one, digits);
  };

const COLUMNS: readonly Column[] = [
  { head: 'test', cell: ({ name }) => name },
  { head: 'E GPa', cell: number(({ young }) => young, 1000, 0) },
  { head: 'Rp0.2 MPa', cell: number(({ proof02 }) => proof02, 1, 1) },
  { head: 'Rp1.0 MPa', cell: number(({ proof10 }) => proof10, 1, 1) },
  { head: 'Rm MPa', cell: number(({ strength }) => strength, 1, 1) },
  { head: 'Ag %', cell: number(({ uniform }) => uniform, 0.01, 1) },
  { head: 'A %', cell: number(({ elongation }) => elongation, 0.01, 1) },
  {
    head: 'rate 1/s',
    cell: ({ result }) => (result.rate === undefined ? MISSING : result.rate.toExponential(1)),
  },
  { head: '', cell: ({ result }) => (result.verdict.usable ? '' : 'not used') },
];

/** Lines of the table, heads first. */
export const couponTable = (rows: readonly CouponRow[], manner: Manner = USUAL_MANNER): string[] => {
  const cells = rows.map((row) => COLUMNS.map(({ cell }) => cell(row, manner)));
  const heads = COLUMNS.map(({ head }) => head);
  const widths = heads.map((head, k) => Math.max(head.length, ...cells.map((line) => line[k].length)));
  const set = (line: readonly string[]): string =>
    line
      .map((text, k) =>
        k === 0 || k === line.length - 1 ? text.padEnd(widths[k]) : text.padStart(widths[k]),
      )
      .join('  ')
      .trimEnd();
  return [heads, ...cells].map(set);
};
