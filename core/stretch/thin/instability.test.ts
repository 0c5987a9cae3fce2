import { expect, test } from 'vitest';
import { flowOf } from '../../steel/flow.ts';
import { metalOf } from '../../steel/plane.ts';
import { cylinderInstability, sphereInstability, tubeYieldPressure } from './instability.ts';
import { seamBeside } from '../limit/seamStrip.ts';
import { localNecking, longCylinder, pressureMaximum, sphere } from './vessel.ts';

test('the closed forms are the maxima of the path of a rigid-plastic power law', () => {
  const [K, n] = [1275, 0.43];
  const Rm = K * (n / Math.E) ** n;
  const metal = metalOf(Infinity, 0.3, flowOf({ law: 'hollomon', K, n }));
  const tube = pressureMaximum(longCylinder(metal, 251, 2.1));
  const ball = pressureMaximum(sphere(metal, 251, 2.1));
  // The path starts at a plastic strain of 1e-7; its peak is flat, so strain is good to 1e-5 only.
  expect(tube?.hoop).toBeCloseTo(cylinderInstability(n).hoop, 5);
  expect(((tube?.pressure ?? 0) * 251) / 2.1 / Rm).toBeCloseTo(cylinderInstability(n).strength, 6);
  expect(ball?.hoop).toBeCloseTo(sphereInstability(n).hoop, 5);
  expect(((ball?.pressure ?? 0) * 251) / 2.1 / Rm).toBeCloseTo(sphereInstability(n).strength, 6);
});

test('a power law necks locally at a hoop strain of n', () => {
  const metal = metalOf(Infinity, 0.3, flowOf({ law: 'hollomon', K: 1275, n: 0.43 }));
  expect(localNecking(longCylinder(metal, 251, 2.1))?.hoop).toBeCloseTo(0.43, 5);
});

test('an end force that yields the tube by itself is refused with its numbers', () => {
  const tube = { radius: 30, wall: 1, yieldStress: 25, endForce: -9000 };
  expect(() => tubeYieldPressure(tube, 'von Mises')).toThrow('-9000 N');
});

test('a seam as strong as the plate strains as the plate, a weaker one more, a much weaker one parts', () => {
  const flow = flowOf({ law: 'ludwigson', K: 1349, n: 0.497, k1: 5.144, k2: -21.3 });
  const plate = seamBeside(flow, { width: 20, strength: 1, thickness: 1 }, 0.041);
  expect(plate).toMatchObject({ kind: 'held' });
  if (plate.kind === 'held') expect(plate.hoop).toBeCloseTo(0.041, 9);
  const weak = seamBeside(flow, { width: 20, strength: 0.91, thickness: 1 }, 0.041);
  if (weak.kind !== 'held') throw new Error('parted');
  expect(weak.hoop).toBeGreaterThan(0.05);
  expect(seamBeside(flow, { width: 20, strength: 0.5, thickness: 1 }, 0.041).kind).toBe('parts');
});
