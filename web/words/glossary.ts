/** What the terms of the page mean: one sentence, a formula where there is one, and where it comes from. */
import { ENGLISH_TERMS, type Term } from './terms.ts';

export type { Term };

export type TermName = keyof typeof ENGLISH_TERMS;

export const termOf = (name: TermName): Term => ENGLISH_TERMS[name];
