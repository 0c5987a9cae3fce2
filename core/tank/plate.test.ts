import { expect, test } from 'vitest';
import { plateDeflection, plateLimitPressure, plateStress } from './plate.ts';

const clamped = { radius: 151, thickness: 9, edge: 'clamped' } as const;
const free = { ...clamped, edge: 'free to turn' } as const;

test('a clamped plate is stiffer and stronger than one that is free to turn', () => {
  expect(plateStress(free, 0.2, 0.3) / plateStress(clamped, 0.2, 0.3)).toBeCloseTo(1.65, 10);
  expect(plateDeflection(free, 0.2, { young: 2e5, poisson: 0.3 })).toBeCloseTo(
    (5.3 / 1.3) * plateDeflection(clamped, 0.2, { young: 2e5, poisson: 0.3 }),
    12,
  );
});

test('the limit pressure lies over first yield and goes with the square of the thickness', () => {
  const yields = 220 / plateStress(clamped, 1, 0.3);
  expect(plateLimitPressure(clamped, 220)).toBeGreaterThan(yields);
  expect(
    plateLimitPressure({ ...clamped, thickness: 18 }, 220) / plateLimitPressure(clamped, 220),
  ).toBeCloseTo(4, 12);
});
