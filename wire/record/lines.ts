/** A record as a file: NDJSON, one entry a line, the first line says what it is. Each line is canonical JSON. */
import type * as z from 'zod';
import { canonical } from './canonical.ts';
import { type About, type Link, aboutLineShape, entryLineShape } from './entry.ts';

export const aboutLine = (about: About, digest: string): string => canonical({ about, digest });

export const entryLine = ({ entry, digest }: Link): string => canonical({ digest, entry });

/** What a line holds, or in words why it holds nothing that we wrote. */
export type Read<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string };

export const readAboutLine = (line: string): Read<{ about: About; digest: string }> =>
  readLine(line, aboutLineShape, 'what a record says of itself');

export const readEntryLine = (line: string): Read<Link> =>
  readLine(line, entryLineShape, 'an entry of a record');

const readLine = <T>(line: string, shape: z.ZodType<T>, what: string): Read<T> => {
  const value = json(line);
  if (value === undefined) return { ok: false, why: 'the line is not JSON' };
  // A line that means the same but is spelt otherwise was not written by the record.
  if (spelling(value) !== line) return { ok: false, why: 'the line is not spelt as the record spells it' };
  const findings = shape.safeParse(value).error?.issues;
  if (findings)
    return { ok: false, why: `the line is not ${what}, see ${findings[0].path.join('.') || 'its keys'}` };
  // The value as it stood in the line: the parser's copy would lose a key such as "__proto__".
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- the shape has just found nothing wrong with it
  return { ok: true, value: value as T };
};

/** An escaped half of a surrogate pair parses, and has no spelling. */
const spelling = (value: unknown): string | undefined => {
  try {
    return canonical(value);
  } catch {
    return undefined;
  }
};

const json = (line: string): unknown => {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
};
