import { expect, test } from 'vitest';
import { readTyped } from './number.ts';

test.each([
  ['1.5', 1.5],
  ['1,5', 1.5],
  [' 2 ', 2],
  [',5', 0.5],
  ['0.125', 0.125],
  ['0,125', 0.125],
  ['1234,567', 1234.567],
  ['1.234,5', 1234.5],
  ['1,234.5', 1234.5],
  ['1,234,567', 1234567],
  ['1 234', 1234],
  ['1e3', 1000],
  ['−3,25', -3.25],
])('"%s" is %d', (text, value) => {
  expect(readTyped(text)).toEqual({ kind: 'number', value, rest: '' });
});

test.each([
  ['1,500', 1.5, 1500],
  ['24.125', 24.125, 24125],
])('"%s" has a single mark before exactly three digits and is asked about', (text, fraction, thousands) => {
  expect(readTyped(text)).toEqual({ kind: 'asked', fraction, thousands, rest: '' });
});

test.each([
  ['', 'empty'],
  ['two', 'no number'],
  ['1.2.3,4', 'marks'],
  ['1,23,4', 'marks'],
  ['1 23', 'marks'],
  ['1e300', 'too large'],
])('"%s" is no number: %s', (text, why) => {
  expect(readTyped(text)).toEqual({ kind: 'fault', why });
});

test('what follows the number is kept for its unit', () => {
  expect(readTyped('0,08 in')).toEqual({ kind: 'number', value: 0.08, rest: 'in' });
});
