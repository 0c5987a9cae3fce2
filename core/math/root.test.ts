import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { peak, root } from './root.ts';

test('the root of a polynomial of known roots is found to rounding', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -3, max: 3, noNaN: true }),
      fc.double({ min: 0.1, max: 40, noNaN: true }),
      (r, k) => {
        const f = (x: number): number => (x - r) * (1 + k * (x - r) ** 2);
        expect(Math.abs(root(f, -4, 5) - r)).toBeLessThan(1e-11);
      },
    ),
    { seed: 3, numRuns: 300 },
  );
});

test('steep, flat and stepped functions end as well', () => {
  expect(root((x) => Math.exp(40 * x) - 1e7, -1, 1)).toBeCloseTo(Math.log(1e7) / 40, 12);
  expect(root((x) => (x - 0.3) ** 9, -1, 1.7)).toBeCloseTo(0.3, 1);
  expect(root((x) => (x < 0.71 ? -1 : 1), 0, 2)).toBeCloseTo(0.71, 11);
});

test('few evaluations are enough where the function is smooth', () => {
  let calls = 0;
  root(
    (x) => {
      calls++;
      return Math.cos(x) - x;
    },
    0,
    1.3,
  );
  expect(calls).toBeLessThan(14);
});

test('an end that is the root is returned, and a bracket without change of sign is refused', () => {
  expect(root((x) => x - 2, 2, 5)).toBe(2);
  expect(root((x) => x - 5, 2, 5)).toBe(5);
  expect(() => root((x) => x * x + 1, -1, 2)).toThrow('no change of sign: f(-1) = 2, f(2) = 5');
  expect(() => root(() => Number.NaN, 0, 1)).toThrow('no change of sign');
});

test('the peak is found inside and at either end', () => {
  const { x, value } = peak((t) => 7 - (t - 0.62) ** 2, -2, 3);
  expect(x).toBeCloseTo(0.62, 6);
  expect(value).toBeCloseTo(7, 14);
  expect(peak((t) => t, -2, 3).x).toBeCloseTo(3, 6);
  expect(peak((t) => -t, -2, 3).x).toBeCloseTo(-2, 6);
});
