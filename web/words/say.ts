/** A sentence of the page with its placeholders filled. No sentence is put together from pieces. */
import { ENGLISH } from './english.ts';

type Catalogue = typeof ENGLISH;
export type Key = keyof Catalogue;

type Holes<S extends string> = S extends `${string}{${infer Hole}}${infer Rest}` ? Hole | Holes<Rest> : never;
export type Filling<K extends Key> = [Holes<Catalogue[K]>] extends [never]
  ? []
  : [values: Readonly<Record<Holes<Catalogue[K]>, string | number>>];

/** The compiler asks for every placeholder. */
export function words<K extends Key>(key: K, ...filling: Filling<K>): string {
  const values = (filling[0] ?? {}) as Readonly<Record<string, string | number>>;
  return ENGLISH[key].replace(/\{(\w+)\}/g, (_, hole: string) => {
    const value = values[hole];
    if (value === undefined) throw new Error(`the sentence "${key}" wants {${hole}}, which was not given`);
    return String(value);
  });
}
