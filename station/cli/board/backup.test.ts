/** `hoopwright backup FILE`: everything that is kept, in a file that can be put in its place. */
import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { BASE_NAME, openStore } from '../../store/sqlite/open.ts';
import type { Desk } from '../desk/desk.ts';
import { run } from '../run.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'hoopwright-backup-'));
  vi.stubEnv('HOOPWRIGHT_DATA', join(folder, 'projects'));
});
afterEach(() => {
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true });
});

async function backup(file: string): Promise<{ readonly code: number; readonly err: string }> {
  let err = '';
  const none = (): Promise<never> => Promise.reject(new Error('not asked for'));
  const desk: Desk = {
    read: none,
    readBytes: none,
    write: none,
    out: () => {},
    err: (text) => void (err += text),
    seconds: () => 0,
    terminal: false,
  };
  return { code: await run(['backup', file], desk), err };
}

const namesIn = (dir: string): string[] => {
  const store = openStore(dir);
  try {
    return store.projects.list('kept').map(({ name }) => name);
  } finally {
    store.close();
  }
};

describe('hoopwright backup', () => {
  test('the copy, put in the place of the base, holds the projects', async () => {
    const store = openStore(join(folder, 'projects'));
    store.projects.create({ name: 'Dunlin, invented', file: '{"hoopwright":1}' });
    store.close();
    const copy = join(folder, 'copy');
    expect(await backup(copy)).toEqual({ code: 0, err: `Copied to ${copy}\n` });
    mkdirSync(join(folder, 'elsewhere'));
    renameSync(copy, join(folder, 'elsewhere', BASE_NAME));
    expect(namesIn(join(folder, 'elsewhere'))).toEqual(['Dunlin, invented']);
  });

  test('a file that is there already is left as it is', async () => {
    const taken = join(folder, 'taken');
    openStore(join(folder, 'projects')).close();
    writeFileSync(taken, 'mine');
    const { code, err } = await backup(taken);
    expect(code).toBe(2);
    expect(err).toContain(taken);
  });

  test('where nothing is kept there is nothing to copy, and none is made', async () => {
    const copy = join(folder, 'copy');
    const { code, err } = await backup(copy);
    expect([code, existsSync(copy), existsSync(join(folder, 'projects'))]).toEqual([2, false, false]);
    expect(err).toContain('HOOPWRIGHT_DATA');
  });
});
