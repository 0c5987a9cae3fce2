import { describe, expect, test } from 'vitest';
import type { SteelDraw } from '../../steel/belief/draw.ts';
import type { QuickPath } from '../quick/path.ts';
import { likenessOf, nearestGrowth } from './likeness.ts';
import { onceEach, type Seen } from './seen.ts';

const GROWTH = Float64Array.of(0.001, 0.01, 0.02, 0.04, 0.08);
const PATH: QuickPath = {
  growth: GROWTH,
  pressure: Float64Array.of(1.5, 2, 2.3, 2.6, 2.8),
  volume: GROWTH.map((growth) => 2e8 * growth),
  girths: [GROWTH],
  flow: GROWTH.map(() => 400),
  plastic: GROWTH,
  elastic: 0,
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

describe('a growth with a blur, about the knee of first yield', () => {
  // Elastic to 1.5 MPa at 0.1 %, then nearly flat.
  const knee = { ...PATH, pressure: Float64Array.of(1.5, 1.6, 1.65, 1.7, 1.75) };
  const read = { growth: 0.0015, growthBlur: 0.0003, pressure: Math.log(1.2), pressureBlur: 0.01 };

  test('is laid to its blur where the pressure says that the tank is elastic', () => {
    // 1.2 MPa is met at 0.08 %; what the blur leaves of the pressure is a hundredth of it.
    expect(nearestGrowth(knee, 0, read)).toBeGreaterThan(0.00079);
    expect(nearestGrowth(knee, 0, read)).toBeLessThan(0.00083);
  });

  test('is taken as it was read where it is sharp and the pressure is not', () => {
    const sharp = nearestGrowth(knee, 0, { ...read, growthBlur: 1e-6, pressureBlur: 0.3 });
    expect(sharp).toBeCloseTo(0.0015, 5);
  });

  test('stays a number where zero and gain leave less than nothing of the growth', () => {
    const least = nearestGrowth(knee, 0, { ...read, growth: -0.0001, pressure: Math.log(0.01) });
    expect(least).toBeCloseTo(read.growthBlur, 12);
    // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- of the steel only its rate effect is read here
    const draw = DRAW as SteelDraw;
    const now: Seen = { ...seen(100, 0.0016), girths: [{ growth: 0.0016, blur: 0.0003 }] };
    const like = likenessOf(knee, draw, 0, { before: undefined, now }, 0.0002);
    expect(like?.girthBlur).toBeGreaterThan(0);
    expect(like?.pressure).toBeLessThan(Infinity);
  });

  test('goes to the end of the path where the pressure is over its highest', () => {
    const over = nearestGrowth(knee, 0, { ...read, growth: 0.05, growthBlur: 0.02, pressure: Math.log(2) });
    expect(over).toBeGreaterThan(0.078);
    expect(over).toBeLessThanOrEqual(0.08);
  });
});

test('straight about another growth than the one read, the likeness goes on along its slope', () => {
  const span = { before: undefined, now: seen(100, 0.025) };
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- of the steel only its rate effect is read here
  const draw = DRAW as SteelDraw;
  const there = likenessOf(PATH, draw, 0, { before: undefined, now: seen(100, 0.024) });
  const about = likenessOf(PATH, draw, 0, span, 0.024);
  expect(about?.slope).toBe(there?.slope);
  expect((about?.pressure ?? 0) - (there?.pressure ?? 0)).toBeCloseTo(0.001 * (there?.slope ?? 0), 12);
});

test('a rise that is elastic is no creep: at the knee the wall yields more slowly than the girth grows', () => {
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- of the steel only its rate effect is read here
  const draw = DRAW as SteelDraw;
  const stiff = { ...PATH, elastic: 5e-6 };
  const span = { before: { ...seen(0, 0.02), pressure: 2 }, now: seen(100, 0.025) };
  const [soft, real] = [PATH, stiff].map((path) => likenessOf(path, draw, 0, span));
  // 400 MPa are 0.2 % of elastic growth at 5e-6 per MPa: of 0.5 % grown, 0.2 % x (ln(2.4/2) + 2 x 0.5 %) is elastic.
  const share = 1 - (0.002 * (Math.log(2.4 / 2) + 0.01)) / 0.005;
  // 4 MPa per e-fold, in pressure less what the wall is shorter by: the place on the path moves along its slope.
  const efolds = (like: typeof soft, elastic: number): number =>
    (like?.rate ?? 0) / (1 / 400 - elastic * (like?.slope ?? 0)) / 4;
  expect(efolds(real, 5e-6) - efolds(soft, 0)).toBeCloseTo(Math.log(share), 2);
});

describe('a growth that is read again to the last digit', () => {
  const at = (growth: number): Seen => seen(100, growth);
  const blurs = (all: readonly Seen[]): (number | undefined)[] =>
    onceEach(all).map((one) => one.girths[0]?.blur);

  test('says as much as one reading: the blur of both is wider by the root of two', () => {
    expect(blurs([at(0.01), at(0.01), at(0.02)])).toEqual([Math.SQRT2 * 1e-5, Math.SQRT2 * 1e-5, 1e-5]);
  });

  test('is off as before: what it grew since another row is as blurred as if it were read once', () => {
    // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- of the steel only its rate effect is read here
    const draw = DRAW as SteelDraw;
    const rows = [seen(0, 0.025), seen(60, 0.025), seen(600, 0.0255)];
    const again = onceEach(rows);
    const like = (all: readonly Seen[], k: number) =>
      likenessOf(PATH, draw, 0, { before: all[k - 1], now: all[k] });
    for (const k of [1, 2]) {
      expect(like(again, k)?.rate).toBe(like(rows, k)?.rate);
      expect(like(again, k)?.rateBlur).toBe(like(rows, k)?.rateBlur);
    }
    expect(like(again, 1)?.girthBlur).toBeGreaterThan(1.4 * (like(rows, 1)?.girthBlur ?? Infinity));
    const [still, moved] = [1, 2].map((k) => like(rows, k)?.rateBlur ?? NaN);
    expect(moved).toBeLessThan(0.9 * still);
  });

  test('is one girth’s own: what another girth reads does not count', () => {
    const two: Seen = {
      ...at(0.01),
      girths: [
        { growth: 0.01, blur: 1e-5 },
        { growth: 0.02, blur: 1e-5 },
      ],
    };
    const other: Seen = { ...at(0.01), girths: [{ growth: 0.03, blur: 1e-5 }, undefined] };
    const [first, second] = onceEach([two, other]);
    expect(first.girths.map((girth) => girth?.blur)).toEqual([1e-5, 1e-5]);
    expect(second.girths[1]).toBeUndefined();
  });
});
