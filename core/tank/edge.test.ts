import { expect, test } from 'vitest';
import { clampedDisplacement, clampedMoment, decayOf, junctionStress } from './edge.ts';

const edge = { radius: 251, wall: 2.1, young: 193e3, poisson: 0.29, pressure: 0.7 };

test('far from the edge only the membrane is left', () => {
  const far = junctionStress(edge, { kind: 'hemispherical' }, 20 / decayOf(edge));
  expect(far.hoopOutside).toBeCloseTo((0.7 * 251) / 2.1, 6);
  expect(far.meridionalInside).toBeCloseTo((0.7 * 251) / 4.2, 6);
});

test('the clamped edge neither moves nor turns, and its moment is the second derivative there', () => {
  const d = 0.01;
  const w = (x: number): number => clampedDisplacement(edge, x);
  expect(w(0)).toBe(0);
  expect(Math.abs(w(d) / d)).toBeLessThan(1e-4);
  const stiffness = (edge.young * edge.wall ** 3) / (12 * (1 - edge.poisson ** 2));
  const curvature = (w(2 * d) - 2 * w(d) + w(0)) / d ** 2;
  // One-sided difference over 0.01 mm where bending dies over 18 mm: 0.1 %.
  expect((stiffness * curvature) / clampedMoment(edge)).toBeCloseTo(1, 2);
});

test('the junction displacement meets the head half way', () => {
  const here = junctionStress(edge, { kind: 'semi-ellipsoidal', depth: 117 }, 0);
  const mean = (here.hoopInside + here.hoopOutside) / 2;
  const [unit, share] = [(0.7 * 251) / 2.1, 251 ** 2 / (2 * 117 ** 2)];
  expect(mean / unit).toBeCloseTo(1 - share / 2, 10);
});
