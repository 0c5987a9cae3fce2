/** What every store promises about records. */
import assert from 'node:assert/strict';
import { type Draft, type Link, aboutLine, entryLine, verifyRecord } from '@hoopwright/wire/record';
import { chainHash } from '../hash.ts';
import type { RecordLine, Store } from '../store.ts';
import { type Claim, must } from './claim.ts';

const begin = (store: Store): RecordLine =>
  store.records.begin({ kind: 'rehearsal', title: 'Dunlin, invented' });

const drafts = (count: number, run = 1): Draft[] =>
  Array.from({ length: count }, (_, i) => ({
    run,
    mono_ms: 812.25 + 20 * i,
    wall_ms: 1_790_000_000_001 + 20 * i,
    kind: 'reading',
    body: { values: { P1: 0.1 + i / 3, G2: 1257.5 }, by: 'tape é' },
  }));

const linesOf = (store: Store, { about }: RecordLine, digest: string): string[] => [
  aboutLine(about, digest),
  ...[...store.records.entries(about.record)].map(entryLine),
];

const append = (store: Store, line: RecordLine, given: readonly Draft[]): Link[] =>
  store.records.append({ record: line.about.record, kind: 'rehearsal' }, given);

export const RECORD_CLAIMS: readonly Claim[] = [
  {
    says: 'a record that was written in several commits is whole, and its head is the last digest',
    holds: (store) => {
      const line = begin(store);
      append(store, line, drafts(3));
      const links = append(store, line, drafts(2, 2));
      assert.deepEqual(
        links.map(({ entry }) => [entry.seq, entry.run]),
        [
          [4, 2],
          [5, 2],
        ],
      );
      const now = must(store.records.find(line.about.record), 'the record');
      assert.deepEqual([now.entries, now.run, now.digest], [5, 2, links[1].digest]);
      const verdict = verifyRecord(
        linesOf(store, line, line.digest),
        chainHash,
        links[1].digest.slice(0, 32),
      );
      assert.deepEqual([verdict.kind, verdict.kind === 'witnessed' && verdict.witnessed], ['witnessed', 5]);
    },
  },
  {
    says: 'entries come back as they were written, also from the middle of a long record',
    holds: (store) => {
      const line = begin(store);
      const given = drafts(2300);
      append(store, line, given);
      const entries = [...store.records.entries(line.about.record)].map(({ entry }) => entry);
      assert.equal(entries.length, 2300);
      assert.deepEqual(entries[1707], { seq: 1708, ...given[1707] });
      const [after] = store.records.entries(line.about.record, 1999);
      assert.equal(after.entry.seq, 2000);
    },
  },
  {
    says: 'a record grows while it is being read',
    holds: (store) => {
      const line = begin(store);
      append(store, line, drafts(3));
      for (const { entry } of store.records.entries(line.about.record)) {
        if (entry.seq === 2) append(store, line, drafts(1));
      }
      assert.equal(store.records.find(line.about.record)?.entries, 4);
    },
  },
  {
    says: 'a record of one kind is closed to every other kind',
    holds: (store) => {
      const { record } = begin(store).about;
      assert.throws(
        () => store.records.append({ record, kind: 'test' }, drafts(1)),
        /is a rehearsal; a test must not/,
      );
      assert.throws(() => store.records.append({ record, kind: 'replay' }, drafts(1)), /is a rehearsal/);
      assert.equal(store.records.find(record)?.entries, 0);
    },
  },
  {
    says: 'an entry of an earlier run, or one that JSON cannot hold, is refused with all that came along',
    holds: (store) => {
      const line = begin(store);
      append(store, line, drafts(1, 2));
      assert.throws(
        () => append(store, line, [...drafts(1, 2), ...drafts(1, 1)]),
        /is at run 2; an entry of run 1/,
      );
      const [draft] = drafts(1, 2);
      const hollow = { ...draft, body: { values: { P1: Number.NaN } } };
      assert.throws(() => append(store, line, [draft, hollow]), /NaN/);
      assert.equal(store.records.find(line.about.record)?.entries, 1);
      assert.throws(
        () => store.records.append({ record: 'nobody', kind: 'test' }, drafts(1)),
        /no record nobody/,
      );
    },
  },
  {
    says: 'a record that comes from elsewhere is taken in once, as it is, and nothing is added to it',
    holds: (store) => {
      const line = begin(store);
      const links = append(store, line, drafts(4));
      const record = `elsewhere-${line.about.record}`;
      const about = { ...line.about, record };
      assert.equal(store.records.adopt(about, line.digest, links), true);
      assert.equal(store.records.adopt(about, line.digest, links), false);
      assert.deepEqual([...store.records.entries(record)], links);
      assert.equal(store.records.find(record)?.origin, 'imported');
      assert.throws(() => store.records.append({ record, kind: 'rehearsal' }, drafts(1)), /was imported/);
    },
  },
  {
    says: 'the newest record is listed first, with its project and what it replays',
    holds: (store) => {
      const { id } = store.projects.create({ name: 'Dunlin', file: '{}' }).project;
      const first = store.records.begin({ kind: 'test', title: 'first', project: id });
      const second = store.records.begin({ kind: 'replay', title: 'again', replays: first.about.record });
      const [top, next] = store.records.list();
      assert.deepEqual([top.about, next.about], [second.about, first.about]);
      assert.equal(next.about.project, id);
    },
  },
];
