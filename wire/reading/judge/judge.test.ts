import { describe, expect, test } from 'vitest';
import type { Channel } from '../channel.ts';
import { calibrated, heard, judged, type Memory, NO_MEMORY, type Sample } from './judge.ts';
import { ailmentSentence } from './say.ts';

const wire: Channel = {
  name: 'middle',
  reads: 'girth',
  by: 'draw-wire',
  from: 'behind the wall',
  upTo_bar: 27,
  resolution: 0.01,
  noise: 0.1,
  fresh_s: 5,
  range: { from: 1000, to: 1400 },
};
const gauge: Channel = {
  ...wire,
  name: 'gauge 1',
  reads: 'pressure',
  resolution: 0.1,
  noise: 0.02,
  range: { from: 0, to: 40 },
  twin: 'gauge 2',
};

/** Noise that is the same at every run and moves each reading. */
const wobble = (i: number): number => 0.1 * Math.sin(12.9898 * (i + 1));
const after = (channel: Channel, values: readonly number[], twins?: readonly number[]): Memory => {
  let memory = NO_MEMORY;
  values.forEach((value, i) => {
    const twin: Sample | undefined = twins && { seconds: i, value: twins[i] };
    memory = heard(channel, memory, { seconds: i, value }, twin);
  });
  return memory;
};
const sound = Array.from({ length: 60 }, (_, i) => 1257.3 + 0.002 * i + wobble(i));
const told = (channel: Channel, memory: Memory, now: number, apart?: number) =>
  judged(channel, memory, { now, ...(apart === undefined ? {} : { apart }) })?.what;

test('a sound channel is not judged ill', () => {
  expect(told(wire, after(wire, sound), 60)).toBeUndefined();
});

test('a channel that says nothing is late, then dead; one that never spoke is dead in its time', () => {
  const memory = after(wire, sound);
  expect(told(wire, memory, 59 + 5)).toBeUndefined();
  expect(told(wire, memory, 59 + 5.1)).toBe('late');
  expect(told(wire, memory, 59 + 25.1)).toBe('dead');
  expect(told(wire, NO_MEMORY, 20)).toBeUndefined();
  expect(told(wire, NO_MEMORY, 26)).toBe('dead');
});

test('a figure that stands still where noise would move it is stuck, after thirty readings', () => {
  expect(
    told(
      wire,
      after(
        wire,
        Array.from({ length: 29 }, () => 1257.31),
      ),
      29,
    ),
  ).toBeUndefined();
  expect(
    told(
      wire,
      after(
        wire,
        Array.from({ length: 30 }, () => 1257.31),
      ),
      30,
    ),
  ).toBe('stuck');
});

test('a coarse scale may stand still for as long as it likes', () => {
  expect(
    told(
      gauge,
      after(
        gauge,
        Array.from({ length: 500 }, () => 12.4),
      ),
      500,
    ),
  ).toBeUndefined();
});

test('a reading beyond the range, by more than noise could, names the end it is beyond', () => {
  const memory = after(wire, [1257.3, 1399.9, 1401.3]);
  expect(judged(wire, memory, { now: 2 })).toEqual({ what: 'out of range', figure: 1401.3, allowed: 1400 });
  // A gauge without pressure reads a little under zero as often as over it; a broken current loop far under it.
  expect(judged(gauge, after(gauge, [0.1, -0.1]), { now: 1 })).toBeUndefined();
  expect(judged(gauge, after(gauge, [0.1, -10.2]), { now: 1 })?.what).toBe('out of range');
});

describe('a jump', () => {
  test('is a change that neither the noise nor any tank could make; two millimetres of slip at 1 Hz are one', () => {
    const memory = after(wire, [...sound, 1257.4 + 2]);
    expect(judged(wire, memory, { now: 60 })).toMatchObject({ what: 'jumping' });
  });
  test('is over with the next reading, for the judge; setting aside is for the day to remember', () => {
    expect(told(wire, after(wire, [...sound, 1259.4, 1259.5]), 61)).toBeUndefined();
  });
  test('after a silence more may have changed', () => {
    const memory = heard(wire, after(wire, sound), { seconds: 69, value: 1259.6 });
    expect(told(wire, memory, 69)).toBeUndefined();
  });
});

test('two channels of one thing drift apart slowly, and noise between them is no drift', () => {
  const [a, b] = [sound.map((v) => v - 1240), sound.map((v, i) => v - 1240 + wobble(i + 7))];
  expect(told(gauge, after(gauge, a, b), 60, 0.5)).toBeUndefined();
  const spiked = a.map((v, i) => v + (i === 59 ? 0.9 : 0));
  expect(told(gauge, after(gauge, spiked, b), 60, 0.5)).toBeUndefined();
  const off = a.map((v, i) => v + 0.02 * i);
  expect(told(gauge, after(gauge, off, b), 60, 0.5)).toBe('drifting');
});

test('a raw figure goes through gain and offset', () => {
  expect(calibrated({ ...wire, calibration: { gain: 2.5, offset: -4 } }, 21)).toBe(10);
  expect(calibrated(wire, 21)).toBe(21);
});

test.each([
  [{ what: 'dead', figure: 31.4, allowed: 5 }, 'middle has said nothing for 31 s.'],
  [
    { what: 'stuck', figure: 30, allowed: 30 },
    'middle has stood still for 30 s, where its noise would move it.',
  ],
  [{ what: 'jumping', figure: -2.04, allowed: 1 }, 'middle jumped by -2.04 mm between two readings.'],
  [
    { what: 'out of range', figure: 1400.2, allowed: 1400 },
    'middle reads 1400.2 mm; its range ends at 1400 mm.',
  ],
] as const)('%j is told as a sentence', (ailed, sentence) => {
  expect(ailmentSentence(wire, ailed)).toBe(sentence);
});
