import { createHash } from 'node:crypto';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ChainHash, entryDigest, headGroups, parseHead } from './chain.ts';
import { entryLine, readEntryLine } from './lines.ts';
import { sampleLines } from './sample.ts';
import { verdictSentence } from './say.ts';
import { verifyRecord } from './verify.ts';

const hash: ChainHash = (previous, text) =>
  createHash('sha256').update(Buffer.from(previous, 'hex')).update(text, 'utf8').digest('hex');

const lines = sampleLines(11, hash);
const digestOf = (line: string): string => /"digest":"([0-9a-f]{64})"/.exec(line)?.[1] ?? '';
const headAfter = (entry: number): string => parseHead(headGroups(digestOf(lines[entry]))) ?? '';

/** Which line (from 1) the byte at `offset` belongs to; its line end counts as its own. */
const lineOf = (bytes: Buffer, offset: number): number =>
  bytes.subarray(0, offset).filter((byte) => byte === 10).length + 1;

describe('the chain of a record', () => {
  it('is SHA-256 over the digest before and the canonical entry, as computed by another hand', () => {
    // sha256 of 32 zero bytes and the text {"a":1}, by coreutils: (head -c32 /dev/zero; printf '{"a":1}') | sha256sum
    expect(hash('0'.repeat(64), '{"a":1}')).toBe(HAND_MADE);
  });

  it('is whole as written, and says that nobody witnessed it', () => {
    expect(verifyRecord(lines, hash)).toMatchObject({
      kind: 'whole',
      entries: 11,
      digest: digestOf(lines[11]),
    });
  });

  it('finds and locates every altered byte', () => {
    const bytes = Buffer.from(`${lines.join('\n')}\n`);
    for (let offset = 0; offset < bytes.length - 1; offset += 1) {
      const changed = Buffer.from(bytes);
      changed[offset] ^= 1 << (offset % 8);
      const text = changed.toString('utf8').slice(0, -1);
      const verdict = verifyRecord(text.split('\n'), hash);
      expect(verdict, `byte ${offset}`).toMatchObject({ kind: 'altered', line: lineOf(bytes, offset) });
    }
  });

  it('finds any altered byte whatever it is altered to', () => {
    const bytes = Buffer.from(lines.join('\n'));
    fc.assert(
      fc.property(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 }), (offset, mask) => {
        const changed = Buffer.from(bytes);
        changed[offset] ^= mask;
        const verdict = verifyRecord(changed.toString('utf8').split('\n'), hash);
        expect(verdict).toMatchObject({ kind: 'altered', line: lineOf(bytes, offset) });
      }),
    );
  });

  it('finds an entry left out, put in twice or moved', () => {
    const without = lines.toSpliced(4, 1);
    const twice = lines.toSpliced(4, 0, lines[4]);
    const moved = lines.toSpliced(4, 2, lines[5], lines[4]);
    expect(verifyRecord(without, hash)).toMatchObject({ kind: 'altered', line: 5, entry: 4 });
    expect(verifyRecord(twice, hash)).toMatchObject({ kind: 'altered', line: 6, entry: 5 });
    expect(verifyRecord(moved, hash)).toMatchObject({ kind: 'altered', line: 5, entry: 4 });
  });

  it('finds a line that means the same but is spelt otherwise', () => {
    const spelt = [
      lines[1].replace('{"digest"', '{ "digest"'),
      lines[1].replace('"seq":1,', '"seq":1,"seq":1,'),
      lines[1].replace('"P1":1.5', '"P1":1.50'),
      lines[1].replace('"reading"', String.raw`"\u0072eading"`),
      `${lines[1]}\r`,
    ];
    for (const line of spelt) {
      expect(line).not.toBe(lines[1]);
      expect(verifyRecord(lines.with(1, line), hash)).toMatchObject({ kind: 'altered', line: 2 });
    }
  });

  it('finds an entry whose run goes back', () => {
    const read = readEntryLine(lines[11]);
    if (!read.ok) throw new Error(read.why);
    const entry = { ...read.value.entry, run: 1 };
    const forged = entryLine({ entry, digest: entryDigest(digestOf(lines[10]), entry, hash) });
    const verdict = verifyRecord([...lines.slice(0, 11), forged], hash);
    expect(verdict).toMatchObject({ kind: 'altered', line: 12, why: 'run 1 stands after run 2' });
  });

  it('finds an entry tied in with a place in the sequence that is not its own', () => {
    const read = readEntryLine(lines[11]);
    if (!read.ok) throw new Error(read.why);
    const entry = { ...read.value.entry, seq: 12 };
    const forged = entryLine({ entry, digest: entryDigest(digestOf(lines[10]), entry, hash) });
    const verdict = verifyRecord([...lines.slice(0, 11), forged], hash);
    expect(verdict).toMatchObject({ kind: 'altered', line: 12, why: 'entry 12 stands where 11 belongs' });
  });

  it('is witnessed up to the entry whose head was written down', () => {
    expect(verifyRecord(lines, hash, headAfter(6))).toMatchObject({
      kind: 'witnessed',
      witnessed: 6,
      entries: 11,
    });
    expect(verifyRecord(lines, hash, headAfter(11))).toMatchObject({ kind: 'witnessed', witnessed: 11 });
  });

  it('is told apart from one written anew or cut off before the head', () => {
    expect(verifyRecord(lines.slice(0, 9), hash, headAfter(11)).kind).toBe('other head');
    const anew: ChainHash = (previous, text) => hash(previous, text.replace('Dunlin', 'Other'));
    expect(verifyRecord(sampleLines(11, anew), anew, headAfter(11)).kind).toBe('other head');
  });

  it('is not whole when the file is empty or something else', () => {
    expect(verifyRecord([], hash)).toMatchObject({ kind: 'altered', line: 1, why: 'the file is empty' });
    expect(verifyRecord(['{"name":"Dunlin"}'], hash)).toMatchObject({ kind: 'altered', line: 1 });
    expect(verifyRecord(lines.slice(1), hash)).toMatchObject({ kind: 'altered', line: 1, entry: 0 });
  });
});

describe('the head', () => {
  it('is 8 groups of 4 hex digits and is read back however it was written down', () => {
    const groups = headGroups(digestOf(lines[3]));
    expect(groups).toMatch(/^([0-9a-f]{4} ){7}[0-9a-f]{4}$/);
    expect(parseHead(` ${groups.toUpperCase().replaceAll(' ', '-')}\n`)).toBe(
      digestOf(lines[3]).slice(0, 32),
    );
  });

  it('is refused when a digit is missing or is not a hex digit', () => {
    const groups = headGroups(digestOf(lines[3]));
    expect(parseHead(groups.slice(1))).toBeUndefined();
    expect(parseHead(`g${groups.slice(1)}`)).toBeUndefined();
  });
});

describe('the sentence of a verdict', () => {
  it('says how far the witness reaches', () => {
    const sentence = verdictSentence(verifyRecord(lines, hash, headAfter(6)));
    expect(sentence).toMatch(/up to entry 6 of 11/);
  });
  it('names the line that was altered', () => {
    const sentence = verdictSentence(verifyRecord(lines.toSpliced(2, 1), hash));
    expect(sentence).toMatch(/^Altered at line 3 \(entry 2\): /);
  });
});

const HAND_MADE = 'b06a229070741292512e8760f470dd7a4c46ccfdf253df781d88dabe58c1ccb1';
