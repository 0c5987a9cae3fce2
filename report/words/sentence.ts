/** A sentence of the catalogue with its placeholders filled. */
import type { Manner } from '../figure/manner.ts';
import { ENGLISH, type Key } from './english.ts';

const CATALOGUES: Readonly<Record<Manner['language'], Readonly<Record<Key, string>>>> = { en: ENGLISH };

/** Names of the placeholders of a sentence. */
type Holes<S extends string> = S extends `${string}{${infer Hole}}${infer Rest}` ? Hole | Holes<Rest> : never;

/** What a sentence needs: nothing, or a text for each of its placeholders. */
export type Filling<K extends Key> = [Holes<(typeof ENGLISH)[K]>] extends [never]
  ? []
  : [values: Readonly<Record<Holes<(typeof ENGLISH)[K]>, string>>];

/** A sentence cut at its placeholders, for where each of them is set on its own: text, or the name of a placeholder. */
export const cut = (
  manner: Pick<Manner, 'language'>,
  key: Key,
): readonly ({ readonly text: string } | { readonly hole: string })[] =>
  CATALOGUES[manner.language][key]
    .split(/(\{\w+\})/)
    .filter((piece) => piece !== '')
    .map((piece) => (/^\{\w+\}$/.test(piece) ? { hole: piece.slice(1, -1) } : { text: piece }));

/** The compiler asks for every placeholder; a translation that has another one throws. */
export function sentence<K extends Key>(
  manner: Pick<Manner, 'language'>,
  key: K,
  ...filling: Filling<K>
): string {
  const values = (filling[0] ?? {}) as Readonly<Record<string, string>>;
  return CATALOGUES[manner.language][key].replace(/\{(\w+)\}/g, (_, hole: string) => {
    const value = values[hole];
    if (value === undefined) throw new Error(`the sentence "${key}" wants {${hole}}, which was not given`);
    return value;
  });
}
