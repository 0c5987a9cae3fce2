import { expect, test } from 'vitest';
import { figure, fixed, say, saySigned, sayStated, signedFigure, statedFigure } from './figure.ts';
import { type Manner, USUAL_MANNER } from './manner.ts';

const manner = (units: Manner['units'], decimal: Manner['decimal'] = '.'): Manner => ({
  units,
  decimal,
  language: 'en',
});

test('a computed value always has the digits of its quantity', () => {
  expect(say(USUAL_MANNER, 'pressure', 2.7)).toBe('27.0 bar');
  expect(say(USUAL_MANNER, 'girth', 1897.46)).toBe('1897.5 mm');
  expect(say(USUAL_MANNER, 'growth', 0.0361516)).toBe('3.62 %');
  expect(say(USUAL_MANNER, 'volume', 13.2e6)).toBe('13.20 L');
  expect(say(USUAL_MANNER, 'mass', 0.0375)).toBe('37.5 kg');
});

test('a stated value has no more digits than were stated', () => {
  expect(sayStated(USUAL_MANNER, 'length', 600)).toBe('600 mm');
  expect(sayStated(USUAL_MANNER, 'wall', 2.5)).toBe('2.5 mm');
  expect(sayStated(USUAL_MANNER, 'length', 484.83)).toBe('484.8 mm');
});

test('units switch as a whole', () => {
  // Exact by definition: 1 psi is 1 lbf/in², 1 in 25.4 mm, 1 US gallon 231 in³, 1 lb 0.45359237 kg.
  expect(say(manner('MPa'), 'pressure', 2.7)).toBe('2.70 MPa');
  expect(say(manner('psi'), 'pressure', 2.7)).toBe('392 psi');
  expect(say(manner('psi'), 'girth', 1897.46)).toBe('74.703 in');
  expect(say(manner('psi'), 'volume', 13.2e6)).toBe('3.487 gal');
  expect(say(manner('psi'), 'mass', 0.0375)).toBe('82.7 lb');
});

test('the decimal mark is the chosen one, for computed and for stated values', () => {
  expect(figure(manner('bar', ','), 'wall', 1.914).text).toBe('1,91');
  expect(statedFigure(manner('bar', ','), 'wall', 2.5).text).toBe('2,5');
});

test('a sign stands before what has one, and never before nothing', () => {
  expect(saySigned(USUAL_MANNER, 'growth', 0.0361)).toBe('+3.61 %');
  expect(saySigned(USUAL_MANNER, 'growth', -0.0012)).toBe('-0.12 %');
  expect(signedFigure(USUAL_MANNER, 'growth', -0.00001).text).toBe('0.00');
  expect(fixed(USUAL_MANNER, -0.0004, 2)).toBe('0.00');
});

test('what is no number is our fault and is not printed', () => {
  expect(() => say(USUAL_MANNER, 'pressure', Number.NaN)).toThrow('must be a number, got NaN');
});
