/** From a row's values to ours; a value of another type is a mistake of the program. */
import type { SqlValue } from '../../driver/base.ts';

export const text = (value: SqlValue): string => {
  if (typeof value === 'string') return value;
  throw new TypeError(`a text was expected in the base, ${typeof value} came`);
};

export const figure = (value: SqlValue): number => {
  if (typeof value === 'number') return value;
  throw new TypeError(`a number was expected in the base, ${typeof value} came`);
};

export const blob = (value: SqlValue): Uint8Array => {
  if (value instanceof Uint8Array) return value;
  throw new TypeError(`bytes were expected in the base, ${typeof value} came`);
};

/** `{ key: value }` where there is a value, else nothing, to be spread into a record with optional keys. */
export const ifText = <K extends string>(key: K, value: SqlValue): { readonly [P in K]?: string } =>
  value === null ? {} : keyed(key, text(value));

export const ifFigure = <K extends string>(key: K, value: SqlValue): { readonly [P in K]?: number } =>
  value === null ? {} : keyed(key, figure(value));

// oxlint-disable-next-line typescript/no-unsafe-type-assertion -- the compiler widens a computed key to `string`
const keyed = <K extends string, V>(key: K, value: V) => ({ [key]: value }) as { readonly [P in K]?: V };

export const orNull = (value: string | undefined): string | null => value ?? null;
