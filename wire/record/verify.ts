/** Is a record whole, and is it the one whose head was witnessed? */
import { type ChainHash, aboutDigest, entryDigest } from './chain.ts';
import type { About } from './entry.ts';
import { readAboutLine, readEntryLine } from './lines.ts';

export type Verdict =
  /** Whole, and the given head stands in it after entry `witnessed`: nothing up to there was changed since. */
  | {
      readonly kind: 'witnessed';
      readonly about: About;
      readonly entries: number;
      readonly witnessed: number;
      readonly digest: string;
    }
  /** Whole in itself, not witnessed: somebody could have written it anew from the start, or cut its end off. */
  | { readonly kind: 'whole'; readonly about: About; readonly entries: number; readonly digest: string }
  /** Whole in itself, but the given head is not in it: written anew, or cut off before that head. */
  | { readonly kind: 'other head'; readonly about: About; readonly entries: number; readonly digest: string }
  /** Line `line` (from 1) is not as it was written; `entry` is the entry that stands there. */
  | { readonly kind: 'altered'; readonly line: number; readonly entry: number; readonly why: string };

type Altered = Extract<Verdict, { kind: 'altered' }>;

/** Takes the lines one by one, so that a record of any length fits. */
export interface Verifier {
  /** `undefined`: as written so far. After the first alteration nothing further is looked at. */
  line(text: string): Altered | undefined;
  end(): Verdict;
}

/**
 * @param lines the lines of the file without their line ends
 * @param hash see ChainHash
 * @param head 32 hex digits as `parseHead` gives them
 */
export const verifyRecord = (lines: Iterable<string>, hash: ChainHash, head?: string): Verdict => {
  const verifier = startVerify(hash, head);
  for (const text of lines) if (verifier.line(text)) break;
  return verifier.end();
};

export const startVerify = (hash: ChainHash, head?: string): Verifier => {
  let about: About | undefined;
  let digest = '';
  let entries = 0;
  let run = 1;
  let witnessed: number | undefined;
  let altered: Altered | undefined;

  const alter = (why: string): Altered => {
    altered = { kind: 'altered', line: about ? entries + 2 : 1, entry: about ? entries + 1 : 0, why };
    return altered;
  };
  const advance = (next: string, at: number): void => {
    digest = next;
    if (head !== undefined && next.startsWith(head)) witnessed = at;
  };
  const first = (text: string): Altered | undefined => {
    const read = readAboutLine(text);
    if (!read.ok) return alter(read.why);
    if (aboutDigest(read.value.about, hash) !== read.value.digest) return alter(BROKEN);
    about = read.value.about;
    advance(read.value.digest, 0);
    return undefined;
  };
  const next = (text: string): Altered | undefined => {
    const read = readEntryLine(text);
    if (!read.ok) return alter(read.why);
    const { entry } = read.value;
    if (entryDigest(digest, entry, hash) !== read.value.digest) return alter(BROKEN);
    if (entry.seq !== entries + 1) return alter(`entry ${entry.seq} stands where ${entries + 1} belongs`);
    if (entry.run < run) return alter(`run ${entry.run} stands after run ${run}`);
    run = entry.run;
    entries += 1;
    advance(read.value.digest, entries);
    return undefined;
  };

  return {
    line: (text) => altered ?? (about ? next(text) : first(text)),
    end: () => {
      if (altered) return altered;
      if (!about) return { kind: 'altered', line: 1, entry: 0, why: 'the file is empty' };
      if (head === undefined) return { kind: 'whole', about, entries, digest };
      if (witnessed === undefined) return { kind: 'other head', about, entries, digest };
      return { kind: 'witnessed', about, entries, witnessed, digest };
    },
  };
};

const BROKEN = 'the entry or its digest was changed, or what stood before it is missing';
