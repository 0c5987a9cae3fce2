import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { headGroups, parseHead } from '@hoopwright/wire/record';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openMemoryStore } from './memory/open.ts';
import { exportRecord, fileLines, importRecord, recordLines, verifyRecordFile } from './recordFile.ts';
import type { Store } from './store.ts';

let dir: string;
let file: string;
let store: Store;
let record: string;
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'hoopwright-record-'));
  file = join(dir, 'dunlin.ndjson');
  store = emptyStore();
  record = store.records.begin({ kind: 'rehearsal', title: 'Dunlin – é, invented' }).about.record;
  const drafts = Array.from({ length: 9 }, (_, i) => ({
    run: 1,
    mono_ms: 2.5 * i,
    wall_ms: 1_790_000_000_000 + 3 * i,
    kind: 'remark' as const,
    body: { text: `“${i}”\r\n\uFFFD` },
  }));
  store.records.append({ record, kind: 'rehearsal' }, drafts);
  exportRecord(store.records, record, file);
});
afterEach(() => {
  rmSync(dir, { recursive: true });
});

const emptyStore = (): Store => {
  let id = 0;
  return openMemoryStore({ clock: () => 7, dice: (bytes) => new Uint8Array(bytes).fill(++id) });
};

const head = () => parseHead(headGroups(store.records.find(record)?.digest ?? ''));

describe('a record file', () => {
  it('says in its first line what it is, and has one entry a line', () => {
    const [first, ...rest] = readFileSync(file, 'utf8').trimEnd().split('\n');
    expect(JSON.parse(first).about).toMatchObject({ format: 'hoopwright record', kind: 'rehearsal', record });
    expect(rest.map((line) => JSON.parse(line).entry.seq)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
  });

  it('is verified with the head from the log sheet', () => {
    expect(verifyRecordFile(file, head())).toMatchObject({ kind: 'witnessed', witnessed: 9, entries: 9 });
  });

  it('is found altered at the line, also when a byte is no UTF-8 any more', () => {
    const bytes = readFileSync(file);
    const at = bytes.indexOf('“4”');
    bytes[at] ^= 0x80;
    writeFileSync(file, bytes);
    expect(verifyRecordFile(file)).toMatchObject({ kind: 'altered', line: 6, entry: 5 });
  });

  it('is found altered where a lenient reader would read the same text', () => {
    const bytes = readFileSync(file);
    const mark = bytes.indexOf('\uFFFD', bytes.indexOf('“4”'));
    bytes[mark] = 0xf0;
    expect(bytes.toString('utf8')).toBe(readFileSync(file, 'utf8'));
    writeFileSync(file, bytes);
    expect(verifyRecordFile(file)).toMatchObject({ kind: 'altered', line: 6, entry: 5 });
  });

  it('is found altered when it begins with a byte order mark or its line ends were changed', () => {
    const text = readFileSync(file, 'utf8');
    writeFileSync(file, `\uFEFF${text}`);
    expect(verifyRecordFile(file)).toMatchObject({ kind: 'altered', line: 1 });
    writeFileSync(file, text.replaceAll('\n', '\r\n'));
    expect(verifyRecordFile(file)).toMatchObject({ kind: 'altered', line: 1 });
  });

  it('is taken in once, and goes out again byte for byte', () => {
    const other = emptyStore();
    expect(importRecord(other.records, file)).toEqual({ kind: 'done', record, entries: 9 });
    expect(importRecord(other.records, file)).toEqual({ kind: 'here already', record });
    const again = join(dir, 'again.ndjson');
    expect(exportRecord(other.records, record, again)).toBe(9);
    expect(readFileSync(again).equals(readFileSync(file))).toBe(true);
  });

  it('that is altered is not taken in', () => {
    writeFileSync(file, readFileSync(file, 'utf8').replace('“3”', '“8”'));
    const other = emptyStore();
    expect(importRecord(other.records, file)).toMatchObject({ kind: 'altered', verdict: { line: 5 } });
    expect(other.records.list()).toEqual([]);
  });

  it('is not written over another file', () => {
    expect(() => exportRecord(store.records, record, file)).toThrow(/EEXIST/);
  });

  it('longer than one piece is read whole, and a line without end is refused', () => {
    const long = join(dir, 'long.txt');
    const lines = Array.from({ length: 30 }, (_, i) => `${i}`.padEnd(99_991, 'é'));
    writeFileSync(long, lines.join('\n'));
    expect([...fileLines(long)]).toEqual(lines);
    writeFileSync(long, Buffer.alloc(9 << 20, 0x61));
    expect([...fileLines(long)].map((line) => line.length)).toEqual([1]);
    expect(verifyRecordFile(long)).toMatchObject({ kind: 'altered', line: 1, why: 'the line is not JSON' });
  });

  it('of a record that is not there is empty', () => {
    expect([...recordLines(store.records, 'nobody')]).toEqual([]);
  });
});
