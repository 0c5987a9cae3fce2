/** A sentence of the page with its placeholders filled. */
import { ENGLISH } from './english.ts';
import { sentences } from './fill.ts';

export type Key = keyof typeof ENGLISH;

export const words = sentences(ENGLISH);
