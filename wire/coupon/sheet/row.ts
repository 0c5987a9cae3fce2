/** Text to rows of fields: which sign parts the fields, and where a line is no row. */
import { parse } from 'csv-parse/browser/esm/sync';
import { looksNumeric } from './decimal.ts';

export interface Row {
  /** Counts from 1. */
  readonly line: number;
  readonly fields: readonly string[];
  /** The line as it stands. */
  readonly text: string;
}

export interface Rows {
  readonly rows: readonly Row[];
  readonly delimiter: Delimiter;
  /** The last line ends without a line end: it may be cut off. */
  readonly cut: boolean;
}

/** `blank`: any run of spaces and tabs. */
export type Delimiter = '\t' | ';' | '|' | ',' | 'blank';

/** In this order where two part the lines equally well: a comma may also be a decimal sign. */
const DELIMITERS: readonly Delimiter[] = ['\t', ';', '|', 'blank', ','];

export const rowsOf = (text: string, wanted?: Delimiter): Rows => {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const cut = lines[lines.length - 1] !== '';
  const delimiter = wanted ?? delimiterOf(lines);
  const rows = lines.map((line, k) => ({ line: k + 1, fields: fieldsOf(line, delimiter), text: line }));
  return { rows: rows.filter(({ fields }) => fields.some((field) => field !== '')), delimiter, cut };
};

/** The sign that makes the most lines into rows of figures. A sample of the file is enough. */
const delimiterOf = (lines: readonly string[]): Delimiter => {
  const every = Math.max(1, Math.floor(lines.length / 400));
  const sample = lines.filter((line, k) => line.trim() !== '' && k % every === 0);
  const score = (delimiter: Delimiter): number =>
    sample.filter((line) => {
      const fields = fieldsOf(line, delimiter).filter((field) => field !== '');
      return fields.length >= 2 && fields.every(looksNumeric);
    }).length;
  const scores = DELIMITERS.map(score);
  return DELIMITERS[scores.indexOf(Math.max(...scores))];
};

export const fieldsOf = (line: string, delimiter: Delimiter): string[] => {
  if (delimiter === 'blank') return line.trim().split(/[ \t\u00A0]+/);
  if (!line.includes('"')) return line.split(delimiter).map((field) => field.trim());
  return quotedFields(line, delimiter);
};

/** A quote that is never closed is a slip of the typist: it is taken as a letter. */
const quotedFields = (line: string, delimiter: Exclude<Delimiter, 'blank'>): string[] => {
  const options = { delimiter, relax_column_count: true, relax_quotes: true, trim: true };
  try {
    return parse(line, options)[0] ?? [];
  } catch {
    return line.split(delimiter).map((field) => field.replaceAll('"', '').trim());
  }
};
