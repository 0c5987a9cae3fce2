import { describe, expect, test } from 'vitest';
import { diceOf } from '../math/dice.ts';
import { paretoSmoothed, resampled } from './pareto.ts';

describe('importance weights', () => {
  test('weights drawn from a Pareto tail give back its shape', () => {
    // Tail of shape 0.9 in the largest weights; 20,000 draws use 425 of them: standard error about (1 + 0.9)/sqrt(425)
    // = 0.09, pulled towards 0.5 by 10/435 of the difference.
    const dice = diceOf(12);
    const logs = Float64Array.from({ length: 20_000 }, () => -0.9 * Math.log(dice.uniform()));
    expect(Math.abs(paretoSmoothed(logs).tail - 0.9)).toBeLessThan(0.27);
  });

  test('a stand-in of half the spread is found out, one of equal spread is not', () => {
    // Target N(0, 1), stand-in N(0, s): the raw weights have a Pareto tail of shape 1 - s^2 below s = 1.
    const weightsFor = (s: number): number => {
      const dice = diceOf(5);
      return paretoSmoothed(
        Float64Array.from({ length: 4000 }, () => {
          const x = s * dice.normal();
          return -0.5 * x * x + 0.5 * (x / s) ** 2;
        }),
      ).tail;
    };
    expect(weightsFor(0.5)).toBeGreaterThan(0.5);
    expect(weightsFor(1.05)).toBeLessThan(0.3);
  });

  test('equal weights stay equal and count in full', () => {
    const { weights, effective, tail } = paretoSmoothed(new Float64Array(40).fill(-3));
    expect(weights[7]).toBeCloseTo(1 / 40, 14);
    expect(effective).toBeCloseTo(40, 9);
    expect(tail).toBeLessThan(0.5);
  });

  test('the mean under smoothed weights is that of the target', () => {
    // Target N(0.4, 1) from N(0, 1.3): 6000 draws, effective about 4000, so a standard error of 0.016; bound four.
    const dice = diceOf(8);
    const x = Array.from({ length: 6000 }, () => 1.3 * dice.normal());
    const { weights } = paretoSmoothed(
      Float64Array.from(x, (v) => -0.5 * (v - 0.4) ** 2 + 0.5 * (v / 1.3) ** 2),
    );
    expect(Math.abs(x.reduce((sum, v, k) => sum + v * weights[k], 0) - 0.4)).toBeLessThan(0.064);
  });

  test('resampling takes each draw as often as its weight says, to within one', () => {
    const picked = resampled(Float64Array.of(0.1, 0.55, 0, 0.35), 20, diceOf(2));
    const count = (k: number): number => picked.filter((index) => index === k).length;
    expect(picked.length).toBe(20);
    expect(Math.abs(count(0) - 2)).toBeLessThanOrEqual(1);
    expect(Math.abs(count(1) - 11)).toBeLessThanOrEqual(1);
    expect(count(2)).toBe(0);
    expect(Math.abs(count(3) - 7)).toBeLessThanOrEqual(1);
  });
});
