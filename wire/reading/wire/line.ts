/** A line from an instrument to its figures. The format is described in the set-up; nothing is guessed. */
import * as z from 'zod';

const names = z.record(z.string(), z.string().min(1));
const decimal = z.enum(['.', ',']).exactOptional();

export const lineFormatShape = z.discriminatedUnion('form', [
  /** "12.3;1257.10;0.4": one field after the other; null for a field that is not wanted. */
  z.strictObject({
    form: z.literal('fields'),
    separator: z.string().min(1).max(3),
    channels: z.array(z.string().min(1).nullable()).min(1).max(64),
    decimal,
  }),
  /** "P=12.3 G1=1257.10": name, mark, figure; `names` says which channel each is. */
  z.strictObject({ form: z.literal('pairs'), mark: z.string().length(1).exactOptional(), names, decimal }),
  /** {"P": 12.3, "G1": 1257.10}; `names` says which channel each key is. */
  z.strictObject({ form: z.literal('json'), names }),
]);
export type LineFormat = z.infer<typeof lineFormatShape>;

/** By channel, as the instrument gives them, before calibration. */
export type Raw = Readonly<Record<string, number>>;

export type LineRead =
  | { readonly ok: true; readonly raw: Raw }
  | { readonly ok: false; readonly why: string };

/** A longer line is no reading. */
export const LONGEST_LINE = 4096;

export function readLine(text: string, format: LineFormat): LineRead {
  if (text.length > LONGEST_LINE) return { ok: false, why: `a line of ${text.length} characters` };
  if (format.form === 'json') return fromJson(text, format.names);
  const point = format.decimal ?? '.';
  return format.form === 'fields'
    ? fromFields(text, format.channels, { separator: format.separator, point })
    : fromPairs(text, format.names, { mark: format.mark ?? '=', point });
}

/** A plain decimal number, perhaps with a power of ten; no hexadecimal, no infinity, no blanks within. */
const NUMBER = /^[+-]?(\d{1,15}|\d{0,15}[.,]\d{1,15}|\d{1,15}[.,])(e[+-]?\d{1,2})?$/i;

/** Undefined: not a number in that notation. */
export function figure(text: string, point: '.' | ','): number | undefined {
  const plain = text.trim();
  if (!NUMBER.test(plain) || plain.includes(point === '.' ? ',' : '.')) return undefined;
  const value = Number(plain.replace(',', '.'));
  return Number.isFinite(value) ? value : undefined;
}

interface FieldsStyle {
  readonly separator: string;
  readonly point: '.' | ',';
}

function fromFields(
  text: string,
  channels: readonly (string | null)[],
  { separator, point }: FieldsStyle,
): LineRead {
  const fields = separator === ' ' ? text.trim().split(/ +/) : text.split(separator);
  if (fields.length !== channels.length)
    return { ok: false, why: `${fields.length} fields where ${channels.length} belong` };
  const raw: Record<string, number> = {};
  for (const [i, channel] of channels.entries()) {
    if (channel === null || fields[i].trim() === '') continue;
    const value = figure(fields[i], point);
    if (value === undefined) return { ok: false, why: `field ${i + 1} is no number` };
    raw[channel] = value;
  }
  return some(raw);
}

interface PairsStyle {
  readonly mark: string;
  readonly point: '.' | ',';
}

function fromPairs(
  text: string,
  wanted: Readonly<Record<string, string>>,
  { mark, point }: PairsStyle,
): LineRead {
  const raw: Record<string, number> = {};
  for (const pair of text.split(/[\s;]+/).filter((one) => one !== '')) {
    const at = pair.indexOf(mark);
    const name = at < 0 ? pair : pair.slice(0, at);
    if (!Object.hasOwn(wanted, name)) continue;
    const value = at < 0 ? undefined : figure(pair.slice(at + 1), point);
    if (value === undefined) return { ok: false, why: `${name} has no number` };
    raw[wanted[name]] = value;
  }
  return some(raw);
}

function fromJson(text: string, wanted: Readonly<Record<string, string>>): LineRead {
  const value = parsed(text);
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return { ok: false, why: 'not a JSON object' };
  const raw: Record<string, number> = {};
  for (const [name, channel] of Object.entries(wanted)) {
    if (!Object.hasOwn(value, name)) continue;
    const found: unknown = Object.entries(value).find(([key]) => key === name)?.[1];
    if (found === null) continue;
    if (typeof found !== 'number' || !Number.isFinite(found))
      return { ok: false, why: `${name} is no number` };
    raw[channel] = found;
  }
  return some(raw);
}

const some = (raw: Raw): LineRead =>
  Object.keys(raw).length > 0 ? { ok: true, raw } : { ok: false, why: 'no figure that is asked for' };

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
};
