import { expect, test } from 'vitest';
import { piecewise } from './piecewise.ts';

test('values are met at equal shares of the way and straight between', () => {
  const walls = [2.4, 1.9, 2.1];
  expect([0, 0.5, 1].map((share) => piecewise(walls, share))).toEqual(walls);
  expect(piecewise(walls, 0.2)).toBeCloseTo(2.4 - 0.4 * 0.5, 14);
  expect(piecewise(walls, 0.75)).toBeCloseTo(2, 14);
});

test('outside the way the ends hold, and one value holds everywhere', () => {
  expect(piecewise([3, 7], -0.1)).toBe(3);
  expect(piecewise([3, 7], 1.1)).toBe(7);
  expect(piecewise([5], 0.3)).toBe(5);
});
