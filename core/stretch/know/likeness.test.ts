import { expect, test } from 'vitest';
import type { SteelDraw } from '../../steel/belief/draw.ts';
import type { QuickPath } from '../quick/path.ts';
import { likenessOf } from './likeness.ts';
import type { Seen } from './seen.ts';

const GROWTH = Float64Array.of(0.001, 0.01, 0.02, 0.04, 0.08);
const PATH: QuickPath = {
  growth: GROWTH,
  pressure: Float64Array.of(1.5, 2, 2.3, 2.6, 2.8),
  volume: GROWTH.map((growth) => 2e8 * growth),
  girths: [GROWTH],
  flow: GROWTH.map(() => 400),
  plastic: GROWTH,
  maximum: 3,
  firstYield: 1.5,
  creep: { growth: 1, volume: 1, girths: [1] },
};
const DRAW: Pick<SteelDraw, 'rate'> = { rate: { on: 'yield', perEfold: 4, reference: 1e-4 } };

const seen = (seconds: number, growth: number): Seen => ({
  seconds,
  pressure: 2.4,
  blur: 0.001,
  girths: [{ growth, blur: 1e-5 }],
  turned: false,
});

test('two moments of one time say nothing of the rate of growth between them, and the likeness stays a number', () => {
  const now = seen(100, 0.025);
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- of the steel only its rate effect is read here
  const like = (before: Seen) => likenessOf(PATH, DRAW as SteelDraw, 0, { before, now });
  expect(like(seen(100, 0.024))?.pressure).toBe(like({ ...seen(0, 0.024), pressure: 0 })?.pressure);
  expect(like(seen(100, 0.024))?.rateBlur).toBeGreaterThan(like(seen(40, 0.024))?.rateBlur ?? Infinity);
});
