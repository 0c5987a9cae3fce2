import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openThreads, type Threads } from './threads.ts';

let dir: string;
let threads: Threads;
let open: () => Threads;
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'hoopwright-threads-'));
  const entry = join(dir, 'entry.mjs');
  // Sleeps without giving way, as work does, and tells which thread it was.
  writeFileSync(
    entry,
    `import { threadId } from 'node:worker_threads';
     export const work = (ms) => { const end = Date.now() + ms; while (Date.now() < end); return threadId; };
     export const fail = () => { throw new Error('as it was meant to'); };`,
  );
  open = () => openThreads(pathToFileURL(entry), { least: 1, most: 1 });
  threads = open();
});
afterAll(async () => {
  await threads.close();
  rmSync(dir, { recursive: true });
});

const work = (ms: number, signal?: AbortSignal): Promise<number> => threads.run(ms, { name: 'work', signal });

test('what waits is taken back without being begun, what runs is let run out, and the thread lives on', async () => {
  const first = await work(0);
  const stop = new AbortController();
  const began = performance.now();
  const taken = [1, 2, 3, 4].map(() => work(100, stop.signal));
  const other = work(0);
  setTimeout(() => stop.abort(), 30);
  const ends = await Promise.allSettled(taken);
  expect(ends.map((end) => end.status === 'rejected' && String(end.reason))).toEqual(
    Array.from({ length: 4 }, () => expect.stringMatching(/abort/i)),
  );
  expect(await other).toBe(first);
  expect(performance.now() - began).toBeLessThan(350);
});

test('work that fails gives its thread back', async () => {
  await expect(threads.run(0, { name: 'fail' })).rejects.toThrow('as it was meant to');
  expect(await work(0)).toBeGreaterThan(0);
});

test('closing does not wait for what has not begun: that is refused', async () => {
  const others = open();
  const all = Array.from({ length: 30 }, () => others.run(100, { name: 'work' }));
  const began = performance.now();
  const ends = Promise.allSettled(all);
  await others.close();
  expect((await ends).every((end) => end.status === 'rejected')).toBe(true);
  expect(performance.now() - began).toBeLessThan(1500);
});
