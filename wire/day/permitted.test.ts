import { expect, test } from 'vitest';
import { sampleAbout } from '../record/sample.ts';
import type { Channel } from '../reading/channel.ts';
import { startFold } from './fold.ts';
import { forbidden, permitted, pressureToGoBy } from './permitted.ts';
import type { ChannelNow, DayState } from './state.ts';

const channel = (name: string, change: Partial<Channel>): Channel => ({
  name,
  reads: 'pressure',
  by: 'gauge',
  from: 'behind the wall',
  upTo_bar: 30,
  resolution: 0.1,
  ...change,
});
const read = (one: Channel, value: number, wall_ms: number): ChannelNow => ({
  channel: one,
  fresh_s: 300,
  last: { value, seq: 9, wall_ms, how: 'by hand' },
});
const [fine, coarse] = [channel('fine', {}), channel('coarse', { resolution: 0.5 })];
const tape: ChannelNow = {
  channel: channel('tape', { reads: 'girth', by: 'tape', from: 'at the tank', upTo_bar: 3 }),
  fresh_s: 300,
};
const at = (fineShows: number, coarseShows: number): DayState => ({
  ...startFold(sampleAbout, 'ab'.repeat(32)).state,
  phase: 'under way',
  ventShut_ms: 500,
  channels: [read(fine, fineShows, 10_000), read(coarse, coarseShows, 10_000), tape],
  step: { number: '4', kind: 'rise', pressure_bar: 22, begun_ms: 700 },
  figures: { highest_bar: 17 },
});
const namesIn = (state: DayState, now_ms: number): string[] =>
  permitted(state, now_ms).map((one) => one.channel.name);

test('at the tank is read only up to the pressure that the plan states, by the highest gauge', () => {
  expect(namesIn(at(1.5, 2.5), 11_000)).toEqual(['fine', 'coarse', 'tape']);
  // The fine gauge sticks low: nobody is sent to the tank on it.
  expect(namesIn(at(1.5, 12.5), 11_000)).toEqual(['fine', 'coarse']);
  expect(forbidden(at(1.5, 12.5), 'tape', 11_000)).toMatch(/12\.5 bar/);
});

test('a gauge that was set aside does not count', () => {
  const { channels, ...rest } = at(1.5, 12.5);
  const [one, two, three] = channels;
  const state = { ...rest, channels: [one, { ...two, aside: { why: 'sticks', by: 'Ada' } }, three] };
  expect(namesIn(state, 11_000)).toContain('tape');
});

test('where every gauge is old, the highest pressure read or the step counts, whichever is more', () => {
  expect(pressureToGoBy(at(1.5, 2.5), 10_000 + 300_001)).toBe(22);
});

test('before the vent is shut there is no pressure', () => {
  const { ventShut_ms: _, ...open } = at(1.5, 12.5);
  expect(pressureToGoBy(open, 11_000)).toBe(0);
});
