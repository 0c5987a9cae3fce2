/** The few building blocks of the tank file's structure, on top of zod. */
import { z } from 'zod';
import { QUANTITIES } from './quantity.ts';

/** A number of the table of quantities, refused where its sign is impossible; its meaning goes into the schema. */
export function quantity(id: string): z.ZodNumber {
  const entry = QUANTITIES[id];
  if (entry === undefined) throw new Error(`no quantity ${id} in the table`);
  const { sign, means, low, high, why } = entry;
  const number = z.number();
  const signed = sign === 'positive' ? number.positive() : sign === 'any' ? number : number.nonnegative();
  return signed.meta({ description: `${means}. Plausible: ${low} to ${high} (${why}).` });
}

export const quantities = (id: string) =>
  z.array(quantity(id)).min(1).meta({ description: QUANTITIES[id].means });

export const text = (description: string) => z.string().min(1).meta({ description });

export const oneOf = <const T extends readonly [string, ...string[]]>(words: T, description: string) =>
  z.enum(words).meta({ description });

/** A key that may be left out (undefined is not a value of a file). */
export const may = z.exactOptional;
