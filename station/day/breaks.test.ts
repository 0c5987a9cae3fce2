import { mkdtempSync, readFileSync, rmSync, mkdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { Trouble, type TroubleKind } from '../driver/base.ts';
import { openMemoryStore } from '../store/memory/open.ts';
import { recordLines, verifyRecord } from '../store/recordFile.ts';
import type { Store } from '../store/store.ts';
import { begun, type DayScene, dayScene, ordered, shown } from './dayScene.ts';

const open: { close(): Promise<void> }[] = [];
afterEach(async () => {
  for (const one of open.splice(0)) await one.close();
});

const scene = (...given: Parameters<typeof dayScene>): DayScene => {
  const day = dayScene(...given);
  open.push(day.days);
  return day;
};

/** The program dies and is started anew on the same store: nothing is closed, nothing said. */
async function startedAnew(day: DayScene): Promise<DayScene> {
  const { time, store } = day;
  const after = dayScene({ store, later: time.later, wall: time.wall, real: time.real });
  open.push(after.days);
  const resumed = after.days.resume();
  await time.pass(200);
  await resumed;
  return { ...after, time };
}

const toHold = async (day: DayScene, record: string): Promise<void> => {
  await ordered(day, record, { order: 'vent shut' });
  const { plan } = (await shown(day, record)).state;
  for (const { number, kind } of plan?.plan.steps ?? []) {
    if (kind === 'hold') return;
    await ordered(day, record, { order: 'go on', from: number });
  }
};

const row = (values: Readonly<Record<string, number>>) => ({ order: 'row', how: 'by hand', values }) as const;

describe('a restart', () => {
  test('opens on BROKEN OFF, and a fresh gauge reading with the step leads on', async () => {
    const day = scene();
    const record = await begun(day);
    await toHold(day, record);
    await ordered(day, record, row({ 'gauge A': 24.5, low: 1283.85 }));
    const before = (await shown(day, record)).state;
    await day.time.pass(600_000);
    const anew = await startedAnew(day);
    const { state, live } = await shown(anew, record);
    expect(live).toBe(true);
    expect(state).toMatchObject({ phase: 'broken off', run: 2, broken: { lastPressure_bar: 24.5 } });
    expect(state.broken?.since_ms).toBe(before.wall_ms);
    expect(state.step).toEqual(before.step);
    expect(state.gaps.at(-1)).toMatchObject({ cause: 'restart' });
    const step = state.step?.number ?? '';
    expect((await ordered(anew, record, { order: 'go on', from: step })).status).toBe(409);
    expect((await ordered(anew, record, { order: 'confirm step', step, values: {} })).status).toBe(409);
    const values = { 'gauge A': 24.1 };
    expect((await ordered(anew, record, { order: 'confirm step', step, values })).status).toBe(200);
    const after = (await shown(anew, record)).state;
    expect(after).toMatchObject({ phase: 'under way', figures: { pressure: { value: 24.1 } } });
    expect(after.broken).toBeUndefined();
    // Girths were read ten minutes apart: the window of the hold begins anew.
    expect(after.hold?.windowFrom_ms).toBeGreaterThan(before.hold?.windowFrom_ms ?? Infinity);
    await ordered(anew, record, row({ low: 1284 }));
    expect((await shown(anew, record)).state.hold?.windowFrom_ms).toBe(after.hold?.windowFrom_ms);
    expect(verifyRecord(recordLines(day.store.records, record)).kind).toBe('whole');
  });

  test('leaves the window of a hold where readings on both sides carry it', async () => {
    const day = scene();
    const record = await begun(day);
    await toHold(day, record);
    await ordered(day, record, row({ 'gauge A': 24.5, low: 1283.85 }));
    const { hold, step } = (await shown(day, record)).state;
    await day.time.pass(60_000);
    const anew = await startedAnew(day);
    const values = { 'gauge A': 24.1 };
    await ordered(anew, record, { order: 'confirm step', step: step?.number ?? '', values });
    await ordered(anew, record, row({ 'gauge A': 24.1, low: 1284 }));
    expect((await shown(anew, record)).state.hold?.windowFrom_ms).toBe(hold?.windowFrom_ms);
  });

  test('brings the simulated tank of a rehearsal to where it stood', async () => {
    const day = scene();
    const rehearsal = { seed: 3, speed: 60, faults: [], readings: 'by hand' };
    const record = await begun(day, { kind: 'rehearsal', rehearsal });
    await ordered(day, record, { order: 'vent shut' });
    await ordered(day, record, { order: 'go on', from: '1' });
    await ordered(day, record, { order: 'go on', from: '2' });
    await day.time.pass(5000);
    const { shows } = await shown(day, record);
    expect(shows?.['gauge A']).toBeGreaterThan(4);
    await ordered(day, record, row({ 'gauge A': shows?.['gauge A'] ?? 0 }));
    const anew = await startedAnew(day);
    const again = (await shown(anew, record)).shows;
    expect(Math.abs((again?.['gauge A'] ?? 0) - (shows?.['gauge A'] ?? 0))).toBeLessThan(0.3);
  });
});

test('sleep and a clock that was set leave a gap, and the window of a hold begins anew', async () => {
  const day = scene();
  const record = await begun(day);
  await toHold(day, record);
  await ordered(day, record, row({ 'gauge A': 24.5 }));
  for (const jump of [90_000, -7_000]) {
    day.time.jump(jump);
    await ordered(day, record, row({ 'gauge A': 24.5 }));
    const { gaps, hold, wall_ms } = (await shown(day, record)).state;
    expect(gaps.at(-1)?.cause).toBe('parted');
    expect(Math.abs((gaps.at(-1)?.parted_ms ?? 0) - jump)).toBeLessThan(1);
    expect(hold?.windowFrom_ms).toBeGreaterThan(wall_ms - 1000);
  }
  expect((await shown(day, record)).state.gaps).toHaveLength(2);
  const { trace } = await shown(day, record);
  expect(trace.channels[0].low).toContain(null);
});

/** A store whose record cannot be written while `trouble` is set. */
function troubled(day: { kind?: TroubleKind | undefined }, time: () => number): Store {
  let tick = 0;
  const store = openMemoryStore({
    clock: time,
    dice: (bytes) => Uint8Array.from({ length: bytes }, (_, i) => (++tick * 41 + i * 7) & 0xff),
  });
  const append: Store['records']['append'] = (to, drafts) => {
    if (day.kind !== undefined && drafts.length > 0) throw new Trouble(day.kind, undefined);
    return store.records.append(to, drafts);
  };
  return { ...store, records: { ...store.records, append } };
}

test.each([
  ['full', 'disk full'],
  ['locked', 'base locked'],
] as const)(
  'a base that is %s is told at once; readings are kept, shown and written when it clears',
  async (kind, what) => {
    const now: { kind?: TroubleKind | undefined } = {};
    const day = scene({ store: troubled(now, () => 1_790_000_000_000) });
    const record = await begun(day);
    await ordered(day, record, row({ 'gauge A': 1.5 }));
    const { state: sound } = await shown(day, record);
    now.kind = kind;
    const kept = await ordered(day, record, row({ 'gauge A': 2.5 }));
    expect(kept.status).toBe(202);
    await ordered(day, record, row({ 'gauge A': 3.5 }));
    const { state } = await shown(day, record);
    expect(state.troubles).toMatchObject([{ what }]);
    expect(state.figures.pressure?.value).toBe(3.5);
    expect(state.head).toBe(sound.head);
    expect(day.store.records.find(record)?.entries).toBe(sound.seq);
    now.kind = undefined;
    await day.time.pass(1000);
    const after = (await shown(day, record)).state;
    expect(after.troubles).toEqual([]);
    expect(after.head).not.toBe(sound.head);
    const read = [...day.store.records.entries(record)].flatMap(({ entry }) =>
      entry.kind === 'reading' ? [(entry.body['values'] as Record<string, number>)['gauge A']] : [],
    );
    expect(read).toEqual([1.5, 2.5, 3.5]);
    expect(verifyRecord(recordLines(day.store.records, record)).kind).toBe('whole');
  },
);

test('a disk that is nearly full and a laptop on its battery are told, and told when they clear', async () => {
  const laptop = { free: 100, power: 'battery' as 'battery' | 'mains' };
  const day = scene({
    laptop: { power: () => laptop.power, free_MB: () => laptop.free, stayAwake: () => undefined },
  });
  const record = await begun(day);
  await day.time.pass(1500);
  const what = (await shown(day, record)).state.troubles.map((one) => one.what);
  expect(what.sort()).toEqual(['disk nearly full', 'not kept awake', 'on battery']);
  laptop.free = 9000;
  laptop.power = 'mains';
  await day.time.pass(1500);
  expect((await shown(day, record)).state.troubles.map((one) => one.what)).toEqual(['not kept awake']);
});

test('a second folder mirrors the record; pulling it is told and harms nothing, and it catches up', async () => {
  const root = mkdtempSync(join(tmpdir(), 'hoopwright-mirror-'));
  const stick = join(root, 'stick');
  mkdirSync(stick);
  const day = scene();
  const record = await begun(day, { mirror: stick });
  await ordered(day, record, row({ 'gauge A': 1.5 }));
  await day.time.pass(1500);
  const lines = (): string[] =>
    readFileSync(join(stick, `${record}.ndjson`), 'utf8')
      .trimEnd()
      .split('\n');
  expect(verifyRecord(lines())).toMatchObject({
    kind: 'whole',
    entries: (await shown(day, record)).state.seq,
  });
  rmSync(stick, { recursive: true });
  await ordered(day, record, row({ 'gauge A': 2.5 }));
  await day.time.pass(1500);
  expect((await shown(day, record)).state.troubles).toMatchObject([{ what: 'mirror gone' }]);
  mkdirSync(stick);
  await day.time.pass(3000);
  expect((await shown(day, record)).state.troubles).toEqual([]);
  await day.time.pass(1500);
  expect(verifyRecord(lines())).toMatchObject({
    kind: 'whole',
    entries: (await shown(day, record)).state.seq,
  });
  rmSync(root, { recursive: true });
});
