/** Records as files: out of the store, verified, and taken in. A file is read in pieces, so that any length fits. */
import { closeSync, openSync, readSync, writeSync } from 'node:fs';
import {
  type Verdict,
  aboutDigest,
  aboutLine,
  entryLine,
  readAboutLine,
  readEntryLine,
  verifyRecord as verifyLines,
} from '@hoopwright/wire/record';
import { chainHash } from './hash.ts';
import type { Records } from './store.ts';

/** The lines of a record as it stands, without their ends; nothing for a record that is not there. */
export function* recordLines(records: Records, id: string): Generator<string> {
  const line = records.find(id);
  if (!line) return;
  yield aboutLine(line.about, aboutDigest(line.about, chainHash));
  for (const link of records.entries(id)) yield entryLine(link);
}

/** Writes the record to a new file and answers the number of entries; throws where the file exists. */
export const exportRecord = (records: Records, id: string, file: string): number => {
  const handle = openSync(file, 'wx');
  let lines = 0;
  try {
    for (const line of recordLines(records, id)) {
      writeSync(handle, `${line}\n`);
      lines += 1;
    }
  } finally {
    closeSync(handle);
  }
  return Math.max(0, lines - 1);
};

/** See `verifyRecord` of the wire; `head` as `parseHead` gives it. */
export const verifyRecord = (lines: Iterable<string>, head?: string): Verdict =>
  verifyLines(lines, chainHash, head);

export const verifyRecordFile = (file: string, head?: string): Verdict => verifyRecord(fileLines(file), head);

export type RecordTakenIn =
  | { readonly kind: 'done'; readonly record: string; readonly entries: number }
  | { readonly kind: 'here already'; readonly record: string }
  | { readonly kind: 'altered'; readonly verdict: Extract<Verdict, { kind: 'altered' }> };

/** Takes a record file in as it is, if it is whole; it keeps its name, its kind and its digests. */
export const importRecord = (records: Records, file: string): RecordTakenIn => {
  const verdict = verifyRecordFile(file);
  if (verdict.kind === 'altered') return { kind: 'altered', verdict };
  const { record } = verdict.about;
  const digest = aboutDigest(verdict.about, chainHash);
  const done = records.adopt(verdict.about, digest, fileLinks(file));
  return done ? { kind: 'done', record, entries: verdict.entries } : { kind: 'here already', record };
};

function* fileLinks(file: string) {
  for (const line of fileLines(file)) {
    const link = readEntryLine(line);
    if (link.ok) yield link.value;
    else if (!readAboutLine(line).ok)
      throw new Error(`the record file changed while it was read: ${link.why}`);
  }
}

const PIECE = 1 << 20;
/** No entry is longer; a photo stands in the record by its digest. A longer line is no line of a record. */
const LONGEST_LINE = 8 << 20;
const LINE_END = 10;

/** Lines of a file, split at LF alone and decoded strictly: a stray CR or a byte that is no UTF-8 must not vanish. */
export function* fileLines(file: string): Generator<string> {
  const handle = openSync(file, 'r');
  try {
    const piece = Buffer.alloc(PIECE);
    let rest: Buffer = Buffer.alloc(0);
    for (let length = readSync(handle, piece); length > 0; length = readSync(handle, piece)) {
      let bytes = Buffer.concat([rest, piece.subarray(0, length)]);
      for (let end = bytes.indexOf(LINE_END); end >= 0; end = bytes.indexOf(LINE_END)) {
        yield decoded(bytes.subarray(0, end));
        bytes = bytes.subarray(end + 1);
      }
      rest = bytes;
      if (rest.length > LONGEST_LINE) {
        rest = Buffer.from(NO_LINE);
        break;
      }
    }
    if (rest.length > 0) yield decoded(rest);
  } finally {
    closeSync(handle);
  }
}

const strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

/** Stands for bytes that are no line of a record, and is no JSON. */
const NO_LINE = '\uFFFD';

const decoded = (bytes: Uint8Array): string => {
  try {
    return strict.decode(bytes);
  } catch {
    return NO_LINE;
  }
};
