import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Base } from '../../driver/base.ts';
import { openChosenBase } from '../../driver/choose.ts';
import { migrate } from './migrate.ts';
import { MIGRATIONS } from './schema.ts';

const FIRST = "CREATE TABLE plate (heat TEXT) STRICT; INSERT INTO plate VALUES ('H1');";
const SECOND = 'ALTER TABLE plate ADD COLUMN wall REAL; UPDATE plate SET wall = 1.5;';

let dir: string;
let file: string;
let base: Base;
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'hoopwright-migrate-'));
  file = join(dir, 'a.db');
  base = openChosenBase(file);
});
afterEach(() => {
  base.close();
  rmSync(dir, { recursive: true });
});

const version = () => base.one('PRAGMA user_version')?.user_version;
const plates = (from = base) => from.all('SELECT * FROM plate').map((row) => ({ ...row }));

describe('a base', () => {
  it('is brought up step by step, and left alone once it is up', () => {
    migrate(base, file, [FIRST]);
    expect([version(), plates()]).toEqual([1, [{ heat: 'H1' }]]);
    migrate(base, file, [FIRST, SECOND]);
    migrate(base, file, [FIRST, SECOND]);
    expect([version(), plates()]).toEqual([2, [{ heat: 'H1', wall: 1.5 }]]);
  });

  it('is left as it was before a step that fails, tables and version alike', () => {
    migrate(base, file, [FIRST]);
    const half = 'CREATE TABLE half (x TEXT); DROP TABLE plate; INSERT INTO nowhere VALUES (1);';
    expect(() => migrate(base, file, [FIRST, half])).toThrow(/nowhere/);
    expect([version(), plates()]).toEqual([1, [{ heat: 'H1' }]]);
    expect(base.one("SELECT 1 FROM sqlite_schema WHERE name = 'half'")).toBeUndefined();
    migrate(base, file, [FIRST, SECOND]);
    expect(version()).toBe(2);
  });

  it('leaves a copy of its older self beside it before it is changed', () => {
    migrate(base, file, [FIRST]);
    expect(existsSync(`${file}.version-1`)).toBe(false);
    migrate(base, file, [FIRST, SECOND]);
    const copy = openChosenBase(`${file}.version-1`);
    expect(plates(copy)).toEqual([{ heat: 'H1' }]);
    copy.close();
  });

  it('newer than the program is refused in a sentence and not changed', () => {
    migrate(base, file, [FIRST, SECOND]);
    expect(() => migrate(base, file, [FIRST])).toThrow(
      'This project base was written by a newer program (its version is 2, this program knows 1): update the program. Nothing was changed.',
    );
    expect(version()).toBe(2);
  });

  it('of another program is refused and not changed', () => {
    base.run('CREATE TABLE wine (year INTEGER)');
    expect(() => migrate(base, file, MIGRATIONS)).toThrow(/base of another program/);
    expect(base.all('SELECT name FROM sqlite_schema').map(({ name }) => name)).toEqual(['wine']);
  });
});
