import type { Cause, ChannelNow, DayState } from '@hoopwright/wire/day';
import type { FrozenPlan, Plan, Step } from '@hoopwright/wire/plan';
import { describe, expect, test } from 'vitest';
import { afterTick } from '../state/live.ts';
import { loudCauses } from '../state/sound.ts';
import { askedNow } from './permitted.ts';
import { pumpOrder } from './pumpOrder.ts';
import { wordOf } from './word.ts';

const AT = 1_790_000_000_000;

const steps: Step[] = [
  { number: '1', kind: 'fill', pressure_bar: 0, reads: [] },
  {
    number: '2',
    kind: 'rise',
    pressure_bar: 12,
    reads: ['gauge', 'wire', 'tape'],
    expected: { girths: [], pumped_L: { value: 3.1, low: 2.9, high: 3.4 }, more_L: 3.1 },
  },
  {
    number: '3',
    kind: 'hold',
    pressure_bar: 12,
    reads: ['gauge', 'wire'],
    hold: { minutes: { value: 10 }, valve: 'shut' },
  },
  { number: '4', kind: 'release', pressure_bar: 0, reads: ['gauge', 'wire', 'tape'] },
];

// oxlint-disable-next-line typescript/no-unsafe-type-assertion -- a plan with what these questions look at
const plan = {
  plan: { steps, water: { stroke_mL: 50 }, places: [], limits: [] } as unknown as Plan,
} as FrozenPlan;

const channel = (name: string, from: 'behind the wall' | 'at the tank', upTo_bar: number): ChannelNow => ({
  channel: { name, reads: name === 'gauge' ? 'pressure' : 'girth', by: 'x', from, upTo_bar, resolution: 0.1 },
  fresh_s: 300,
});

const state = (change: Partial<DayState> = {}): DayState => ({
  about: { format: 'hoopwright record', version: 1, record: 'r-1', kind: 'test', title: 'T', began_ms: AT },
  seq: 17,
  run: 1,
  wall_ms: AT,
  head: '',
  heads: [],
  phase: 'under way',
  plan,
  ventShut_ms: AT - 500_000,
  step: { number: '2', kind: 'rise', pressure_bar: 12, begun_ms: AT - 60_000 },
  next: '3',
  channels: [
    channel('gauge', 'behind the wall', 12),
    channel('wire', 'behind the wall', 12),
    channel('tape', 'at the tank', 2),
  ],
  figures: {
    pressure: { value: 7.5, channel: 'gauge', wall_ms: AT - 20_000, fresh_s: 300 },
    growth: { value: 0.4, channel: 'wire', girth: 'wire', wall_ms: AT - 20_000, fresh_s: 300 },
    litres: { value: 1.6, channel: 'weighing', wall_ms: AT - 20_000, fresh_s: 300 },
    highest_bar: 7.5,
  },
  causes: [],
  gaps: [],
  troubles: [],
  crew: { held: 'laptop' },
  soundArmed: true,
  measures: [],
  remarks: [],
  rows: [],
  ...change,
});

const cause = (seq: number, change: Partial<Cause> = {}): Cause => ({
  seq,
  wall_ms: AT - 1000,
  limit: 'girthsApart_percent',
  state: 'stop and release',
  value: 1.3,
  allowed: 1.02,
  channels: ['wire'],
  step: '2',
  says: '',
  ...change,
});

describe('the word of the state', () => {
  test('fresh readings and no cause: nothing against going on', () => {
    expect(wordOf(state(), AT, 'up').word).toBe('nothing against going on');
  });

  test('no quiet word over a reading that is past its limit, whatever the advice says', () => {
    const advice = {
      seq: 1,
      wall_ms: AT,
      state: 'nothing against going on',
      reasons: ['fine'],
      readings: [],
    } as const;
    const late = AT + 281_000;
    for (const one of [state(), state({ advice })]) {
      const { word, reasons } = wordOf(one, late, 'up');
      expect(word).toBe('cannot judge');
      expect(reasons[0]).toMatchObject({ kind: 'old', what: 'pressure', age_s: 301 });
    }
  });

  test('quiet advice about the step before is not shown for this one; a warning is', () => {
    const advice = { seq: 1, wall_ms: AT - 90_000, readings: [], reasons: ['told'] } as const;
    const quiet = state({ advice: { ...advice, state: 'nothing against going on' } });
    expect(wordOf(quiet, AT, 'up').reasons).toEqual([{ kind: 'nothing' }]);
    expect(wordOf(state({ advice: { ...advice, state: 'slow down' } }), AT, 'up')).toEqual({
      word: 'slow down',
      reasons: [{ kind: 'said', says: 'told' }],
    });
  });

  test('the link lost: cannot judge, and the causes stay under it', () => {
    const { word, reasons } = wordOf(state({ causes: [cause(9)] }), AT, 'lost');
    expect(word).toBe('cannot judge');
    expect(reasons.map(({ kind }) => kind)).toEqual(['link lost', 'cause']);
  });

  test('the first cause stands on top, later ones under it; one that stops outweighs one that bleeds', () => {
    const causes = [cause(8, { limit: 'trappedAir_L', state: 'bleed again' }), cause(9)];
    expect(wordOf(state({ causes: [causes[0]] }), AT, 'up').word).toBe('bleed again');
    const both = wordOf(state({ causes }), AT, 'up');
    expect(both.word).toBe('stop and release');
    expect(both.reasons).toEqual(causes.map((one) => ({ kind: 'cause', cause: one })));
  });

  test('a stop is not hidden by stale readings', () => {
    expect(wordOf(state({ causes: [cause(9)] }), AT + 900_000, 'up').word).toBe('stop and release');
  });

  test('broken off says since when and the last pressure', () => {
    const broken = { since_ms: AT - 90_000, lastPressure_bar: 11.5 };
    expect(wordOf(state({ phase: 'broken off', broken }), AT, 'up')).toEqual({
      word: 'broken off',
      reasons: [{ kind: 'broken off', since_ms: AT - 90_000, pressure_bar: 11.5 }],
    });
  });

  test('a hold says hold until the director has ended it', () => {
    const hold = { begun_ms: AT, windowFrom_ms: AT };
    expect(wordOf(state({ hold }), AT, 'up').word).toBe('hold');
    expect(wordOf(state({ hold: { ...hold, over: true } }), AT, 'up').word).toBe('nothing against going on');
  });
});

describe('what is asked for', () => {
  const names = (one: DayState, now = AT) => {
    const { now: may, barred } = askedNow(one, now);
    return [may, barred].map((list) => list.map(({ channel: { name } }) => name));
  };

  test('nothing at the tank above its pressure', () => {
    expect(names(state())).toEqual([['gauge', 'wire'], ['tape']]);
  });

  test('at the tank once the pressure is down', () => {
    const pressure = { value: 1.5, channel: 'gauge', wall_ms: AT - 1000, fresh_s: 300 };
    const last = { value: 1.5, seq: 12, wall_ms: AT - 1000, how: 'by hand' };
    const channels = state().channels.map((one) => (one.channel.name === 'gauge' ? { ...one, last } : one));
    expect(names(state({ channels, figures: { pressure, highest_bar: 7.5 } }))).toEqual([
      ['gauge', 'wire', 'tape'],
      [],
    ]);
  });

  test('nothing at the tank on a pressure that is too old', () => {
    const pressure = { value: 1.5, channel: 'gauge', wall_ms: AT - 400_000, fresh_s: 300 };
    expect(names(state({ figures: { pressure, highest_bar: 7.5 } }))[1]).toEqual(['tape']);
  });

  test('only what the step reads, and no channel that was set aside', () => {
    const step = { number: '3', kind: 'hold', pressure_bar: 12, begun_ms: AT } as const;
    expect(names(state({ step }))).toEqual([['gauge', 'wire'], []]);
    const channels = state().channels.map((one) =>
      one.channel.name === 'wire' ? { ...one, aside: { why: 'slipped', by: 'B' } } : one,
    );
    expect(names(state({ step, channels }))).toEqual([['gauge'], []]);
  });
});

describe('the pump', () => {
  test('pumps to the target, with the strokes that are left', () => {
    // (3.1 - 1.6) L at 50 mL a stroke.
    expect(pumpOrder(state(), AT, 'up')).toEqual({
      word: 'pump',
      because: 'step',
      target_bar: 12,
      strokes: { value: 30, low: 26, high: 36 },
    });
  });

  test('stops at the target, and holds where the pressure is too old or the laptop is not heard', () => {
    const pressure = { value: 12, channel: 'gauge', wall_ms: AT, fresh_s: 300 };
    expect(pumpOrder(state({ figures: { pressure } }), AT, 'up').word).toBe('read');
    expect(pumpOrder(state(), AT + 400_000, 'up')).toMatchObject({ word: 'hold', because: 'old' });
    expect(pumpOrder(state(), AT, 'lost')).toEqual({ word: 'hold', because: 'link' });
    expect(pumpOrder(state({ phase: 'broken off' }), AT, 'up')).toEqual({
      word: 'hold',
      because: 'broken off',
    });
  });

  test('a cause stops it; hands off while the valve is shut', () => {
    expect(pumpOrder(state({ causes: [cause(3)] }), AT, 'up').word).toBe('stop');
    const step = { number: '3', kind: 'hold', pressure_bar: 12, begun_ms: AT } as const;
    expect(pumpOrder(state({ step }), AT, 'up').word).toBe('shut');
    expect(pumpOrder(state({ phase: 'stopping' }), AT, 'up')).toMatchObject({
      word: 'release',
      target_bar: 0,
    });
  });
});

describe('the sound', () => {
  test('sounds for a cause until it is acknowledged, and not again for one that was silenced', () => {
    const silenced = new Set(['stop and release: girthsApart_percent']);
    expect(loudCauses([cause(1)], new Set())).toHaveLength(1);
    expect(loudCauses([cause(1, { acknowledged: 5 })], new Set())).toHaveLength(0);
    expect(loudCauses([cause(1), cause(2)], silenced)).toHaveLength(0);
    expect(loudCauses([cause(1), cause(2, { limit: 'slopeShare' })], silenced)).toHaveLength(1);
  });
});

test('a tick changes what it names, and takes away what is gone', () => {
  const before = state({ hold: { begun_ms: AT, windowFrom_ms: AT } });
  const after = afterTick(before, { changed: { seq: 18 }, gone: ['hold', 'next'] });
  expect(after).toEqual({ ...state({ seq: 18 }), hold: undefined, next: undefined });
  expect('hold' in after).toBe(false);
});
