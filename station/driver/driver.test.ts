import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Base } from './base.ts';
import { Trouble } from './base.ts';
import { betterSqlite } from './better.ts';
import { builtinSqlite } from './builtin.ts';
import { NO_DRIVER, openChosenBase } from './choose.ts';

/** Those that this machine has: Node brings one from 22.13 on, the other must compile or come prebuilt. */
const drivers = Object.entries({ 'node:sqlite': builtinSqlite, 'better-sqlite3': betterSqlite }).filter(
  ([, choice]) => choice(0) !== undefined,
);

it('has at least one driver to test', () => {
  expect(drivers.length).toBeGreaterThan(0);
});

let dir: string;
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'hoopwright-driver-'));
});
afterEach(() => {
  rmSync(dir, { recursive: true });
});

const caught = (work: () => unknown): unknown => {
  try {
    work();
  } catch (error) {
    return error;
  }
  return undefined;
};

describe.each(drivers)('a base through %s', (_, choice) => {
  const open = (name = 'a.db'): Base => openChosenBase(join(dir, name), [() => choice(0)]);
  const seats = (base: Base) => base.all('SELECT * FROM seat ORDER BY id').map((row) => ({ ...row }));
  const seated = (): Base => {
    const base = open();
    base.run(
      'CREATE TABLE seat (id INTEGER PRIMARY KEY, mm REAL, mark BLOB); INSERT INTO seat VALUES (7, 1.5, NULL)',
    );
    return base;
  };

  it('gives back numbers, texts, bytes and nothing as they were put in', () => {
    const base = open();
    base.run('CREATE TABLE t (a, b, c, d)');
    const bytes = Uint8Array.of(0, 255, 13, 10);
    base.change('INSERT INTO t VALUES (?, ?, ?, ?)', 1_790_000_000_123.25, 'é\r\n', bytes, null);
    const row = base.one('SELECT * FROM t');
    expect(row).toMatchObject({ a: 1_790_000_000_123.25, b: 'é\r\n', d: null });
    expect(row?.c instanceof Uint8Array && [...row.c]).toEqual([...bytes]);
    expect(base.one('SELECT * FROM t WHERE a = 1')).toBeUndefined();
    base.close();
  });

  it('writes ahead and syncs in full', () => {
    const base = open();
    expect(base.one('PRAGMA journal_mode')?.journal_mode).toBe('wal');
    expect(base.one('PRAGMA synchronous')?.synchronous).toBe(2);
    expect(base.one('PRAGMA foreign_keys')?.foreign_keys).toBe(1);
    base.close();
  });

  it('keeps all of a transaction or nothing, also when a statement is wrong', () => {
    const base = seated();
    const half = () =>
      base.transaction(() => {
        base.change('INSERT INTO seat VALUES (8, 2.5, NULL)');
        base.run('INSERT INTO nowhere VALUES (1)');
      });
    expect(half).toThrow(/nowhere/);
    expect(seats(base)).toEqual([{ id: 7, mm: 1.5, mark: null }]);
    expect(base.transaction(() => base.change('UPDATE seat SET mm = 3.5 WHERE id < 9'))).toBe(1);
    base.close();
  });

  it('tells that another program holds the base, and carries on when it lets go', () => {
    const [mine, rival] = [seated(), open()];
    rival.run('BEGIN IMMEDIATE');
    const error = caught(() => mine.transaction(() => mine.change('DELETE FROM seat')));
    expect(error).toBeInstanceOf(Trouble);
    expect(error).toMatchObject({ kind: 'locked' });
    expect(seats(mine)).toHaveLength(1);
    rival.run('ROLLBACK');
    expect(mine.transaction(() => mine.change('DELETE FROM seat'))).toBe(1);
    mine.close();
    rival.close();
  });

  it('tells that the disk is full, keeps what was there, and carries on when there is room', () => {
    const base = seated();
    base.run('PRAGMA max_page_count = 4');
    const fill = () => base.transaction(() => base.change('INSERT INTO seat VALUES (9, 1, zeroblob(99999))'));
    expect(caught(fill)).toMatchObject({ name: 'Trouble', kind: 'full' });
    expect(seats(base)).toEqual([{ id: 7, mm: 1.5, mark: null }]);
    base.run('PRAGMA max_page_count = 400');
    expect(fill()).toBe(1);
    base.close();
  });

  it('tells that a file is no base', () => {
    writeFileSync(
      join(dir, 'text.db'),
      'This is a text and no base, and it is longer than a header. '.repeat(9),
    );
    expect(caught(() => open('text.db'))).toMatchObject({ name: 'Trouble', kind: 'broken' });
  });

  it('is copied whole while it stays in use', async () => {
    const base = seated();
    const copying = base.backup(join(dir, 'copy.db'));
    await copying;
    base.change('DELETE FROM seat');
    const copy = open('copy.db');
    expect(seats(copy)).toEqual([{ id: 7, mm: 1.5, mark: null }]);
    copy.close();
    base.close();
  });
});

describe('the choice of a driver', () => {
  it('takes the first that is there', () => {
    const base = openChosenBase(join(dir, 'a.db'));
    expect(base.driver).toBe(builtinSqlite(0) ? 'node:sqlite' : 'better-sqlite3');
    base.close();
  });

  it('says in one sentence what to do when none is there', () => {
    expect(() => openChosenBase(join(dir, 'a.db'), [() => undefined])).toThrow(NO_DRIVER);
  });
});
