import { mkdtempSync, readFileSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Base } from '../../driver/base.ts';
import { openChosenBase } from '../../driver/choose.ts';
import { recordLines, verifyRecord } from '../recordFile.ts';
import { openRecorder } from '../recorder.ts';
import type { Store } from '../store.ts';
import { BASE_NAME, openStore } from './open.ts';

let dir: string;
let store: Store;
beforeEach(() => {
  dir = join(mkdtempSync(join(tmpdir(), 'hoopwright-store-')), 'projects');
  store = openStore(dir);
});
afterEach(() => {
  store.close();
  rmSync(join(dir, '..'), { recursive: true });
});

const behind = (work: (base: Base) => void): void => {
  const base = openChosenBase(join(dir, BASE_NAME));
  try {
    work(base);
  } finally {
    base.close();
  }
};

const recordOfTwo = (): string => {
  const { about } = store.records.begin({ kind: 'test', title: 'Dunlin, invented' });
  const draft = {
    run: 1,
    mono_ms: 1.5,
    wall_ms: 2.5,
    kind: 'reading',
    body: { values: { P1: 3.5 } },
  } as const;
  store.records.append({ record: about.record, kind: 'test' }, [draft, draft]);
  return about.record;
};

describe('the base of a store', () => {
  it('keeps everything when it is closed and opened again', () => {
    const { id } = store.projects.create({ name: 'Dunlin', file: '{"wall_mm": 1.50}' }).project;
    const record = recordOfTwo();
    const { secret } = store.tokens.make({ label: 'phone', role: 'viewer' });
    store.close();
    store = openStore(dir);
    expect(store.projects.open(id)?.version.file).toBe('{"wall_mm": 1.50}');
    expect(store.records.find(record)?.entries).toBe(2);
    expect(store.tokens.check(secret)?.label).toBe('phone');
  });

  it.skipIf(process.platform === 'win32')('can be read by nobody else on the machine', () => {
    expect(statSync(dir).mode & 0o077).toBe(0);
    for (const name of readdirSync(dir)) expect(statSync(join(dir, name)).mode & 0o077, name).toBe(0);
    expect(readdirSync(dir).length).toBeGreaterThan(1);
  });

  it('holds no secret of a token', () => {
    const { secret } = store.tokens.make({ label: 'phone', role: 'viewer' });
    store.close();
    const files = readdirSync(dir).map((name) => readFileSync(join(dir, name)));
    store = openStore(dir);
    expect(files.some((bytes) => bytes.includes('phone'))).toBe(true);
    expect(files.some((bytes) => bytes.includes(secret))).toBe(false);
  });

  it('lets nobody change, delete or replace a frozen plan', () => {
    const { id } = store.projects.create({ name: 'Dunlin', file: '{}' }).project;
    behind((base) => {
      base.change("INSERT INTO plan VALUES (?, 'd1', 'A', 1, 2.5, NULL, '{}')", id);
      expect(() => base.run("UPDATE plan SET content = '[]'")).toThrow('a frozen plan is never changed');
      expect(() => base.run('DELETE FROM plan')).toThrow('a frozen plan is never deleted');
      expect(() => base.run('INSERT OR REPLACE INTO plan SELECT * FROM plan')).toThrow(
        'a revision is never given twice',
      );
    });
  });

  it('lets nobody change, delete, replace or skip an entry of a record', () => {
    const record = recordOfTwo();
    behind((base) => {
      expect(() => base.run("UPDATE entry SET body = '{}' WHERE seq = 1")).toThrow(
        'an entry is never changed',
      );
      expect(() => base.run('DELETE FROM entry WHERE seq = 2')).toThrow('an entry is never deleted');
      expect(() => base.run('INSERT OR REPLACE INTO entry SELECT * FROM entry WHERE seq = 1')).toThrow(
        'an entry follows the last one',
      );
      const skip =
        'INSERT INTO entry SELECT record, 4, run, mono_ms, wall_ms, kind, body, digest FROM entry LIMIT 1';
      expect(() => base.run(skip)).toThrow('an entry follows the last one');
      expect(() => base.run("UPDATE record SET origin = 'here'")).toThrow('a record is never changed');
      expect(() => base.run('DELETE FROM record')).toThrow(/never deleted|FOREIGN KEY/);
    });
    expect([...store.records.entries(record)]).toHaveLength(2);
  });

  it('lets nobody change or delete a version', () => {
    store.projects.create({ name: 'Dunlin', file: '{"wall_mm": 1.50}' });
    behind((base) => {
      expect(() => base.run("UPDATE version SET file = '{}'")).toThrow('a version is never changed');
      expect(() => base.run('DELETE FROM version')).toThrow('a version is never deleted');
      const again = 'INSERT OR REPLACE INTO version SELECT * FROM version';
      expect(() => base.run(again)).toThrow('a version number is never given twice');
    });
  });

  it('held by another program refuses the save with a sentence, tells nobody, and loses nothing', () => {
    const { id } = store.projects.create({ name: 'Dunlin', file: '{"wall_mm": 1.50}' }).project;
    const told: string[] = [];
    store.changes.watch(({ kind }) => told.push(kind));
    behind((rival) => {
      rival.run('BEGIN IMMEDIATE');
      expect(() => store.projects.save(id, { basedOn: 1, file: '{}' })).toThrow(
        /Another program holds the project base/,
      );
      rival.run('ROLLBACK');
    });
    expect(told).toEqual([]);
    expect(store.projects.save(id, { basedOn: 1, file: '{}' }).kind).toBe('done');
    expect(told).toEqual(['saved']);
  });

  it('held by another program lets a recorder wait: readings are kept in memory and written when it lets go', async () => {
    const { record } = store.records.begin({ kind: 'test', title: 'Dunlin, invented' }).about;
    const told: (string | undefined)[] = [];
    const recorder = openRecorder({
      records: store.records,
      to: { record, kind: 'test' },
      now: () => ({ mono_ms: 1.5, wall_ms: 2.5 }),
      later: () => () => {},
      told: ({ trouble }) => told.push(trouble?.kind),
    });
    const first = recorder.write('reading', { values: { P1: 3.5 } });
    const rival = openChosenBase(join(dir, BASE_NAME));
    rival.run('BEGIN IMMEDIATE');
    expect(recorder.flush()).toBe(false);
    const second = recorder.write('reading', { values: { P1: 3.75 } });
    expect(recorder.state()).toMatchObject({ waiting: 2, trouble: { kind: 'locked' } });
    rival.close();
    expect(recorder.flush()).toBe(true);
    expect([(await first).entry.seq, (await second).entry.seq, told]).toEqual([1, 2, ['locked', undefined]]);
    expect(verifyRecord(recordLines(store.records, record))).toMatchObject({ kind: 'whole', entries: 2 });
  });

  it('is copied whole, and the copy is a store of its own', async () => {
    const { id } = store.projects.create({ name: 'Dunlin', file: '{"wall_mm": 1.50}' }).project;
    const copyDir = join(dir, '..', 'copy');
    openStore(copyDir).close();
    rmSync(join(copyDir, BASE_NAME));
    await store.backup(join(copyDir, BASE_NAME));
    store.projects.save(id, { basedOn: 1, file: '{"wall_mm": 2}' });
    const copy = openStore(copyDir);
    expect(copy.projects.open(id)?.version).toMatchObject({ number: 1, file: '{"wall_mm": 1.50}' });
    copy.close();
  });

  it('is never copied over a file that is there', async () => {
    const copy = join(dir, 'copy.db');
    await store.backup(copy);
    await expect(store.backup(copy)).rejects.toThrow(/is there already/);
  });

  it('in a folder that cannot be one says what to do', () => {
    const file = join(dir, BASE_NAME, 'inner');
    expect(() => openStore(file)).toThrow(/cannot be written: name another one in HOOPWRIGHT_DATA/);
  });
});
