/** How many readings a second a day takes in, judged, folded, chained and durable, when nothing paces them. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openPaceDay, paceLine } from '@hoopwright/station/day';
import { openStore } from '@hoopwright/station/store';
import { bench } from './harness.ts';

/** Of 12 channels each: 10 s of a test at 100 Hz. */
const ENTRIES = 1000;

const dir = mkdtempSync(join(tmpdir(), 'hoopwright-ingest-'));
const store = openStore(dir);
const { days, live, record } = await openPaceDay(store, { fast: 1 });
const node = days.find(record)?.http.get('node');
if (node === undefined) throw new Error('the day has no node');
let n = 0;

async function* lines(): AsyncGenerator<Uint8Array> {
  let text = '';
  for (let i = 0; i < ENTRIES; i++) text += paceLine(++n);
  yield await Promise.resolve(Buffer.from(text));
}

await bench(
  `${ENTRIES} entries of 12 channels into a day`,
  async () => {
    await node.send(lines());
    if (!live.settled()) throw new Error('the record could not be written');
  },
  { warm: 2, runs: 9, note: (_, ms) => `${Math.round((12 * ENTRIES * 1000) / ms)} readings/s` },
);
await days.close();
store.close();
rmSync(dir, { recursive: true });
