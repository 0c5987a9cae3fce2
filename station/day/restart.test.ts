import { afterEach, expect, test } from 'vitest';
import { ask } from '../server/visitor.ts';
import { begun, type DayScene, dayScene, ordered, shown, waited } from './dayScene.ts';

let open: DayScene | undefined;
afterEach(async () => {
  await open?.days.close();
  open = undefined;
});

test('while a rehearsed restart lasts, orders and photos are turned away in words, and nothing else breaks', async () => {
  const day = (open = dayScene());
  const rehearsal = { seed: 3, speed: 1, faults: [], readings: 'by wires' } as const;
  const record = await begun(day, { kind: 'rehearsal', rehearsal });
  await ordered(day, record, { order: 'vent shut' });
  await ordered(day, record, { order: 'go on', from: '1' });
  await day.time.pass(5000);
  const body = { fault: 'server-restart' };
  expect((await waited(day, ask(day.here, `/api/days/${record}/faults`, { body }))).status).toBe(200);
  // Long enough that every wire would be taken for dead.
  await day.time.pass(60_000);
  const row = await ordered(day, record, { order: 'row', how: 'by hand', values: { 'gauge A': 1.5 } });
  expect(row).toMatchObject({ status: 409, issues: [{ received: 'one that is being started anew' }] });
  const photo = { method: 'POST', body: 'xx', headers: { 'content-type': 'image/jpeg' } };
  expect((await waited(day, ask(day.here, `/api/days/${record}/photos`, photo))).status).toBe(404);
  await day.time.pass(31_000);
  const { state } = await shown(day, record);
  expect(state).toMatchObject({ phase: 'broken off', run: 2 });
  expect(state.channels.filter(({ aside }) => aside !== undefined)).toEqual([]);
  expect(day.logged).toEqual([]);
});
