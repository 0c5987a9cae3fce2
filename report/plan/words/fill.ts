/** A catalogue of whole sentences with {placeholders}, and the function that fills them. */

/** Names of the placeholders of a sentence. */
type Holes<S extends string> = S extends `${string}{${infer Hole}}${infer Rest}` ? Hole | Holes<Rest> : never;

type Filling<S extends string> = [Holes<S>] extends [never]
  ? []
  : [values: Readonly<Record<Holes<S>, string>>];

export type Catalogue<C extends Readonly<Record<string, string>>> = <K extends keyof C & string>(
  key: K,
  ...filling: Filling<C[K]>
) => string;

/** The compiler asks for every placeholder; a translation that has another one throws. */
export const catalogue =
  <const C extends Readonly<Record<string, string>>>(english: C): Catalogue<C> =>
  (key, ...filling) => {
    const values = (filling[0] ?? {}) as Readonly<Record<string, string>>;
    return english[key].replace(/\{(\w+)\}/g, (_, hole: string) => {
      const value = values[hole];
      if (value === undefined) throw new Error(`the sentence "${key}" wants {${hole}}, which was not given`);
      return value;
    });
  };
