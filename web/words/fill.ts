/** Catalogues of sentences with {placeholders}: the compiler asks for every one, and nothing is put together from pieces. */

type Holes<S extends string> = S extends `${string}{${infer Hole}}${infer Rest}` ? Hole | Holes<Rest> : never;
export type Filling<S extends string> = [Holes<S>] extends [never]
  ? []
  : [values: Readonly<Record<Holes<S>, string | number>>];

/** Fills the sentences of a catalogue. Throws where a placeholder was not given. */
export const sentences =
  <C extends Readonly<Record<string, string>>>(catalogue: C) =>
  <K extends keyof C & string>(key: K, ...filling: Filling<C[K]>): string => {
    const values: Readonly<Record<string, string | number>> = filling[0] ?? {};
    return catalogue[key].replace(/\{(\w+)\}/g, (_, hole: string) => {
      const value = values[hole];
      if (value === undefined) throw new Error(`the sentence "${key}" wants {${hole}}, which was not given`);
      return String(value);
    });
  };
