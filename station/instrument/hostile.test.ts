import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Aedes } from 'aedes';
import { afterAll, expect, test } from 'vitest';
import type { LineFormat } from '@hoopwright/wire/reading';
import { Listener } from './contract/contract.ts';
import { hasTerminals, plugIn } from './contract/terminal.ts';
import { httpSource } from './http.ts';
import { fits, mqttSource } from './mqtt.ts';
import { serialSource } from './serial.ts';

const folder = mkdtempSync(join(tmpdir(), 'hoopwright-hostile-'));
afterAll(() => rmSync(folder, { recursive: true }));

const later = (ms: number, work: () => void): (() => void) => {
  const timer = setTimeout(work, ms / 20);
  return () => clearTimeout(timer);
};

test('topics are matched by their levels', () => {
  expect(fits('tank/+/p', 'tank/1/p')).toBe(true);
  expect(fits('tank/#', 'tank/1/p')).toBe(true);
  expect(fits('tank/+', 'tank/1/p')).toBe(false);
  expect(fits('tank/1/p', 'tank/1')).toBe(false);
  expect(fits('tank', 'tanks')).toBe(false);
});

test('a hostile message of megabytes, and one of binary noise, are counted and passed over', async () => {
  const aedes = await Aedes.createBroker();
  const server = createServer(aedes.handle);
  const port = await new Promise<number>((resolve) => {
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      resolve(typeof address === 'object' && address !== null ? address.port : 0);
    });
  });
  const told = new Listener();
  const topics = [{ topic: 'gauge/+', number: 'P1' }];
  const running = mqttSource(
    { kind: 'mqtt', name: 'b', url: `mqtt://127.0.0.1:${port}`, topics },
    later,
  ).start(told);
  const publish = (payload: Buffer): void =>
    aedes.publish({ cmd: 'publish', qos: 0, dup: false, retain: false, topic: 'gauge/1', payload }, () => {});
  await told.until('open', () => told.standing === 'open');
  publish(Buffer.alloc(5_000_000, '9'));
  publish(Buffer.from([0xff, 0xfe, 0, 1]));
  publish(Buffer.from('{"__proto__":1}'));
  publish(Buffer.from('17.25'));
  await told.until('the good one', () => told.readings.length > 0);
  expect(told.readings).toEqual([{ P1: 17.25 }]);
  expect(told.bads).toHaveLength(3);
  await running.stop();
  await new Promise<void>((resolve) => aedes.close(() => resolve()));
  await new Promise<void>((resolve) => void server.close(() => resolve()));
});

test('a hundred thousand malformed lines by HTTP are counted, and the readings among them taken', async () => {
  const told = new Listener();
  const source = httpSource({ kind: 'http', name: 'logger', names: { p: 'P1' } });
  const running = source.start(told);
  async function* body(): AsyncGenerator<Uint8Array> {
    const piece = Buffer.from('{"p": nonsense}\n'.repeat(1000));
    for (let i = 0; i < 100; i++) yield await Promise.resolve(piece);
    yield Buffer.from('{"p": 3.5}\n{"p": 4.5}');
  }
  expect(await source.send(body())).toEqual({ taken: 2, bad: 100_000, why: 'not a JSON object' });
  expect(told.readings).toEqual([{ P1: 3.5 }, { P1: 4.5 }]);
  await running.stop();
  expect(await source.send(body())).toBeUndefined();
});

test.skipIf(!hasTerminals())(
  'two terminals that were swapped are noticed (needs pseudo-terminals)',
  async () => {
    const paths = ['a', 'b'].map((name) => join(folder, name));
    const line: LineFormat = { form: 'fields', separator: ' ', channels: ['P1'] };
    const boxes = paths.map((path, i) => {
      const proof = { begins: `#box ${i}` };
      const parts = { later, serialNumber: () => Promise.resolve(undefined) };
      return serialSource({ kind: 'serial', name: `box ${i}`, path, baud: 9600, line, proof }, parts);
    });
    const terminals = [await plugIn(paths[0]), await plugIn(paths[1])];
    const told = boxes.map(() => new Listener());
    const running = boxes.map((box, i) => box.start(told[i]));
    for (const one of told) await one.until('open', () => one.standing === 'open');
    terminals.forEach((terminal, i) => terminal.say(`#box ${i}\n${10 + i}\n`));
    for (const one of told) await one.until('a reading', () => one.readings.length === 1);
    for (const terminal of terminals) await terminal.pull();
    for (const one of told) await one.until('lost', () => one.standing === 'lost');

    const swapped = [await plugIn(paths[1]), await plugIn(paths[0])];
    for (const one of told) await one.until('unproved', () => one.standing === 'unproved');
    swapped.forEach((terminal, i) => terminal.say(`#box ${i}\n${20 + i}\n`));
    swapped.forEach((terminal, i) => terminal.say(`${20 + i}\n`));
    // A person looks, and says that they are well so: what comes then is taken, what came before is not.
    running[0].accept();
    await told[0].until('accepted', () => told[0].standing === 'open');
    swapped[1].say('33\n');
    await told[0].until('the reading after that', () => told[0].readings.some(({ P1 }) => P1 === 33));
    expect(told[1].readings).toEqual([{ P1: 11 }]);
    expect(told[1].standing).toBe('unproved');
    for (const one of running) await one.stop();
    for (const terminal of swapped) await terminal.pull();
  },
);
