/** Rows that were written on this screen: what can be corrected here. Kept in this browser. */
import { create } from 'zustand';

export interface WrittenRow {
  readonly record: string;
  readonly seq: number;
  readonly at_ms: number;
  readonly step: string;
  readonly values: Readonly<Record<string, number>>;
  /** Corrections that were added to it. */
  readonly corrected?: readonly number[];
}

const KEY = 'hoopwright rows';
/** Rows that are kept: a long day has fewer. */
const MOST = 400;

export const useRows = create<{ readonly rows: readonly WrittenRow[] }>(() => ({ rows: remembered() }));

function remembered(): readonly WrittenRow[] {
  const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '[]');
  return Array.isArray(kept) ? kept.filter(isRow) : [];
}

function isRow(row: unknown): row is WrittenRow {
  return (
    typeof row === 'object' &&
    row !== null &&
    'seq' in row &&
    'values' in row &&
    'record' in row &&
    'at_ms' in row
  );
}

function keep(rows: readonly WrittenRow[]): void {
  useRows.setState({ rows });
  localStorage.setItem(KEY, JSON.stringify(rows));
}

export const keepRow = (row: WrittenRow): void => keep([row, ...useRows.getState().rows].slice(0, MOST));

export const keepCorrection = (seq: number, correction: number): void =>
  keep(
    useRows
      .getState()
      .rows.map((row) =>
        row.seq === seq ? { ...row, corrected: [...(row.corrected ?? []), correction] } : row,
      ),
  );
