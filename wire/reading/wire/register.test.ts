import { expect, test } from 'vitest';
import { fromWords, type Register, spansOf } from './register.ts';

const at = (address: number, as: Register['as'], more: Partial<Register> = {}): Register => ({
  channel: `c${address}`,
  table: 'holding',
  address,
  as,
  ...more,
});

test('whole numbers are read with their sign, scaled and shifted', () => {
  expect(fromWords([0xff38], at(1, 'int16', { scale: 0.01 }))).toBeCloseTo(-2, 12);
  expect(fromWords([0xff38], at(1, 'uint16'))).toBe(65_336);
  expect(fromWords([0x0001, 0x86a0], at(1, 'uint32', { scale: 1e-3, offset: 5 }))).toBeCloseTo(105, 9);
  expect(fromWords([0xffff, 0xfffe], at(1, 'int32'))).toBe(-2);
});

test('a float is read in either order of its words', () => {
  // 123.456 is 42 F6 E9 79 in IEEE 754 single precision.
  expect(fromWords([0x42f6, 0xe979], at(1, 'float32'))).toBeCloseTo(123.456, 4);
  expect(fromWords([0xe979, 0x42f6], at(1, 'float32', { words: 'low first' }))).toBeCloseTo(123.456, 4);
});

test('a pattern that is no number is nothing, not NaN', () => {
  expect(fromWords([0x7fc0, 0x0000], at(1, 'float32'))).toBeUndefined();
});

test('neighbours are asked for together; gaps, other tables and long runs part them', () => {
  const spans = spansOf([
    at(12, 'float32'),
    at(10, 'int16'),
    at(11, 'int16'),
    at(40, 'int16'),
    at(11, 'int16', { table: 'input' }),
  ]);
  expect(spans.map(({ table, from, count }) => [table, from, count])).toEqual([
    ['holding', 10, 4],
    ['holding', 40, 1],
    ['input', 11, 1],
  ]);
  const long = spansOf(Array.from({ length: 100 }, (_, i) => at(2 * i, 'float32')));
  expect(long.map(({ count }) => count)).toEqual([124, 76]);
  expect(long.flatMap(({ registers }) => registers)).toHaveLength(100);
});
