import { describe, expect, test } from 'vitest';
import { diceOf } from '../math/dice.ts';
import { DETECTION, readingSpread, slopeSpread } from './noise.ts';

describe('a reading', () => {
  test('spreads by its noise and by an even spread over one step of the scale', () => {
    expect(readingSpread({ noise: 0, resolution: 0.6 })).toBeCloseTo(0.6 / Math.sqrt(12), 12);
    expect(readingSpread({ noise: 0.3, resolution: 1.2 })).toBeCloseTo(
      Math.hypot(0.3, 1.2 / Math.sqrt(12)),
      12,
    );
  });
});

describe('a slope', () => {
  const every = 30;
  const time = 600;

  test('through two readings spreads by root two over the time', () => {
    expect(slopeSpread({ noise: 0.2, resolution: 0 }, time, time)).toBeCloseTo((0.2 * Math.SQRT2) / time, 12);
  });

  test('through many readings spreads as least squares on thrown noise do', () => {
    const dice = diceOf(42);
    const n = time / every + 1;
    const times = Array.from({ length: n }, (_, i) => i * every);
    const centre = time / 2;
    const sxx = times.reduce((sum, t) => sum + (t - centre) ** 2, 0);
    const slopes = Array.from(
      { length: 4000 },
      () => times.reduce((sum, t) => sum + (t - centre) * 0.2 * dice.normal(), 0) / sxx,
    );
    const spread = Math.sqrt(slopes.reduce((sum, s) => sum + s * s, 0) / slopes.length);
    // 4000 throws know a spread to 1.1 %.
    expect(spread / slopeSpread({ noise: 0.2, resolution: 0 }, every, time)).toBeGreaterThan(0.965);
    expect(spread / slopeSpread({ noise: 0.2, resolution: 0 }, every, time)).toBeLessThan(1.035);
  });

  test('a coarse scale does not get finer by reading it often', () => {
    const coarse = { noise: 0, resolution: 0.5 };
    expect(slopeSpread(coarse, 1, time)).toBe(slopeSpread(coarse, 300, time));
  });
});

test('a value of 3.29 spreads is missed, or called where there is none, in 5 of 100', () => {
  const dice = diceOf(9);
  const throws = Array.from({ length: 20_000 }, () => dice.normal());
  const critical = DETECTION / 2;
  const falseCalls = throws.filter((x) => x > critical).length / throws.length;
  const missed = throws.filter((x) => DETECTION + x < critical).length / throws.length;
  expect(falseCalls).toBeCloseTo(0.05, 2);
  expect(missed).toBeCloseTo(0.05, 2);
});
