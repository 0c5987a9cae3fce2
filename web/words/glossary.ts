/** What the terms of the page mean: one sentence, a formula where there is one, and where it comes from. */
import { ENGLISH_TERMS } from './terms.ts';

export interface Term {
  readonly term: string;
  readonly sentence: string;
  readonly formula?: string;
  readonly source: string;
}

export type TermName = keyof typeof ENGLISH_TERMS;

export const termOf = (name: TermName): Term => ENGLISH_TERMS[name];
