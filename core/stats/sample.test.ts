import { describe, expect, test } from 'vitest';
import { covariance, mean, quantile, quantileOf, standardDeviation } from './sample.ts';

describe('samples', () => {
  test('mean and spread of a worked sample', () => {
    // By hand: squares 9 + 1 + 0 + 4 + 4; products 4/3 + 1 + 20/3.
    expect(mean([2, 4, 5, 7, 7])).toBe(5);
    expect(standardDeviation([2, 4, 5, 7, 7])).toBeCloseTo(Math.sqrt(18 / 4), 15);
    expect(covariance([1, 2, 4], [3, 1, 8])).toBeCloseTo(4.5, 14);
  });

  test('a quantile lies straight between its neighbours', () => {
    expect(quantile([10, 40, 20], 0.5)).toBe(20);
    expect(quantile([10, 40, 20], 0.75)).toBe(30);
    expect(quantile([10, 40, 20], 0)).toBe(10);
    expect(quantile([10], 0.9)).toBe(10);
  });

  test('where a neighbour is infinite, so is the quantile as soon as it counts', () => {
    expect(quantileOf([1, 2, Infinity], 0.5)).toBe(2);
    expect(quantileOf([1, 2, Infinity], 0.51)).toBe(Infinity);
    expect(quantileOf([1, Infinity, Infinity], 0.9)).toBe(Infinity);
  });

  test('no values have no mean', () => {
    expect(() => mean([])).toThrow('no values');
    expect(() => quantile([], 0.5)).toThrow('no values');
  });
});
