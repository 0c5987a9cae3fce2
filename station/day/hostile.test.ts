/** A day under way, and what a broken or hostile wire sends it: the server stays up, the good readings stand, the record is whole. */
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Aedes } from 'aedes';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { SourceSetUp } from '@hoopwright/wire/reading';
import { hasTerminals, plugIn, type Terminal } from '../instrument/contract/terminal.ts';
import { serve, type Serving } from '../server/serve.ts';
import { recordLines, verifyRecord } from '../store/recordFile.ts';
import { openStore } from '../store/sqlite/open.ts';
import type { Store } from '../store/store.ts';
import { openPaceDay, type PaceDay } from './pace.ts';

const folder = mkdtempSync(join(tmpdir(), 'hoopwright-hostile-day-'));
const path = join(folder, 'box');
let [store, day, serving]: [Store?, PaceDay?, Serving?] = [];
let terminal: Terminal | undefined;
let broker: Awaited<ReturnType<typeof Aedes.createBroker>> | undefined;
const BOX: SourceSetUp = {
  kind: 'serial',
  name: 'box',
  path,
  baud: 115_200,
  line: { form: 'fields', separator: ';', channels: ['low'] },
};
const logged: unknown[] = [];

const listening = (server: ReturnType<typeof createServer>): Promise<number> =>
  new Promise((resolve) => {
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      resolve(typeof address === 'object' && address !== null ? address.port : 0);
    });
  });
let server: ReturnType<typeof createServer> | undefined;

beforeAll(async () => {
  if (hasTerminals()) terminal = await plugIn(path);
  broker = await Aedes.createBroker();
  server = createServer(broker.handle);
  const port = await listening(server);
  store = openStore(join(folder, 'base'));
  day = await openPaceDay(store, {
    fast: 1,
    sources: [
      {
        kind: 'mqtt',
        name: 'broker',
        url: `mqtt://127.0.0.1:${port}`,
        topics: [{ topic: 'p/#', number: 'gauge B' }],
      },
      ...(terminal === undefined ? [] : [BOX]),
    ],
  });
  serving = await serve({ store, days: day.days, port: 0, log: (error) => logged.push(error) });
});

afterAll(async () => {
  await day?.days.close();
  await serving?.close();
  await terminal?.pull();
  await new Promise<void>((resolve) => (broker === undefined ? resolve() : broker.close(() => resolve())));
  server?.close();
  store?.close();
  rmSync(folder, { recursive: true });
});

const lastOf = (name: string): number | undefined =>
  day?.live.state.state.channels.find(({ channel }) => channel.name === name)?.last?.value;

async function until(is: () => boolean): Promise<void> {
  const end = Date.now() + 20_000;
  while (!is()) {
    if (Date.now() > end) throw new Error('it never came');
    await new Promise((resolve) => void setTimeout(resolve, 20));
  }
}

const post = async (body: string | Uint8Array): Promise<{ taken: number; bad: number }> => {
  const answer = await fetch(`${serving?.url}api/days/${day?.record}/readings/node`, {
    method: 'POST',
    body: typeof body === 'string' ? body : Buffer.from(body),
    headers: { 'content-type': 'application/x-ndjson' },
  });
  return (await answer.json()) as { taken: number; bad: number };
};

const upAndWhole = async (): Promise<void> => {
  expect((await fetch(`${serving?.url}api/health`)).status).toBe(200);
  if (store === undefined || day === undefined) throw new Error('no day');
  expect(verifyRecord(recordLines(store.records, day.record)).kind).toBe('whole');
  expect(logged).toEqual([]);
};

test('malformed lines, a line of 10 MB and binary noise by HTTP (1e5 lines; 1e6 in the soak)', async () => {
  const entries = store?.records.find(day?.record ?? '')?.entries ?? 0;
  const bad = '{"a": nonsense}\n[1,2]\n{"a": "1.5"}\n{"__proto__": {"a": 1}}\n\u0000\n'.repeat(20_000);
  expect(await post(`${bad}{"a": 1.25}\n`)).toMatchObject({ taken: 1, bad: 100_000 });
  expect(await post(`{"a": ${'9'.repeat(10_000_000)}}\n{"a": 1.5}\n`)).toMatchObject({ taken: 1, bad: 1 });
  const noise = Uint8Array.from({ length: 1_000_000 }, (_, i) => (i * 2654435761) >>> 13);
  expect((await post(noise)).taken).toBe(0);
  await until(() => lastOf('gauge A') === 1.5);
  // Two readings; what was bad left nothing in the record.
  expect((store?.records.find(day?.record ?? '')?.entries ?? 0) - entries).toBeLessThanOrEqual(4);
  await upAndWhole();
});

test('a reading is acknowledged when it is durable', async () => {
  await post('{"a": 1.375}\n');
  const links = [...(store?.records.entries(day?.record ?? '') ?? [])];
  expect(links.some(({ entry }) => JSON.stringify(entry.body).includes('1.375'))).toBe(true);
});

test('a hostile message by MQTT', async () => {
  const publish = (payload: Buffer): void =>
    broker?.publish({ cmd: 'publish', qos: 0, dup: false, retain: false, topic: 'p/1', payload }, () => {});
  await until(() => {
    publish(Buffer.from('1.5'));
    return lastOf('gauge B') === 1.5;
  });
  publish(Buffer.alloc(10_000_000, '9'));
  publish(Buffer.from([0xff, 0, 0xfe]));
  publish(Buffer.from('{"constructor": {"prototype": 1}}'));
  publish(Buffer.from('1.625'));
  await until(() => lastOf('gauge B') === 1.625);
  await upAndWhole();
});

test.skipIf(!hasTerminals())(
  'binary noise and a line without an end on serial (needs pseudo-terminals)',
  async () => {
    await until(() => {
      terminal?.say('1263.25\n');
      return lastOf('low') === 1263.25;
    });
    terminal?.say(Uint8Array.from({ length: 200_000 }, (_, i) => (i * 2654435761) >>> 11));
    terminal?.say('9'.repeat(1_000_000));
    terminal?.say('\n1263.5\n');
    await until(() => lastOf('low') === 1263.5);
    await upAndWhole();
  },
);
