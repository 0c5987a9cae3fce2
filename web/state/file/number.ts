/**
 * A number as people type it: "1,5" and "1.5" are both 1.5, whatever the decimal mark of the page; "1.234,5" is 1234.5.
 * Only a single mark before exactly three digits may mean two things, and is asked about.
 */

export type Typed =
  | { readonly kind: 'number'; readonly value: number; readonly rest: string }
  /** "1,500" may be 1.5 or 1500. */
  | { readonly kind: 'asked'; readonly fraction: number; readonly thousands: number; readonly rest: string }
  | { readonly kind: 'fault'; readonly why: Fault };

export type Fault = 'empty' | 'no number' | 'marks' | 'too large';

const NUMBER = /^([+\-−–]?)\s*([\d.,\s' ]*\d[.,]?|[.,]\d+)(?:[eE]([+\-−]?\d{1,3}))?\s*(.*)$/s;

/** Reads the number at the start of the text; `rest` is what follows it, a unit perhaps. */
export function readTyped(text: string): Typed {
  const trimmed = text.trim();
  if (trimmed === '') return { kind: 'fault', why: 'empty' };
  const found = NUMBER.exec(trimmed);
  if (found === null) return { kind: 'fault', why: 'no number' };
  const [, sign, figures, power = '0', rest] = found;
  const digits = figures.replace(/(?<=\d)[\s' ](?=\d{3}(?!\d))/g, '');
  if (/[\s' ]/.test(digits)) return { kind: 'fault', why: 'marks' };
  const factor = (/[-−–]/.test(sign) ? -1 : 1) * 1;
  const finished = (plain: string): number => factor * Number(`${plain}e${power.replace('−', '-')}`);
  const read = marksOf(digits);
  if (read === undefined) return { kind: 'fault', why: 'marks' };
  if (typeof read !== 'string')
    return power === '0'
      ? { kind: 'asked', fraction: finished(read.fraction), thousands: finished(read.thousands), rest }
      : { kind: 'number', value: finished(read.fraction), rest };
  const value = finished(read);
  return Number.isFinite(value) && Math.abs(value) < 1e15
    ? { kind: 'number', value, rest }
    : { kind: 'fault', why: 'too large' };
}

/** The figures with a point, the two meanings of a doubtful one, or undefined where the marks make no sense. */
function marksOf(
  digits: string,
): string | { readonly fraction: string; readonly thousands: string } | undefined {
  const marks = Array.from(digits.matchAll(/[.,]/g), ([mark]) => mark);
  if (marks.length === 0) return digits;
  const last = marks[marks.length - 1];
  const [whole, tail] = splitLast(digits, last);
  if (marks.length === 1) {
    const fraction = `${whole || '0'}.${tail || '0'}`;
    return /^[1-9]\d{0,2}$/.test(whole) && tail.length === 3
      ? { fraction, thousands: whole + tail }
      : fraction;
  }
  const grouping = marks[0];
  const grouped = new RegExp(`^\\d{1,3}(\\${grouping}\\d{3})+$`);
  if (grouping === last) return grouped.test(digits) ? digits.replaceAll(grouping, '') : undefined;
  return marks.filter((mark) => mark === last).length === 1 && grouped.test(whole)
    ? `${whole.replaceAll(grouping, '')}.${tail || '0'}`
    : undefined;
}

const splitLast = (text: string, mark: string): [string, string] => {
  const at = text.lastIndexOf(mark);
  return [text.slice(0, at), text.slice(at + 1)];
};
