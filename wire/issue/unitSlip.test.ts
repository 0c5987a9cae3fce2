import { expect, test } from 'vitest';
import { conversion, numberSlip, unitSlip } from './unitSlip.ts';

test.each([
  ['wall_cm', 0.25, 'wall_mm', '0.25 cm is 2.5 mm'],
  ['wall_in', 0.1, 'wall_mm', '0.1 in is 2.54 mm'],
  ['young_GPa', 193, 'young_MPa', '193 GPa is 193000 MPa'],
  ['workingPressure_psi', 300, 'workingPressure_bar', '300 psi is 20.68427188 bar'],
  ['temperature_K', 288.15, 'temperature_C', '288.15 K is 15 C'],
  ['pump_mL_per_min', 750, 'pump_L_per_min', '750 mL_per_min is 0.75 L_per_min'],
])('%s %d means %s: %s', (key, value, meant, says) => {
  const allowed = ['wall_mm', 'young_MPa', 'workingPressure_bar', 'temperature_C', 'pump_L_per_min'];
  expect(unitSlip(key, value, allowed)).toEqual({ meant, says });
});

test('a key without its unit, or with one that measures something else, gets the key and no value', () => {
  expect(unitSlip('wall', 2, ['wall_mm'])).toEqual({ meant: 'wall_mm' });
  expect(unitSlip('wall_bar', 2, ['wall_mm'])).toEqual({ meant: 'wall_mm' });
  expect(unitSlip('plate', 2, ['wall_mm'])).toBeUndefined();
});

test('lengths and pressures are never turned into one another', () => {
  expect(conversion('mm', 'bar')).toBeUndefined();
  expect(conversion('psi', 'bar')?.(14.503773773)).toBeCloseTo(1, 9);
});

test.each([
  ['2', 'wall_mm', 'write 2, without quotes'],
  ['2 mm', 'wall_mm', 'write 2, without quotes'],
  ['2,5', 'wall_mm', 'write 2.5, without quotes'],
  ['0.25 cm', 'wall_mm', 'write 2.5, without quotes'],
  ['1,250', 'length_mm', 'write 1.250 or 1250, without quotes'],
  ['NaN', 'wall_mm', 'give a bare number, without quotes'],
  ['about 2', 'wall_mm', 'give a bare number, without quotes'],
])('the text %j at %s: %s', (text, key, says) => {
  expect(numberSlip(text, key)).toBe(says);
});
