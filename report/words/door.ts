/** The catalogue of sentences. */
export type { Key } from './english.ts';
export { type Filling, sentence } from './sentence.ts';
