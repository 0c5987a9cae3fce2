import { expect, test } from 'vitest';
import { wallsFrom } from './compare.ts';
import { Ending } from './desk/desk.ts';

test('walls are a list with one unit; a semicolon makes the comma a decimal mark', () => {
  expect(wallsFrom('1.5,2,2.5mm')).toEqual([1.5, 2, 2.5]);
  expect(wallsFrom('1.5 2 2.5 mm')).toEqual([1.5, 2, 2.5]);
  expect(wallsFrom('1,5;2;2,5mm')).toEqual([1.5, 2, 2.5]);
});

test('inches are sheets in inches', () => {
  expect(wallsFrom('0.06,0.08in')).toEqual([1.524, 2.032]);
});

test.each(['1.5,2', 'mm', '2,-3mm', '0mm', '1.5cm', 'two mm'])('"%s" ends with what was wanted', (text) => {
  expect(() => wallsFrom(text)).toThrow(Ending);
  expect(() => wallsFrom(text)).toThrow(/1\.5,2,2\.5mm/);
});
