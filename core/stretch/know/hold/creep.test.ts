import { describe, expect, test } from 'vitest';
import { diceOf } from '../../../math/dice.ts';
import { creepFound, type HoldReading } from './creep.ts';

const BLUR = 0.1 / 1900;
const DRIFT = 3e-8;
/** Growth per e-fold of time, and rate that the logarithm leaves. */
const PER_EFOLD = 0.0013;

/** Closed form: a logarithm, and its mean rate over a window. */
const creeping = (time: number): number => PER_EFOLD * Math.log(1 + time / 4);
const meanRate = (time: number, window: number): number =>
  (creeping(time) - creeping(time - window)) / window;

const held = (until: number, seed: number, every = 5): HoldReading[] => {
  const dice = diceOf(seed);
  return Array.from({ length: Math.floor(until / every) }, (_, k) => ({
    time: every * (k + 1),
    growth: 0.031 + creeping(every * (k + 1)) + BLUR * dice.normal(),
  }));
};
const orders = { blur: BLUR, drift: DRIFT, window: 1800 } as const;

describe('creep in a hold', () => {
  test('has its mean rate over the window within the 90 % range in about nine of ten holds', () => {
    const inside = Array.from({ length: 60 }, (_, k) => {
      const found = creepFound({ ...orders, readings: held(3000, 100 + k) });
      const truth = meanRate(3000, 1800);
      return found !== undefined && truth > found.low && truth < found.high;
    }).filter(Boolean).length;
    // Sixty holds at 90 %: under 48 or all of a range that is too wide by far would be off; drift is not thrown here.
    expect(inside).toBeGreaterThan(50);
  });

  test('still grows before the rate is under 0.1 %/h, has settled well after, and is foreseen to settle in between', () => {
    const early = creepFound({ ...orders, readings: held(2400, 7) });
    const late = creepFound({ ...orders, readings: held(12_000, 7) });
    expect(early?.verdict).toBe('still grows');
    expect(late?.verdict).toBe('settled');
    // c ln(t/(t - W)) = W x rate, for the closed form above.
    let truth = 1800;
    while (meanRate(truth, 1800) > 0.001 / 3600) truth += 5;
    expect((early?.settlesAt ?? 0) / truth).toBeGreaterThan(0.85);
    expect((early?.settlesAt ?? 0) / truth).toBeLessThan(1.15);
  });

  test('does not follow a few readings that are far off', () => {
    const clean = held(3000, 11);
    const spoilt = clean.map((one, k) => (k % 40 === 7 ? { ...one, growth: one.growth + 0.002 } : one));
    const [a, b] = [clean, spoilt].map((readings) => creepFound({ ...orders, readings })?.rate ?? NaN);
    expect(Math.abs(b / a - 1)).toBeLessThan(0.1);
  });

  test('gives no rate before the hold has lasted its window, nor from three readings', () => {
    expect(creepFound({ ...orders, readings: held(1700, 3) })).toBeUndefined();
    expect(creepFound({ ...orders, readings: held(3000, 3, 1000) })).toBeUndefined();
  });

  test('has a range by tape many times as wide as by wire, and a verdict only where it lies to one side', () => {
    const coarse = { ...orders, blur: 0.3 / 1900 };
    const dice = diceOf(5);
    const readings = Array.from({ length: 12 }, (_, k) => ({
      time: 500 * (k + 1),
      growth: 0.02 + creeping(500 * (k + 1)) + coarse.blur * dice.normal(),
    }));
    const [tape, wire] = [
      creepFound({ ...coarse, readings }),
      creepFound({ ...orders, readings: held(6000, 5) }),
    ];
    const width = (found: typeof tape): number => (found?.high ?? NaN) - (found?.low ?? NaN);
    expect(width(tape)).toBeGreaterThan(4 * width(wire));
    // 0.1 %/h put where the range lies on both sides of it.
    const both = creepFound({ ...coarse, readings, settled: tape?.rate ?? NaN });
    expect(both?.verdict).toBe('cannot tell');
  });
});
