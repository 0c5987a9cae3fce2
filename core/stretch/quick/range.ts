/** From equally likely steels to what the tank will do: ranges of growth, litres, maximum, and the band of the curve. */
import { type NextMeasure, nextMeasures } from '../../steel/belief/next.ts';
import { type Outcome, type OutcomeRanges, outcomeRanges } from '../../steel/belief/outcome.ts';
import type { SteelDraw } from '../../steel/belief/draw.ts';
import { type Range, rangeOf } from '../../stats/range.ts';
import type { Duty } from '../../tank/tank.ts';
import { SETTLED_RATE } from '../hold.ts';
import { waterCompliance } from '../water.ts';
import { type Leg, quickDay, type QuickEnd } from './day.ts';
import { growthAt, PLASTIC_PER_GROWTH, type QuickPath, valueAt } from './path.ts';
import { type QuickError, quickPath, type QuickTank } from './quick.ts';
import { HOLD_CAP } from './run.ts';
import { seamLimit } from './seam.ts';

/** What the steels make of one tank and one duty. Inside units. */
export interface StretchRange {
  /** After the holds that the duty states at the release pressure; on arrival where it states none. */
  readonly stated: OutcomeRanges;
  /** After a final hold until growth is under 0.1 %/h, at most four hours. */
  readonly settled: OutcomeRanges;
  /** s of that final hold. */
  readonly settling: Range;
  /** Growth on the way up, at pressures up to the release. */
  readonly band: readonly BandPoint[];
  readonly next: readonly NextMeasure[];
  /** Error of the quick tank on held-back shell solutions. */
  readonly error: QuickError;
  readonly draws: number;
}

export interface BandPoint {
  readonly pressure: number;
  readonly growth: Range;
  readonly volume: Range;
  /** Of each named girth. */
  readonly girths: readonly Range[];
}

export interface RangeOrders {
  readonly target: number;
  readonly duty: Duty | undefined;
  readonly seed: number;
}

export function stretchRange(
  quick: QuickTank,
  draws: readonly SteelDraw[],
  orders: RangeOrders,
): StretchRange {
  const paths = draws.map((draw) => withSeam(quick, draw, quickPath(quick, draw)));
  const rate = arrivalRate(quick, paths, orders);
  const days = (legs: readonly Leg[]): QuickEnd[] => paths.map((path, i) => quickDay(path, draws[i], legs));
  const before = legsTo(orders, rate);
  const stated = days([...before, ...statedHolds(orders)]);
  const settled = days([...before, { kind: 'final hold', time: HOLD_CAP, rate: SETTLED_RATE }]);
  const outcomes = (ends: readonly QuickEnd[]): Outcome[] => ends.map((end, i) => outcomeOf(paths[i], end));
  const ranges = outcomeRanges(draws, outcomes(stated));
  return {
    stated: ranges,
    settled: outcomeRanges(draws, outcomes(settled)),
    settling: rangeOf(
      settled.map((end) => (end.kind === 'stands' ? end.time - heldBefore(before) : Infinity)),
    ),
    band: bandOf(paths, draws, orders.target, rate),
    next: nextMeasures(
      draws,
      outcomes(settled).map((one) => one.growth),
      orders.seed,
    ),
    error: quick.error,
    draws: draws.length,
  };
}

/** A seam that parts before the plate is the tank's maximum. */
function withSeam(quick: QuickTank, draw: SteelDraw, path: QuickPath): QuickPath {
  if (quick.tank.longSeam === undefined) return path;
  const growth = seamLimit(draw);
  if (growth === undefined || growth >= path.growth[path.growth.length - 1]) return path;
  const parts = valueAt(path.growth, path.pressure, growth);
  return parts < path.maximum ? { ...path, maximum: parts } : path;
}

/** Growth rate of the largest girth that the pump gives at the release pressure, 1/s; without a pump that of the curve. */
function arrivalRate(quick: QuickTank, paths: readonly QuickPath[], { target, duty }: RangeOrders): number {
  if (duty?.pump === undefined) return CURVE_RATE / PLASTIC_PER_GROWTH;
  const { temperature } = quick.tank.water;
  const rates = paths.flatMap((path) => {
    const j = path.pressure.findIndex((p) => p >= target);
    if (j < 1) return [];
    const grown = path.growth[j] - path.growth[j - 1];
    const room = path.volume[j] - path.volume[j - 1];
    const squeezed =
      (path.pressure[j] - path.pressure[j - 1]) * waterCompliance(quick.filled, target, temperature);
    return [(grown / (room + squeezed)) * (duty.pump ?? 0)];
  });
  return rates.length === 0 ? CURVE_RATE / PLASTIC_PER_GROWTH : rangeOf(rates).median;
}

/** Rate at which drawn curves hold, 1/s (steel/prior/shape.ts). */
const CURVE_RATE = 1e-4;

function legsTo({ target, duty }: RangeOrders, rate: number): Leg[] {
  const below = (duty?.holds ?? [])
    .filter((hold) => hold.pressure < target * (1 - 1e-9) && hold.valve === 'open')
    .sort((a, b) => a.pressure - b.pressure);
  return [
    ...below.flatMap((hold): Leg[] => [
      { kind: 'ramp', pressure: hold.pressure, rate },
      { kind: 'hold', time: hold.time },
    ]),
    { kind: 'ramp', pressure: target, rate },
  ];
}

const statedHolds = ({ target, duty }: RangeOrders): Leg[] =>
  (duty?.holds ?? [])
    .filter((hold) => Math.abs(hold.pressure - target) <= 1e-9 * target)
    .map((hold) => ({ kind: 'hold', time: hold.time }));

const heldBefore = (legs: readonly Leg[]): number =>
  legs.reduce((sum, leg) => sum + (leg.kind === 'hold' ? leg.time : 0), 0);

const outcomeOf = (path: QuickPath, end: QuickEnd): Outcome => ({
  growth: end.kind === 'stands' ? end.growth : Infinity,
  volume: end.kind === 'stands' ? end.volume : Infinity,
  maximum: path.maximum,
  firstYield: path.firstYield,
});

const BAND_POINTS = 40;

/** Ranges of growth, litres and girths on the way up, denser towards the release pressure. */
function bandOf(
  paths: readonly QuickPath[],
  draws: readonly SteelDraw[],
  target: number,
  rate: number,
): BandPoint[] {
  return Array.from({ length: BAND_POINTS }, (_, k) => {
    const pressure = target * Math.sqrt((k + 1) / BAND_POINTS);
    const growths = paths.map((path, i) => growthAt(path, draws[i], pressure, rate) ?? Infinity);
    const read = (column: (path: QuickPath) => Float64Array): Range =>
      rangeOf(growths.map((x, i) => (x === Infinity ? x : valueAt(paths[i].growth, column(paths[i]), x))));
    return {
      pressure,
      growth: rangeOf(growths),
      volume: read((path) => path.volume),
      girths: paths[0].girths.map((_girth, g) => read((path) => path.girths[g])),
    };
  });
}
