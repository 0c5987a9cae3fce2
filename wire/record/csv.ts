/** Readings of a record as CSV (RFC 4180), for a spreadsheet. Every row says which kind of record it is from. */
import type { About, CorrectionBody, Entry, ReadingBody } from './entry.ts';

export interface Column {
  readonly channel: string;
  /** Unit of the values, e.g. "bar". */
  readonly unit: string;
}

export interface CsvStyle {
  readonly columns: readonly Column[];
  /** With a comma the fields are parted by semicolons. */
  readonly decimal: '.' | ',';
}

/** Header, then one row per reading, correction and gap. A channel that said nothing leaves its field empty. */
export function* readingsCsv(about: About, entries: Iterable<Entry>, style: CsvStyle): Generator<string> {
  const row = rowOf(style.decimal);
  const heads = style.columns.map(({ channel, unit }) => `${channel} [${unit}]`);
  yield row(['record', 'entry', 'run', 'UTC', 'since start [s]', 'what', 'corrects', ...heads]);
  for (const entry of entries) {
    if (!['reading', 'correction', 'gap'].includes(entry.kind)) continue;
    const { values = {}, corrects = '' } = entry.body as Partial<CorrectionBody & ReadingBody>;
    const figures = style.columns.map(({ channel }) =>
      Object.hasOwn(values, channel) ? values[channel] : '',
    );
    const utc = new Date(entry.wall_ms).toISOString();
    yield row([
      about.kind,
      entry.seq,
      entry.run,
      utc,
      entry.mono_ms / 1000,
      entry.kind,
      corrects,
      ...figures,
    ]);
  }
}

const rowOf = (decimal: '.' | ',') => {
  const mark = decimal === ',' ? ';' : ',';
  return (fields: readonly (string | number)[]): string =>
    fields
      .map((field) => csvField(typeof field === 'number' ? figure(field, decimal) : field, mark))
      .join(mark);
};

const figure = (value: number, decimal: '.' | ','): string => String(value).replace('.', decimal);

/** A spreadsheet takes a text that begins with one of these for a formula; the quote mark keeps it a text. */
const FORMULA = /^[=+@\t\r]|^-(?![\d.,])/;

const csvField = (text: string, mark: string): string => {
  const safe = FORMULA.test(text) ? `'${text}` : text;
  return /["\r\n]/.test(safe) || safe.includes(mark) ? `"${safe.replaceAll('"', '""')}"` : safe;
};
