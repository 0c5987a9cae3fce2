/** Canonical JSON (RFC 8785): one value has one text, so that a digest of the text is a digest of the value. */

export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/**
 * The one text of a JSON value: keys sorted by UTF-16 code units, no white space, numbers as ECMAScript prints them.
 * Throws RangeError for what JSON cannot hold (NaN, Infinity, undefined, half a surrogate pair), naming the place.
 * Source: RFC 8785, sections 3.2.2 and 3.2.3.
 */
export const canonical = (value: unknown, path = '$'): string => {
  if (value === null || typeof value === 'boolean') return String(value);
  if (typeof value === 'number') return canonicalNumber(value, path);
  if (typeof value === 'string') return canonicalText(value, path);
  if (Array.isArray(value)) return `[${value.map((item, i) => canonical(item, `${path}[${i}]`)).join(',')}]`;
  if (typeof value === 'object') return canonicalObject(value, path);
  throw new RangeError(
    `${path} is ${typeof value}; JSON holds null, true, false, numbers, texts, lists and objects`,
  );
};

const canonicalNumber = (value: number, path: string): string => {
  if (!Number.isFinite(value)) throw new RangeError(`${path} is ${value}; JSON holds finite numbers only`);
  return JSON.stringify(value);
};

/** A surrogate without its other half has no UTF-8 bytes of its own: two texts would share one digest. */
const HALF_PAIR = /\p{Surrogate}/u;

const canonicalText = (value: string, path: string): string => {
  if (HALF_PAIR.test(value))
    throw new RangeError(`${path} holds half a surrogate pair; give well-formed Unicode`);
  return JSON.stringify(value);
};

const canonicalObject = (value: object, path: string): string => {
  const members = Object.entries(value)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, item]) => `${canonicalText(key, path)}:${canonical(item, `${path}.${key}`)}`);
  return `{${members.join(',')}}`;
};
