import { expect, test } from 'vitest';
import { collapsePressure, draining } from './collapse.ts';
import { gasEnergy, trappedAirEnergy } from './energy.ts';
import { floorGovernsUpTo, standOff } from './standoff.ts';

test('the floor of 30 m governs up to the energy where the cube root passes it', () => {
  for (const edition of ['2008', 'later'] as const) {
    const edge = floorGovernsUpTo(edition);
    expect(standOff(0.999 * edge, edition).floorGoverns).toBe(true);
    const over = standOff(1.001 * edge, edition);
    expect(over.floorGoverns).toBe(false);
    expect(over.distance).toBeGreaterThan(30e3);
  }
});

test('between 135.5 and 271 MJ the floor is 60 m, and beyond there is none', () => {
  expect(standOff(136e9, '2008').distance).toBeGreaterThanOrEqual(60e3);
  expect(standOff(136e9, '2008').floor).toBe(60e3);
  expect(standOff(300e9, 'later').floor).toBeUndefined();
});

test('air stated at filling holds less energy than the same litres at pressure', () => {
  expect(trappedAirEnergy(1e6, 2.3)).toBeLessThan(gasEnergy(1e6, 2.3) / 20);
});

test('an unvented thin tank would collapse on draining, a thick one would not', () => {
  const barrel = { diameter: 500, length: 1000, young: 193e3, poisson: 0.3 };
  expect(draining({ ...barrel, wall: 1 }).ventMustBeOpen).toBe(true);
  expect(draining({ ...barrel, wall: 2.1 }).ventMustBeOpen).toBe(true);
  expect(draining({ ...barrel, wall: 4 }).ventMustBeOpen).toBe(false);
  expect(() => collapsePressure({ ...barrel, length: 5, wall: 1 })).toThrow('too short');
});
