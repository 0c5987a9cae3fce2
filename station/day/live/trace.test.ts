import { describe, expect, test } from 'vitest';
import { TraceStore } from './trace.ts';

/** 100 readings a second for half an hour, one of them far off. */
const spike = 123_457;
const filled = (): TraceStore => {
  const trace = new TraceStore();
  for (let n = 0; n < 180_000; n++)
    trace.take(n / 100, n + 1, { P: n === spike ? 99 : Math.sin(n / 5000), G: 1250 + n / 1e5 });
  return trace;
};

describe('a trace of half an hour at 100 Hz', () => {
  const whole = filled().read();
  const [pressure, girth] = whole.channels;

  test('fits a screen, and no reading that stands out is lost', () => {
    expect(whole.seconds.length).toBeGreaterThan(1000);
    expect(whole.seconds.length).toBeLessThanOrEqual(2048);
    expect(Math.max(...pressure.high.map((one) => one ?? NaN))).toBe(99);
    const at = pressure.high.indexOf(99);
    expect(Math.abs(whole.seconds[at] - spike / 100)).toBeLessThan(1);
  });

  test('has the lowest and the highest of each interval', () => {
    expect(Math.min(...girth.low.map((one) => one ?? NaN))).toBe(1250);
    girth.low.forEach((low, i) => expect(low ?? NaN).toBeLessThanOrEqual(girth.high[i] ?? NaN));
    const width = whole.seconds[1] - whole.seconds[0];
    // A reading at the edge may fall to either side.
    const spans = (girth.high[7] ?? 0) - (girth.low[7] ?? 0);
    expect(Math.abs(spans - (100 * width - 1) / 1e5)).toBeLessThan(1.5e-5);
  });

  test('is read on after an entry, and up to a time', () => {
    const trace = filled();
    const later = trace.read(170_000);
    expect(later.seconds[0]).toBeGreaterThan(1699);
    expect(Math.max(...trace.read(0, 60).seconds)).toBeLessThan(61);
  });
});

test('where nothing was read there is a gap, and a clock that went back draws nothing over', () => {
  const trace = new TraceStore();
  trace.take(1, 1, { P: 1.5 });
  trace.take(60, 2, { P: 2.5 });
  trace.take(50, 3, { P: 3.5 });
  const { seconds, channels } = trace.read();
  expect(channels[0].low).toEqual([1.5, null, 2.5]);
  expect(channels[0].high).toEqual([1.5, null, 3.5]);
  expect(seconds.every((one, i) => i === 0 || one > seconds[i - 1])).toBe(true);
});
