/** Records in SQLite: entries are added and never touched again; triggers in the base forbid it to anybody. */
import {
  type About,
  type Body,
  type EntryKind,
  type Link,
  RECORD_FORMAT,
  aboutDigest,
  canonical,
  tie,
} from '@hoopwright/wire/record';
import type { Base, Row } from '../../driver/base.ts';
import { chainHash, freshId } from '../hash.ts';
import type { RecordLine, Records, Surroundings } from '../store.ts';
import { writable } from '../writable.ts';
import { blob, figure, text } from './row.ts';

/** The last entry of each record; entries are never deleted, so their number is the last one's. */
const RECORD = `SELECT r.*, e.seq, e.run, e.digest AS head FROM record r
  LEFT JOIN entry e ON e.record = r.number AND e.seq = (SELECT max(seq) FROM entry WHERE record = r.number)`;

/** So many entries are held at once while a record is read. */
const PAGE = 1000;

export const openRecords = (base: Base, { clock, dice }: Surroundings): Records => {
  const find = (id: string): RecordLine | undefined => {
    const row = base.one(`${RECORD} WHERE r.id = ?`, id);
    return row && recordOf(row);
  };
  const number = (id: string): number =>
    figure(base.one('SELECT number FROM record WHERE id = ?', id)?.number ?? null);
  const insert = (about: About, digest: string, origin: RecordLine['origin']): void => {
    const values = [about.record, canonical(about), digest, origin];
    base.change('INSERT INTO record (id, about, digest, origin) VALUES (?, ?, ?, ?)', ...values);
  };
  const add = (record: number, { entry, digest }: Link): void => {
    const { seq, run, mono_ms, wall_ms, kind, body } = entry;
    const values = [record, seq, run, mono_ms, wall_ms, kind, canonical(body), Buffer.from(digest, 'hex')];
    base.change('INSERT INTO entry VALUES (?, ?, ?, ?, ?, ?, ?, ?)', ...values);
  };

  return {
    find,
    list: () => base.all(`${RECORD} ORDER BY r.number DESC`).map(recordOf),
    begin: (given) => {
      const about: About = {
        format: RECORD_FORMAT,
        version: 1,
        record: freshId(dice),
        began_ms: clock(),
        ...given,
      };
      const digest = aboutDigest(about, chainHash);
      insert(about, digest, 'here');
      return { about, digest, entries: 0, run: 0, origin: 'here' };
    },
    append: (to, drafts) =>
      base.transaction(() => {
        const { entries, digest } = writable(find(to.record), to, drafts);
        const links = tie({ seq: entries, digest }, drafts, chainHash);
        const key = number(to.record);
        for (const link of links) add(key, link);
        return links;
      }),
    *entries(id, after = 0) {
      if (!find(id)) return;
      const key = number(id);
      for (let last = after; ; ) {
        const page = base.all(PAGE_OF_ENTRIES, key, last, PAGE).map(linkOf);
        yield* page;
        if (page.length < PAGE) return;
        last = page[page.length - 1].entry.seq;
      }
    },
    adopt: (about, digest, links) =>
      base.transaction(() => {
        if (find(about.record)) return false;
        insert(about, digest, 'imported');
        const key = number(about.record);
        for (const link of links) add(key, link);
        return true;
      }),
  };
};

const PAGE_OF_ENTRIES = 'SELECT * FROM entry WHERE record = ? AND seq > ? ORDER BY seq LIMIT ?';

const recordOf = (row: Row): RecordLine => ({
  about: JSON.parse(text(row.about)),
  entries: row.seq === null ? 0 : figure(row.seq),
  run: row.run === null ? 0 : figure(row.run),
  digest: row.head === null ? text(row.digest) : Buffer.from(blob(row.head)).toString('hex'),
  origin: text(row.origin) === 'here' ? 'here' : 'imported',
});

const linkOf = (row: Row): Link => {
  const body: Body = JSON.parse(text(row.body));
  return {
    entry: {
      seq: figure(row.seq),
      run: figure(row.run),
      mono_ms: figure(row.mono_ms),
      wall_ms: figure(row.wall_ms),
      // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- only `add` writes it
      kind: text(row.kind) as EntryKind,
      body,
    },
    digest: Buffer.from(blob(row.digest)).toString('hex'),
  };
};
