import { expect, test } from 'vitest';
import { neededWall, replaceArea } from './opening.ts';

const hole = { diameter: 61, wall: 2, neededWall: 1.3, vesselDiameter: 600 };

test('the wall to spare within one diameter each side counts, and what is wanting is said', () => {
  const found = replaceArea(hole);
  expect(found.removed).toBeCloseTo(79.3, 10);
  expect(found.spareWall).toBeCloseTo(42.7, 10);
  expect(found.missing).toBeCloseTo(36.6, 10);
  expect(found.because).toContain('give a pad');
});

test('a pad within reach closes the gap, beyond reach it does not count', () => {
  expect(replaceArea({ ...hole, pad: { thickness: 2, width: 10 } }).enough).toBe(true);
  expect(replaceArea({ ...hole, pad: { thickness: 0.5, width: 500 } }).pad).toBeCloseTo(2 * 30.5 * 0.5, 10);
});

test('a wall too thin without the hole, and a hole of more than half the diameter, are not enough', () => {
  expect(replaceArea({ ...hole, neededWall: 2.1, pad: { thickness: 4, width: 60 } }).because).toContain(
    'too thin',
  );
  const large = replaceArea({ ...hole, diameter: 301, neededWall: 0.1 });
  expect(large.enough).toBe(false);
  expect(large.because).toContain('does not cover');
});

test('needed walls carry the membrane stress at the allowable', () => {
  // 270 MPa at 18 bar in 600 mm: p r/S = 2.0, less the 0.6 p of the rule.
  expect(neededWall('barrel', 1.8, 300, 270)).toBeCloseTo(540 / 268.92, 12);
  expect(neededWall('sphere', 1.8, 540, 270)).toBeCloseTo(972 / 539.64, 12);
});
