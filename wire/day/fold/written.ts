/** Rows that people have written, so that any of them can be corrected: the row stays, a correction is added to it. */
import type { Entry } from '../../record/entry.ts';
import type { DayState, WrittenRow } from '../state.ts';
import { text, values } from './read.ts';

/** Rows that are kept at hand: a long day by hand has some eighty. Our choice. */
const MOST = 100;

export function rowsWith({ rows }: DayState, { seq, wall_ms, body }: Entry): readonly WrittenRow[] {
  const how = text(body, 'how') ?? 'by hand';
  if (how !== 'by hand' && how !== 'typed in from paper') return rows;
  const row = { seq, wall_ms, by: text(body, 'by') ?? '', step: text(body, 'step') ?? '' };
  return [{ ...row, values: values(body), corrections: [] }, ...rows].slice(0, MOST);
}

export function rowsCorrected({ rows }: DayState, { seq, body }: Entry): readonly WrittenRow[] {
  const added = { seq, by: text(body, 'by') ?? '', values: values(body) };
  return rows.map((row) =>
    row.seq === body['corrects'] ? { ...row, corrections: [...row.corrections, added] } : row,
  );
}
