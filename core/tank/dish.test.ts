import { expect, test } from 'vitest';
import { dinRadii, ellipsoid, torisphere } from './dish.ts';

/** Volume by slices, radius from the contour: the second method. */
const bySlices = (D: number, R: number, r: number): number => {
  const { depth } = torisphere(D, R, r);
  const n = 200_000;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const z = ((i + 0.5) * depth) / n;
    const crown = Math.sqrt(Math.max(R ** 2 - (R - depth + z) ** 2, 0));
    const knuckle = z < r ? D / 2 - r + Math.sqrt(r ** 2 - z ** 2) : Infinity;
    const height = (r * (R - depth)) / (R - r);
    sum += (z < height ? knuckle : crown) ** 2;
  }
  return (Math.PI * sum * depth) / n;
};

test('the volume of a torisphere is that of its slices', () => {
  for (const [D, R, r] of [
    [498, 498, 49.8],
    [600, 485, 93],
    [613, 1200, 7],
  ]) {
    // Midpoint rule with 200 000 slices; the square-root ends leave about 1e-7.
    expect(bySlices(D, R, r) / torisphere(D, R, r).volume).toBeCloseTo(1, 6);
  }
});

test('a torisphere of equal radii would be the hemisphere it approaches', () => {
  const near = torisphere(500, 250.0001, 249.99);
  expect(near.depth).toBeCloseTo(250, 1);
  expect(near.volume / ellipsoid(500, 250).volume).toBeCloseTo(1, 3);
});

test('radii that do not meet are refused with their numbers', () => {
  expect(() => torisphere(500, 240, 50)).toThrow('crown radius 240');
});

test('the standards count from the outside diameter', () => {
  expect(dinRadii('DIN 28013', 498, 2)).toEqual({ crownRadius: 0.8 * 502, knuckleRadius: 0.154 * 502 });
});
