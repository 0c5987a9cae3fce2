import { afterEach, describe, expect, test } from 'vitest';
import type { DayState, Snapshot } from '@hoopwright/wire/day';
import { foldAll } from '@hoopwright/wire/day';
import { ask, jsonOf } from '../server/visitor.ts';
import { recordLines, verifyRecord } from '../store/recordFile.ts';
import { type BeginChange, begun, type DayScene, dayScene, ordered, shown, waited } from './dayScene.ts';
import { emptyFold } from './live/kept.ts';

let open: DayScene | undefined;
afterEach(async () => {
  await open?.days.close();
  open = undefined;
});

const rehearsal = (faults: readonly string[] = [], speed = 60): BeginChange => ({
  kind: 'rehearsal',
  rehearsal: { seed: 3, speed, faults, readings: 'by hand' },
});

/** A crew that does what the plan says, by what the simulated instruments show. */
async function followed(day: DayScene, record: string, steps = Infinity): Promise<DayState> {
  const rowOf = async (): Promise<DayState> => {
    const { shows = {}, state } = await shown(day, record);
    const values = Object.fromEntries(
      Object.entries(shows).filter(([name]) => stepOf(state)?.reads.includes(name) === true),
    );
    if (Object.keys(values).length > 0) {
      const row = await ordered(day, record, { order: 'row', by: 'B. Invented', values, how: 'by hand' });
      expect(row.status).toBe(200);
    }
    return (await shown(day, record)).state;
  };
  for (let n = 0; n < steps; n++) {
    let { state } = await shown(day, record);
    const from = state.step?.number ?? '';
    if (state.step?.kind === 'fill') await ordered(day, record, { order: 'vent shut' });
    const minutes = stepOf(state)?.hold?.minutes.value ?? 0;
    for (let i = 0; i < 60; i++) {
      await day.time.pass(2000);
      state = await rowOf();
      if (state.causes.length > 0 || state.step?.kind === 'fill' || state.step?.kind === 'drain') break;
      const held = (state.wall_ms - (state.hold?.begun_ms ?? 0)) / 60_000;
      const pressure = state.figures.pressure?.value ?? 0;
      const wanted = state.step?.pressure_bar ?? 0;
      if (state.hold ? held > Math.min(minutes, 40) : Math.abs(pressure - wanted) < 0.15) break;
      if (state.step?.kind === 'release' && pressure < 0.2) break;
    }
    if (state.causes.length > 0) return state;
    if (state.hold) await ordered(day, record, { order: 'hold ended', from, why: 'it is at rest' });
    if (state.next === undefined) return state;
    expect(await ordered(day, record, { order: 'go on', from })).toMatchObject({ status: 200 });
  }
  return (await shown(day, record)).state;
}

const stepOf = ({ plan, step }: DayState) => plan?.plan.steps.find(({ number }) => number === step?.number);

test('a whole day by hand, from set-up to its named end, export and replay', {
  timeout: 30_000,
}, async () => {
  const day = (open = dayScene());
  const record = await begun(day, rehearsal());
  const first = await shown(day, record);
  expect(first).toMatchObject({ role: 'director', own: true, live: true, speed: 60 });
  expect(first.state).toMatchObject({ phase: 'set up', step: { kind: 'fill' }, soundArmed: false });
  await ordered(day, record, { order: 'sound armed' });
  await ordered(day, record, {
    order: 'measure',
    when: 'before',
    what: 'girth',
    place: 'low',
    value: 1261.5,
    with: 'steel tape',
  });
  expect((await shown(day, record)).state).toMatchObject({ phase: 'before', soundArmed: true });
  const state = await followed(day, record);
  expect(state.causes).toEqual([]);
  expect(state.phase).toBe('after');
  expect(state.figures.highest_bar).toBeGreaterThan(29);
  expect(state.figures.growth?.value ?? 0).toBeGreaterThan(1);
  await ordered(day, record, { order: 'end', end: 'done', why: 'the plan was followed' });
  const last = await shown(day, record);
  expect(last.state).toMatchObject({ phase: 'ended', end: { name: 'done' } });
  expect(last.live).toBe(false);
  expect((await ordered(day, record, { order: 'sound armed' })).status).toBe(409);

  const verdict = verifyRecord(recordLines(day.store.records, record));
  expect(verdict).toMatchObject({ kind: 'whole', entries: last.state.seq });
  const about = day.store.records.find(record)?.about;
  const links = [...day.store.records.entries(record)];
  expect(about).toBeDefined();
  if (about) expect(foldAll(emptyFold(about).fold, links).state).toEqual(last.state);
  expect(links.at(-1)?.entry.body['hidden']).toMatchObject({ seed: 3 });

  const csv = await (await ask(day.here, `/api/days/${record}/export?as=csv`)).text();
  const readings = links.filter(({ entry }) => entry.kind === 'reading').length;
  expect(csv.trimEnd().split('\r\n')).toHaveLength(1 + readings);
  expect(csv).toContain('gauge A [bar]');
  const file = await (await ask(day.here, `/api/days/${record}/export?as=record`)).text();
  expect(verifyRecord(file.trimEnd().split('\n')).kind).toBe('whole');

  const middle = links[Math.floor(links.length / 2)].entry;
  const then = await jsonOf<Snapshot>(await ask(day.here, `/api/days/${record}/at?ms=${middle.wall_ms}`));
  expect(then.state.seq).toBeGreaterThanOrEqual(middle.seq);
  expect(then.state.phase).toBe('under way');
  expect(Math.max(...then.trace.seconds)).toBeLessThanOrEqual(
    (middle.wall_ms - (about?.began_ms ?? 0)) / 1000 + 3,
  );
});

test('a leak crosses the limit of the plan: latched, stopped, released, named', {
  timeout: 30_000,
}, async () => {
  const day = (open = dayScene());
  const record = await begun(day, rehearsal(['leak@10min'], 30));
  const state = await followed(day, record);
  expect(state.causes[0]).toMatchObject({ limit: 'leak_mL_per_min', state: 'stop and release' });
  // The plan does not go on before the director has acknowledged it.
  const from = state.step?.number ?? '';
  await ordered(day, record, { order: 'hold ended', from, why: 'enough' });
  const early = await ordered(day, record, { order: 'go on', from });
  expect(early).toMatchObject({ status: 409, issues: [{ received: state.causes[0].says }] });
  expect((await ordered(day, record, { order: 'acknowledge', cause: state.causes[0].seq })).status).toBe(200);
  expect((await shown(day, record)).state.causes[0].acknowledged).toBeGreaterThan(state.causes[0].seq);
  await ordered(day, record, { order: 'stop and release', why: state.causes[0].says });
  const stopping = (await shown(day, record)).state;
  expect(stopping).toMatchObject({ phase: 'stopping', step: { kind: 'release' } });
  await ordered(day, record, { order: 'end', end: 'leaked', why: 'water is lost' });
  expect((await shown(day, record)).state.end).toMatchObject({ name: 'leaked' });
});

describe('orders', () => {
  test('move the plan on from the step that the screen shows, once', async () => {
    const day = (open = dayScene());
    const record = await begun(day);
    await ordered(day, record, { order: 'vent shut' });
    expect((await ordered(day, record, { order: 'go on', from: '1' })).status).toBe(200);
    expect(await ordered(day, record, { order: 'go on', from: '1' })).toMatchObject({
      status: 409,
      issues: [{ received: 'step 1' }],
    });
  });

  test('do not go on with an open vent, nor out of a hold that runs', async () => {
    const day = (open = dayScene());
    const record = await begun(day);
    expect((await ordered(day, record, { order: 'go on', from: '1' })).status).toBe(409);
    await ordered(day, record, { order: 'vent shut' });
    const { plan } = (await shown(day, record)).state;
    for (const { number, kind } of plan?.plan.steps ?? []) {
      if (kind === 'hold') {
        expect((await ordered(day, record, { order: 'go on', from: number })).status).toBe(409);
        return;
      }
      expect((await ordered(day, record, { order: 'go on', from: number })).status).toBe(200);
    }
  });

  test('read no channel that is not there, and nothing from the future', async () => {
    const day = (open = dayScene());
    const record = await begun(day);
    const row = { order: 'row', how: 'by hand' } as const;
    expect((await ordered(day, record, { ...row, values: { gauge: 1 } })).status).toBe(409);
    const at_ms = day.time.wall() + 60_000;
    expect((await ordered(day, record, { ...row, values: { 'gauge A': 1 }, at_ms })).status).toBe(409);
    expect((await ordered(day, record, { ...row, values: { 'gauge A': 'much' } })).status).toBe(422);
    expect((await ordered(day, record, { ...row, values: { 'gauge A': 1.5 } })).status).toBe(200);
  });

  test('a correction adds; the row that it corrects stays in the record', async () => {
    const day = (open = dayScene());
    const record = await begun(day);
    const { seq = 0 } = await ordered(day, record, {
      order: 'row',
      how: 'by hand',
      values: { 'gauge A': 15 },
    });
    await ordered(day, record, {
      order: 'correct',
      corrects: seq,
      values: { 'gauge A': 1.5 },
      why: 'misread',
    });
    const entries = [...day.store.records.entries(record)].map(({ entry }) => entry);
    expect(entries.find((entry) => entry.seq === seq)?.body['values']).toEqual({ 'gauge A': 15 });
    expect((await shown(day, record)).state.figures.pressure?.value).toBe(1.5);
  });
});

test('the next test starts from the state that the last one left', async () => {
  const day = (open = dayScene());
  const first = await begun(day);
  await ordered(day, first, { order: 'vent shut' });
  await ordered(day, first, { order: 'row', how: 'by hand', values: { 'gauge A': 21.5 } });
  expect((await waited(day, ask(day.here, '/api/days', { body: { ...beginBody(day) } }))).status).toBe(409);
  await ordered(day, first, { order: 'end', end: 'broken off', why: 'rain' });
  const second = await begun(day);
  expect((await shown(day, second)).state.follows).toEqual({ record: first, highest_bar: 21.5 });
});

const beginBody = (day: DayScene) => ({
  project: day.project,
  plan: day.frozen.frozen.digest,
  kind: 'test',
  director: 'A. Invented',
});
