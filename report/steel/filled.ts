/** A sentence of the steel with its placeholders filled. Throws where one is left. */
import { STEEL_ENGLISH, type SteelSentence } from './english.ts';

export function filled(key: SteelSentence, values: Readonly<Record<string, string>>): string {
  return STEEL_ENGLISH[key].replace(/\{(\w+)\}/g, (_, hole: string) => {
    const value = values[hole];
    if (value === undefined) throw new Error(`the sentence "${key}" wants {${hole}}, which was not given`);
    return value;
  });
}
