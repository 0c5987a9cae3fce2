/**
 * A million malformed lines by HTTP into a test that is under way, among them good ones, and a line of 10 MB. The server
 * must answer all the time, take every good line, and keep the record whole. LINES=n for fewer.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { openPaceDay } from '@hoopwright/station/day';
import { serve } from '@hoopwright/station/server';
import { openStore, recordLines, verifyRecord } from '@hoopwright/station/store';

const LINES = Number(process.env['LINES'] ?? 1_000_000);
/** Among so many lines one is good. */
const GOOD_EVERY = 10_000;

const say = (text: string): void => void process.stdout.write(`${text}\n`);

const HOSTILE = [
  '{"a": nonsense}',
  '[1,2]',
  '{"a": "1.5"}',
  '{"__proto__": {"a": 1}}',
  '\u0000\u0007',
  '{"a": 1e999}',
  'null',
];

async function* lines(): AsyncGenerator<Uint8Array> {
  let text = '';
  for (let i = 1; i <= LINES; i++) {
    text += i % GOOD_EVERY === 0 ? '{"a": 1.5}\n' : `${HOSTILE[i % HOSTILE.length]}\n`;
    if (i % 2000 !== 0) continue;
    yield Buffer.from(text);
    text = '';
  }
  yield Buffer.from(`${text}{"a": ${'9'.repeat(10_000_000)}}\n{"a": 1.25}\n`);
}

const dir = mkdtempSync(join(tmpdir(), 'hoopwright-hostile-'));
const store = openStore(dir);
const { days, record, live } = await openPaceDay(store, { fast: 1 });
const serving = await serve({ store, days, port: 0, log: (error) => console.error(error) });
const source = lines();
const body = new ReadableStream<Uint8Array>({
  pull: async (out) => {
    const next = await source.next();
    if (next.done === true) out.close();
    else out.enqueue(next.value);
  },
});
const slowest = { ms: 0 };
const asks = setInterval(() => {
  const at = performance.now();
  void fetch(`${serving.url}api/health`).then(() => {
    slowest.ms = Math.max(slowest.ms, performance.now() - at);
  });
}, 100);
const began = performance.now();
const init = {
  method: 'POST',
  body,
  headers: { 'content-type': 'application/x-ndjson' },
  duplex: 'half',
} as const;
const answer = await fetch(`${serving.url}api/days/${record}/readings/node`, init);
const sent: { readonly taken: number; readonly bad: number } = JSON.parse(await answer.text());
clearInterval(asks);
const wanted = Math.floor(LINES / GOOD_EVERY) + 1;
const verdict = verifyRecord(recordLines(store.records, record));
say(
  `${LINES} lines in ${((performance.now() - began) / 1000).toFixed(1)} s: ${sent.bad} bad, ${sent.taken} good of ${wanted}; slowest answer meanwhile ${slowest.ms.toFixed(0)} ms; record ${verdict.kind} with ${live.state.state.seq} entries`,
);
await days.close();
await serving.close();
store.close();
rmSync(dir, { recursive: true });
if (sent.taken !== wanted || verdict.kind !== 'whole') process.exitCode = 1;
