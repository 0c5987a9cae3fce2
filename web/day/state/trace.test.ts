import { expect, test } from 'vitest';
import { LongTrace } from './trace.ts';

const columns = (from: number, count: number) => ({
  seconds: Array.from({ length: count }, (_, i) => from + i),
  channels: [
    {
      name: 'gauge',
      low: Array.from({ length: count }, (_, i) => from + i - 0.25),
      high: Array.from({ length: count }, (_, i) => from + i + 0.5),
    },
  ],
});

test('a long trace keeps its ends and its extremes, and its memory stays flat', () => {
  const trace = new LongTrace(64);
  for (let i = 0; i < 5000; i++) trace.add(columns(i, 1));
  expect(trace.length).toBeLessThanOrEqual(64);
  expect(trace.seconds.length).toBeLessThanOrEqual(1024);
  const { low, high } = trace.tracks[0];
  expect(Math.min(...low.slice(0, trace.length))).toBe(-0.25);
  expect(Math.max(...high.slice(0, trace.length))).toBe(4999.5);
  for (let i = 1; i < trace.length; i++) expect(trace.seconds[i]).toBeGreaterThan(trace.seconds[i - 1]);
});

test('columns that come again take the place of those that are there', () => {
  const trace = new LongTrace();
  trace.add(columns(0, 5));
  trace.add(columns(3, 4));
  expect(Array.from(trace.seconds.subarray(0, trace.length))).toEqual([0, 1, 2, 3, 4, 5, 6]);
});

test('a channel that comes later has nothing before; what was not read is no number', () => {
  const trace = new LongTrace();
  trace.add(columns(0, 2));
  trace.add({ seconds: [2], channels: [{ name: 'wire', low: [7.5], high: [7.75] }] });
  expect(Array.from(trace.track('wire')?.low.subarray(0, 3) ?? [])).toEqual([NaN, NaN, 7.5]);
  expect(trace.track('gauge')?.high[2]).toBe(NaN);
});
