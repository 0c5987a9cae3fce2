import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { afterEach, describe, expect, test } from 'vitest';
import type { DayState, Snapshot, Tick } from '@hoopwright/wire/day';
import { hasTerminals, plugIn } from '../instrument/contract/terminal.ts';
import { serve, type Serving } from '../server/serve.ts';
import { recordLines, verifyRecord } from '../store/recordFile.ts';
import { begun, type DayScene, dayScene, ordered, shown } from './dayScene.ts';
import { emptyFold } from './live/kept.ts';
import { foldAll } from '@hoopwright/wire/day';

const ends: (() => Promise<unknown> | void)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).toReversed()) await end();
});

test('a day by wires: the simulated instruments speak by themselves', async () => {
  const day = dayScene();
  ends.push(() => day.days.close());
  const rehearsal = { seed: 3, speed: 20, faults: [], readings: 'by wires' };
  const record = await begun(day, { kind: 'rehearsal', rehearsal });
  await day.time.pass(1000);
  await ordered(day, record, { order: 'vent shut' });
  for (const from of ['1', '2', '3a']) await ordered(day, record, { order: 'go on', from });
  await day.time.pass(20_000);
  const { state, shows } = await shown(day, record);
  expect(shows).toBeUndefined();
  expect(state.figures.pressure?.value).toBeGreaterThan(5);
  expect(state.causes).toEqual([]);
  for (const { channel, last } of state.channels) expect(last?.how, channel.name).toBe('rig');
  await ordered(day, record, { order: 'end', end: 'broken off', why: 'enough' });
  await day.time.pass(1000);
  const links = [...day.store.records.entries(record)];
  // Readings come ten times a second, and none of them stands after the end.
  expect(links.at(-1)?.entry.kind).toBe('end');
  expect(day.days.line(record)).toMatchObject({ phase: 'ended', live: false });
  const line = day.store.records.find(record);
  if (line)
    expect(foldAll(emptyFold(line.about).fold, links).state).toEqual((await shown(day, record)).state);
});

test('while a test is under way nothing else is begun', async () => {
  const day = dayScene();
  ends.push(() => day.days.close());
  const record = await begun(day);
  const rehearsal = { seed: 3, speed: 20, faults: [], readings: 'by wires' };
  await expect(begun(day, { kind: 'rehearsal', rehearsal })).rejects.toThrow('no test under way');
  await ordered(day, record, { order: 'end', end: 'broken off', why: 'rain' });
  await begun(day, { kind: 'rehearsal', rehearsal });
});

const real = (ms: number, work: () => void): (() => void) => {
  const timer = setTimeout(work, ms);
  return () => clearTimeout(timer);
};

/** A server behind a socket, in real time. */
async function served(): Promise<{ day: DayScene; serving: Serving }> {
  const clocks = { later: real, real: () => performance.now(), wall: () => Date.now() };
  const day = dayScene(clocks);
  const serving = await serve({
    store: day.store,
    days: day.days,
    port: 0,
    log: (error) => day.logged.push(error),
  });
  ends.push(
    () => serving.close(),
    () => day.days.close(),
  );
  return { day, serving };
}

const until = async (what: string, holds: () => boolean): Promise<void> => {
  for (let i = 0; i < 400; i++) {
    if (holds()) return;
    await new Promise((resolve) => void setTimeout(resolve, 10));
  }
  throw new Error(`waited in vain: ${what}`);
};

const stateOf = (day: DayScene, record: string): DayState => {
  const found = day.days.find(record)?.day.state.state;
  if (found === undefined) throw new Error('the day does not run');
  return found;
};

describe.skipIf(!hasTerminals())('serial lines (need pseudo-terminals)', () => {
  test('two that are swapped are noticed; noise is no reading; a person accepts, and it goes on', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'hoopwright-swapped-'));
    ends.push(() => rmSync(folder, { recursive: true }));
    const paths = ['one', 'two'].map((name) => join(folder, name));
    const [one, two] = await Promise.all(paths.map((path) => plugIn(path)));
    const { day } = await served();
    const serial = (name: string, path: string, channel: string) => ({
      kind: 'serial',
      name,
      path,
      baud: 9600,
      line: { form: 'fields', separator: ',', channels: [channel] },
      proof: { begins: `#${name}` },
    });
    const sources = [serial('box A', paths[0], 'gauge A'), serial('box B', paths[1], 'gauge B')];
    const record = await begun(day, { sources });
    const last = (name: string): number | undefined =>
      stateOf(day, record).channels.find(({ channel }) => channel.name === name)?.last?.value;
    await until('both', () => {
      one.say('1.5\n');
      two.say('2.5\n');
      return last('gauge A') === 1.5 && last('gauge B') === 2.5;
    });
    one.say(Buffer.from(Array.from({ length: 5000 }, (_, i) => (i * 73) & 0xff)));
    await Promise.all([one.pull(), two.pull()]);
    const swapped = await Promise.all(paths.toReversed().map((path) => plugIn(path)));
    ends.push(() => Promise.all(swapped.map((terminal) => terminal.pull())));
    const unproved = (): string[] =>
      stateOf(day, record).troubles.flatMap(({ what, source = '' }) =>
        what === 'source unproved' ? [source] : [],
      );
    await until('the swap is noticed', () => {
      swapped[0].say('#box A\n9.5\n');
      swapped[1].say('#box B\n8.5\n');
      return unproved().length === 2;
    });
    expect(stateOf(day, record).channels.find(({ channel }) => channel.name === 'gauge A')?.unproved).toBe(
      'box A',
    );
    expect([last('gauge A'), last('gauge B')]).toEqual([1.5, 2.5]);
    const accepted = await ordered(day, record, { order: 'accept source', source: 'box B' });
    expect(accepted.status).toBe(200);
    await until('the accepted one is read', () => {
      swapped[0].say('9.75\n');
      return last('gauge B') === 9.75;
    });
    expect(last('gauge A')).toBe(1.5);
    expect(verifyRecord(recordLines(day.store.records, record)).kind).toBe('whole');
  });
});

describe('the stream', () => {
  test('gives the whole state first, then what changes, and beats once a second though nothing does', async () => {
    const { day, serving } = await served();
    const record = await begun(day);
    const left = new AbortController();
    const answer = await fetch(`${serving.url}api/days/${record}/stream`, { signal: left.signal });
    const ticks: { at: number; tick: Tick }[] = [];
    const reading = (async () => {
      const decoder = new TextDecoder();
      let text = '';
      for await (const piece of answer.body ?? []) {
        text += decoder.decode(piece, { stream: true });
        for (let end = text.indexOf('\n\n'); end >= 0; end = text.indexOf('\n\n')) {
          const data = /^data: (.*)$/m.exec(text.slice(0, end))?.[1];
          text = text.slice(end + 2);
          if (data !== undefined && data !== '{}')
            ticks.push({ at: performance.now(), tick: JSON.parse(data) as Tick });
        }
      }
    })().catch(() => {});
    await until('the whole', () => ticks.length > 0);
    expect(ticks[0].tick.changed).toMatchObject({ phase: 'set up', plan: expect.anything() });
    const sent = performance.now();
    await ordered(day, record, { order: 'row', how: 'by hand', values: { 'gauge A': 1.5 } });
    await until('the reading', () => ticks.some(({ tick }) => tick.changed.figures?.pressure?.value === 1.5));
    const came = ticks.find(({ tick }) => tick.changed.figures?.pressure?.value === 1.5);
    expect((came?.at ?? Infinity) - sent).toBeLessThan(1000);
    expect(came?.tick.more.channels).toEqual([{ name: 'gauge A', low: [1.5], high: [1.5] }]);
    expect(came?.tick.changed.plan).toBeUndefined();
    const beats = ticks.length;
    await until('two beats', () => ticks.length >= beats + 2);
    const steps = ticks.slice(1).map(({ at }, i) => at - ticks[i].at);
    expect(Math.max(...steps)).toBeLessThan(2000);
    // A screen that lays the ticks over each other stands where the server stands.
    let page: Partial<DayState> = {};
    for (const { tick } of ticks) {
      page = { ...page, ...tick.changed };
      for (const key of tick.gone ?? []) delete (page as Record<string, unknown>)[key];
    }
    const { state } = (await (await fetch(`${serving.url}api/days/${record}`)).json()) as Snapshot;
    expect(page).toEqual(state);
    left.abort();
    await reading;
  });
});
