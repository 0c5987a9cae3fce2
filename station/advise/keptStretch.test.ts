import { mkdtempSync, readdirSync, rmSync, truncateSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DAY_RUNS } from '@hoopwright/core/stretch';
import { parseTankFile } from '@hoopwright/wire/tank';
import { afterAll, expect, test } from 'vitest';
import { TEST_TANK } from '../day/rehearsed.ts';
import { here, type ShellRunner } from '../range/runner.ts';
import { keptStretch } from './keptStretch.ts';

const dir = mkdtempSync(join(tmpdir(), 'kept-'));
afterAll(() => rmSync(dir, { recursive: true }));

const certificate = { Rp02_MPa: 268, Rm_MPa: 611 };
const given = parseTankFile(JSON.stringify({ ...TEST_TANK, steel: { grade: '1.4307', certificate } }));
if (!given.ok) throw new Error(JSON.stringify(given.issues));

test('a second start takes what was kept with the plan; another plan, or a damaged copy, is solved anew', async () => {
  const solves: number[] = [];
  const held: number[] = [];
  const told: number[] = [];
  // One shell is solved for all: what is kept is looked at, not how good it is.
  const run: ShellRunner = async (messages, { done }) => {
    solves.push(messages.length);
    held.push(messages.filter(({ target }) => target !== undefined).length);
    const [one] = await here(messages.slice(0, 1), {});
    return messages.map(() => (done?.(), one));
  };
  const start = (digest: string) =>
    keptStretch({
      dir,
      digest,
      given,
      files: new Map(),
      run,
      progress: ({ done, all }) => told.push(done / all),
    });
  const first = await start('a1');
  expect(solves).toHaveLength(1);
  expect(told.at(-1)).toBe(1);
  // Fitted ones, which go through a final hold, and half as many held back.
  expect(solves[0]).toBe(1.5 * DAY_RUNS);
  expect(held[0]).toBe(DAY_RUNS);
  expect(first?.draws.length).toBeGreaterThan(100);
  const again = await start('a1');
  expect(solves).toHaveLength(1);
  expect(told).toHaveLength(solves[0]);
  expect(again).toEqual(first);
  await start('b2');
  expect(solves).toHaveLength(2);
  for (const name of readdirSync(join(dir, 'foresight'))) truncateSync(join(dir, 'foresight', name), 1000);
  expect(await start('a1')).toEqual(first);
  expect(solves).toHaveLength(3);
});
