/** What a body holds under a key, if it is of the kind wanted: an imported record may hold anything. */
import type { Body } from '../../record/entry.ts';

export const text = (body: Body, key: string): string | undefined => {
  const value = body[key];
  return typeof value === 'string' ? value : undefined;
};

export const number = (body: Body, key: string): number | undefined => {
  const value = body[key];
  return typeof value === 'number' ? value : undefined;
};

export const texts = (body: Body, key: string): string[] => {
  const value = body[key];
  return Array.isArray(value) ? value.filter((one) => typeof one === 'string') : [];
};

export const numbers = (body: Body, key: string): number[] => {
  const value = body[key];
  return Array.isArray(value) ? value.filter((one) => typeof one === 'number') : [];
};

/** Figures by channel. */
export const values = (body: Body): Readonly<Record<string, number>> => {
  const found = body['values'];
  if (typeof found !== 'object' || found === null || Array.isArray(found)) return {};
  const all = Object.entries(found);
  return all.every(([, value]) => typeof value === 'number')
    ? // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- every value has just been found to be a number
      (found as Record<string, number>)
    : Object.fromEntries(all.filter((pair): pair is [string, number] => typeof pair[1] === 'number'));
};

/** Keeps a key out where there is nothing to stand under it. */
export const given = <K extends string, V>(key: K, value: V | undefined): { readonly [key in K]?: V } => {
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- a record of just this key
  return value === undefined ? {} : ({ [key]: value } as { readonly [key in K]?: V });
};

/** One of a closed set of words. */
export const oneOf = <T extends string>(words: readonly T[], word: string | undefined): T | undefined =>
  words.find((one) => one === word);
