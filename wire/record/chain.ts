/** The chain of digests: each one covers its entry and the digest before it, so that the last one covers the record. */
import { canonical } from './canonical.ts';
import type { About, Draft, Entry, Link } from './entry.ts';

/**
 * SHA-256 (FIPS 180-4) over the 32 bytes of `previous` followed by the UTF-8 bytes of `text`; 64 hex digits.
 * Handed in, as each machine has a well-kept one of its own.
 */
export type ChainHash = (previous: string, text: string) => string;

/** Stands before the first digest of every record. */
const NOTHING_BEFORE = '0'.repeat(64);

export const aboutDigest = (about: About, hash: ChainHash): string => hash(NOTHING_BEFORE, canonical(about));

export const entryDigest = (previous: string, entry: Entry, hash: ChainHash): string =>
  hash(previous, canonical(entry));

/** The end of a chain as it stands: what the next entry is tied to. */
export interface End {
  readonly seq: number;
  readonly digest: string;
}

/** Ties drafts to the end of a chain, in order. */
export const tie = (end: End, drafts: readonly Draft[], hash: ChainHash): Link[] => {
  const links: Link[] = [];
  let { seq, digest } = end;
  for (const draft of drafts) {
    seq += 1;
    const entry: Entry = { seq, ...draft };
    digest = entryDigest(digest, entry, hash);
    links.push({ entry, digest });
  }
  return links;
};

const HEAD_DIGITS = 32;

/** The head as people copy it from the log sheet: 8 groups of 4 hex digits, the first 128 bits of the digest. */
export const headGroups = (digest: string): string =>
  (digest.slice(0, HEAD_DIGITS).match(/.{4}/g) ?? []).join(' ');

/** Reads a head as written down: any case, groups parted by blanks or hyphens. `undefined`: not a head. */
export const parseHead = (text: string): string | undefined => {
  const digits = text.replace(/[\s-]/g, '').toLowerCase();
  return /^[0-9a-f]{32}$/.test(digits) ? digits : undefined;
};
