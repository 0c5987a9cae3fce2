import { expect, test } from 'vitest';
import { knuckleVerdict } from './knuckle.ts';
import type { Head, HeadShape } from './tank.ts';
import { enThicknesses, enWrinklingPressure, nominalTorisphere } from './wrinkle.ts';

const steel = {
  young: 193e3,
  poisson: 0.29,
  density: 7.9e-9,
  biaxialFactor: 1,
  flow: { law: 'swift', K: 1350, n: 0.45, e0: 0.0155 },
} as const;
const head = (shape: HeadShape, wall = 2): Head => ({ shape, wall, straightFlange: 0, steel });
const load = { pressure: 2.7, proof: 235, insideDiameter: 600 };

test('a thin torispherical head at stretch pressure is to be watched', () => {
  const verdict = knuckleVerdict(head({ kind: 'torispherical', crownRadius: 600, knuckleRadius: 60 }), load);
  expect(verdict.verdict).toBe('watch the knuckle');
  expect(verdict.because).toContain('27.0 bar is over');
  expect(verdict.pressures).toHaveLength(4);
});

test('the lowest published pressure that applies decides, on both sides of it', () => {
  const shape = { kind: 'torispherical', crownRadius: 610, knuckleRadius: 62 } as const;
  const applying = knuckleVerdict(head(shape), load).pressures.filter(
    (one) => one.outside.length === 0 && one.says !== 'knuckle yields through',
  );
  expect(applying.length).toBeGreaterThan(0);
  const lowest = Math.min(...applying.map((one) => one.pressure));
  expect(knuckleVerdict(head(shape), { ...load, pressure: 0.999 * lowest }).verdict).toBe('no sign');
  expect(knuckleVerdict(head(shape), { ...load, pressure: 1.001 * lowest }).verdict).toBe(
    'watch the knuckle',
  );
});

test('a 2:1 ellipsoid is judged by its nominal torisphere, another ellipsoid is outside validity', () => {
  const two = knuckleVerdict(head({ kind: 'semi-ellipsoidal', depth: 150 }), load);
  expect(two.torisphere).toEqual(nominalTorisphere(600, 150, 2));
  expect(two.torisphere?.crownRadius).toBeCloseTo(540, 9);
  expect(two.torisphere?.knuckleRadius).toBeCloseTo(102, 9);
  const deep = knuckleVerdict(head({ kind: 'semi-ellipsoidal', depth: 210 }), load);
  expect(deep.verdict).toBe('outside validity');
  expect(deep.because).toContain('1.43');
});

test('a hemisphere has no knuckle, whichever way it is written', () => {
  expect(knuckleVerdict(head({ kind: 'hemispherical' }), load).verdict).toBe('no knuckle');
  expect(knuckleVerdict(head({ kind: 'semi-ellipsoidal', depth: 300 }), load).verdict).toBe('no knuckle');
});

test('a head that no formula covers is said to be outside validity, with the reason', () => {
  const sharp = knuckleVerdict(head({ kind: 'torispherical', crownRadius: 590, knuckleRadius: 18 }), load);
  expect(sharp.verdict).toBe('outside validity');
  expect(sharp.because).toContain('knuckle radius 18 mm is under 0.06');
  expect(knuckleVerdict(head({ kind: 'conical', halfAngle: 0.7, knuckleRadius: 60 }), load).verdict).toBe(
    'outside validity',
  );
});

test('the wrinkling pressure of the wall that wrinkling asks for is the pressure it was asked for', () => {
  const shape = { insideDiameter: 597, crownRadius: 571, knuckleRadius: 71 };
  const { wrinkling } = enThicknesses(shape, {
    pressure: 1.31,
    allowable: 151,
    buckling: 143,
    jointCoefficient: 0.85,
  });
  expect(enWrinklingPressure({ ...shape, wall: wrinkling }, 143)).toBeCloseTo(1.31, 10);
});
