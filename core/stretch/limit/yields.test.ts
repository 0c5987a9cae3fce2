import { expect, test } from 'vitest';
import type { Moment } from '../growth.ts';
import { proofPressure } from './yields.ts';

const at = (pressure: number, barrel: number): Pick<Moment, 'pressure' | 'plastic'> => ({
  pressure,
  plastic: { barrel, anywhere: 0.011 },
});

const pressureOf = (start: number, ...steps: readonly [pressure: number, plastic: number][]) =>
  proofPressure(at(0, start) as Moment, steps.map(([p, ep]) => at(p, ep)) as Moment[]);

test('the barrel is at 0.2 % where it has gained so much, straight between moments', () => {
  expect(pressureOf(0, [1.7, 0.001], [1.9, 0.003])).toBeCloseTo(1.8, 12);
});

test('plastic strain that rolling left does not count as yielding', () => {
  expect(pressureOf(0.0026, [0.4, 0.0026], [1.7, 0.0036], [1.9, 0.0056])).toBeCloseTo(1.8, 12);
});

test('a barrel that gains less has no such pressure', () => {
  expect(pressureOf(0.0026, [1.7, 0.0041])).toBeUndefined();
});
