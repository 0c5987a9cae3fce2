import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { afterAll, expect, test } from 'vitest';
import { openStore } from '../store/sqlite/open.ts';
import { openPaceDay, paceLine } from './pace.ts';

const folder = mkdtempSync(join(tmpdir(), 'hoopwright-pace-'));
afterAll(() => rmSync(folder, { recursive: true }));

setFlagsFromString('--expose-gc');
const clear: unknown = runInNewContext('gc');
const heap = (): number => {
  if (typeof clear === 'function') clear();
  return process.memoryUsage().heapUsed / 1e6;
};

/** Entries in a piece, and pieces: 100 s of a test at 100 Hz; half an hour is in the soak. */
const PIECE = 2000;
const PIECES = 5;
/** 180 000 entries in half an hour may hold 50 MB: 280 bytes each. An entry of 12 channels that is kept takes 670. */
const MOST_MB = (280 * PIECE * PIECES) / 1e6;

test('memory stays flat while readings come, all of them are kept, and the trace and the rows stay short', async () => {
  const store = openStore(folder);
  const { days, live, record } = await openPaceDay(store, { fast: 1 });
  const node = days.find(record)?.http.get('node');
  let n = 0;
  async function* piece(): AsyncGenerator<Uint8Array> {
    let text = '';
    for (let i = 0; i < PIECE; i++) text += paceLine(++n);
    yield await Promise.resolve(Buffer.from(text));
  }
  const heaps: number[] = [];
  for (let i = 0; i <= PIECES; i++) {
    expect(await node?.send(piece())).toMatchObject({ taken: PIECE, bad: 0 });
    expect(live.settled()).toBe(true);
    await new Promise(setImmediate);
    heaps.push(heap());
  }
  expect(heaps[PIECES] - heaps[0]).toBeLessThan(MOST_MB);
  const readings = [...store.records.entries(record)].filter(({ entry }) => entry.kind === 'reading');
  expect(readings).toHaveLength(PIECE * (PIECES + 1));
  expect(live.state.state.channels.filter(({ last }) => last !== undefined)).toHaveLength(12);
  expect(live.trace.read().seconds.length).toBeLessThan(2100);
  await days.close();
  store.close();
});
