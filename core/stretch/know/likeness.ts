/**
 * How a tank of given steel would have shown what was seen: the logarithm of the pressure that it carries at the growth
 * that was read, at the rate at which it grew. On logarithms this is nearly a straight line in every unknown, so that the
 * range after many readings is a normal distribution (know.ts).
 */
import { peak } from '../../math/root.ts';
import type { SteelDraw } from '../../steel/belief/draw.ts';
import { overStress, type QuickPath } from '../quick/path.ts';
import type { Seen } from './seen.ts';

/** One girth at one moment, with what its pressure depends on. */
export interface Likeness {
  /** Growth of the largest girth that goes with it. */
  readonly growth: number;
  /** ln of the pressure carried there. */
  readonly pressure: number;
  /** What of that is the effect of the rate. */
  readonly rate: number;
  /** d(ln pressure)/d(growth of this girth). */
  readonly slope: number;
  /** Standard deviation of ln pressure that the blur of the girth leaves: over as much to both sides, since tables bend. */
  readonly girthBlur: number;
  /** Standard deviation of ln pressure that the blur of the rate of growth leaves. */
  readonly rateBlur: number;
}

/** The path with girths that never fall back: about first yield the place that grows most moves, and tables bend there. */
export const rising = (path: QuickPath): QuickPath => ({
  ...path,
  girths: path.girths.map((girth) => {
    let most = 0;
    return girth.map((growth) => (most = Math.max(growth, most * (1 + LEAST_RISE))));
  }),
});
const LEAST_RISE = 1e-3;

/** Growth rate below which a hold is taken to stand still, 1/s: a hundredth of 0.1 %/h. */
const STILL = 3e-9;

/** A moment and the one before it. */
export interface Span {
  readonly before: Seen | undefined;
  readonly now: Seen;
}

/**
 * Of girth `i` at `now`, made straight about its growth `about`: the one read, where none is given. Undefined where it was
 * not read, or beyond the table.
 */
export function likenessOf(
  path: QuickPath,
  draw: SteelDraw,
  i: number,
  { before, now }: Span,
  about?: number,
): Likeness | undefined {
  const seen = now.girths[i];
  if (seen === undefined || seen.growth < CLEAR * seen.blur) return undefined;
  const there = about ?? seen.growth;
  const rated = rateAt(path, draw, i, { span: { before, now }, there });
  if (rated === undefined) return undefined;
  const { over, slope, rateBlur } = rated;
  const girth = path.girths[i];
  // What a slow wall does not carry it is shorter by: on the path it stands further up.
  const elastic = over * path.elastic;
  const at = placeOf(girth, Math.max(there - elastic, LEAST_GROWTH));
  if (at.low > girth.length - 2) return undefined;
  const faster = Math.log1p(over / along(path.flow, at));
  const carried = (growth: number): number => lnPressureAt(path, girth, growth - elastic);
  return {
    growth: Math.exp(alongLog(path.growth, at)),
    pressure: carried(there) + faster + slope * (seen.growth - there),
    rate: faster + carried(there) - lnPressureAt(path, girth, there),
    slope,
    girthBlur: 0.5 * (carried(there + seen.blur) - carried(there - seen.blur)),
    rateBlur,
  };
}

interface Rated {
  /** Stress over the flow stress of the curve, MPa. */
  readonly over: number;
  readonly slope: number;
  readonly rateBlur: number;
}

/** The effect of the rate of growth where a girth has grown to `there`; undefined beyond the table. */
function rateAt(
  path: QuickPath,
  draw: SteelDraw,
  i: number,
  { span, there }: { readonly span: Span; readonly there: number },
): Rated | undefined {
  const at = placeOf(path.girths[i], there);
  if (at.low > path.girths[i].length - 2) return undefined;
  const growth = Math.exp(alongLog(path.growth, at));
  const plastic = Math.max(0, along(path.plastic, at));
  const slope = slopeAt(path.pressure, path.girths[i], at);
  const flow = along(path.flow, at);
  const awake = plastic / (plastic + WAKES);
  const effect = awake * draw.rate.perEfold * Math.max(0, 1 / flow - slope * path.elastic);
  const rate = rateOf(i, { ...span, slope, effect, stretch: path.elastic * flow });
  return { over: awake * overStress(draw, growth, rate.value), slope, rateBlur: effect * rate.blur };
}

export interface Reading {
  readonly growth: number;
  readonly growthBlur: number;
  /** ln of the pressure. */
  readonly pressure: number;
  readonly pressureBlur: number;
}

/**
 * Growth of girth `i` at which the path comes nearest to a growth and a pressure that were read, each by its own blur; at
 * least the blur of the growth, under which a reading says nothing.
 * Where a blurred growth meets the knee of first yield the path is far from straight: at the growth that was read it may
 * be well past the knee, and the tank be elastic.
 */
export function nearestGrowth(path: QuickPath, i: number, read: Reading): number {
  const { growth, growthBlur, pressure, pressureBlur } = read;
  const girth = path.girths[i];
  const off = (at: number): number =>
    ((at - growth) / growthBlur) ** 2 + ((lnPressureAt(path, girth, at) - pressure) / pressureBlur) ** 2;
  const meets = growthMeeting(path, girth, pressure);
  const [low, high] = [meets, growth].map((end) => Math.max(end, growthBlur)).sort((a, b) => a - b);
  return peak((at) => -off(at), low, high, { width: FINE * growthBlur, steps: NARROWINGS }).x;
}
const NARROWINGS = 16;
const FINE = 0.1;

/** Growth of a girth at which the path carries a pressure; the last of the table beyond its highest. */
function growthMeeting(path: QuickPath, girth: Float64Array, lnPressure: number): number {
  const pressure = Math.exp(lnPressure);
  const k = path.pressure.findIndex((carried) => carried >= pressure);
  if (k < 0) return girth[girth.length - 1];
  if (k === 0) return (girth[0] * pressure) / path.pressure[0];
  const f = (pressure - path.pressure[k - 1]) / (path.pressure[k] - path.pressure[k - 1]);
  return girth[k - 1] + f * (girth[k] - girth[k - 1]);
}

/** Growth under which a table has no logarithm: a blur may reach below nothing. */
const LEAST_GROWTH = 1e-7;

const lnPressureAt = (path: QuickPath, girth: Float64Array, growth: number): number => {
  const at = placeOf(girth, Math.max(growth, LEAST_GROWTH));
  return at.low > girth.length - 2 ? Math.log(path.pressure[girth.length - 1]) : alongLog(path.pressure, at);
};

/** Blurs that a growth must stand clear of, for its logarithm to mean anything. */
const CLEAR = 5;
/** Plastic strain over which the rate effect sets in. */
const WAKES = 1e-4;
/** Blur of the logarithm of a rate that is not known. */
const UNKNOWN_RATE = 1;

interface RateGivens {
  readonly before: Seen | undefined;
  readonly now: Seen;
  /** d(ln pressure)/d(growth of this girth). */
  readonly slope: number;
  /** Rise of ln pressure per e-fold of rate. */
  readonly effect: number;
  /** Elastic growth under the flow stress. */
  readonly stretch: number;
}

/**
 * Rate of the growth that is not elastic, from the growth since the moment before, and the blur of its logarithm. What the pressure has risen
 * less than the wall has hardened, the rate has fallen: y = (slope dg - d ln p)/effect e-folds. They fall evenly with
 * growth, so that the rate at the end is (dg/dt) (1 - exp(-y))/y: the mean rate where the pump keeps pace, logarithmic
 * creep where the pressure is kept.
 */
function rateOf(
  i: number,
  { before, now, slope, effect, stretch }: RateGivens,
): { readonly value: number; readonly blur: number } {
  const [a, b] = [before?.girths[i], now.girths[i]];
  const later = before !== undefined && now.seconds > before.seconds && before.pressure > 0;
  if (!later || a === undefined || b === undefined || now.turned)
    return { value: USUAL_RATE, blur: UNKNOWN_RATE };
  const blur = Math.hypot(a.apart ?? a.blur, b.apart ?? b.blur);
  const grown = Math.max(b.growth - a.growth, LEAST_OF_BLUR * blur);
  const efold = Math.max(effect, 1e-6);
  const risen = Math.log(now.pressure / before.pressure);
  // Elastic growth goes with the stress, pressure times radius over wall; what is left creeps.
  const crept = grown - stretch * (risen + 2 * grown);
  const mean = Math.max(crept, LEAST_OF_BLUR * blur, LEAST_CREPT * grown) / (now.seconds - before.seconds);
  // Over a long piece of a ramp the slope bends: the pump's mean rate is nearer.
  if (risen > KEPT * efold) {
    const uneven = grown > LONG * b.growth ? LONG_BLUR : RAMP_BLUR;
    return bounded(mean, Math.hypot(blur / grown, uneven));
  }
  const fallen = (slope * grown - risen) / efold;
  const { share, bend } = endOf(Math.min(Math.max(fallen, -MOST_FALLS), 50));
  const own = (blur / grown) * Math.abs(1 + (bend * slope * grown) / efold);
  const pressureBlur = Math.hypot(before.blur / before.pressure, now.blur / now.pressure) / efold;
  return bounded(mean * share, Math.hypot(own, bend * pressureBlur, EVEN_BLUR));
}

const bounded = (value: number, blur: number) => ({
  value: Math.max(STILL, value),
  blur: Math.min(UNKNOWN_RATE, blur),
});

/** Rate at the end over the mean one, where its logarithm falls evenly by `falls`; and d ln(share)/d(falls). */
const endOf = (falls: number): { readonly share: number; readonly bend: number } =>
  Math.abs(falls) < 1e-6
    ? { share: 1, bend: -0.5 }
    : { share: -Math.expm1(-falls) / falls, bend: 1 / Math.expm1(falls) - 1 / falls };

/** Growth that is taken where less was read: over its blur; and of that which is not elastic, over all of it. */
const LEAST_OF_BLUR = 0.3;
const LEAST_CREPT = 1e-3;

/** E-folds by which a rate may rise within a moment. */
const MOST_FALLS = 2;
/** Rise of pressure, in e-folds of rate, over which a moment is a long piece of a ramp. */
const KEPT = 1;
/** Blur of the logarithm of the rate where it falls evenly; of the mean one for the last one; and over a very long piece. */
const EVEN_BLUR = 0.05;
const RAMP_BLUR = 0.15;
const LONG_BLUR = 0.6;
const LONG = 0.3;

/** Rate of an ordinary ramp, 1/s. */
const USUAL_RATE = 2e-5;

interface Spot {
  readonly low: number;
  readonly f: number;
}

/** Where a rising column has a value; goes on straight before the first point. */
function placeOf(column: Float64Array, value: number): Spot {
  let low = 0;
  let high = column.length - 1;
  if (value >= column[high]) return { low: high, f: 0 };
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (column[middle] <= value) low = middle;
    else high = middle;
  }
  return { low, f: Math.log(value / column[low]) / Math.log(column[low + 1] / column[low]) };
}

const along = (column: Float64Array, { low, f }: Spot): number =>
  column[low] + f * (column[low + 1] - column[low]);

const alongLog = (column: Float64Array, { low, f }: Spot): number =>
  Math.log(column[low]) + f * Math.log(column[low + 1] / column[low]);

/** d(ln pressure)/d(girth) from the points about a spot: between points it changes by little. */
function slopeAt(pressure: Float64Array, girth: Float64Array, { low, f }: Spot): number {
  const at = (k: number): number => {
    const i = Math.min(Math.max(k, 0), girth.length - 2);
    return Math.log(pressure[i + 1] / pressure[i]) / (girth[i + 1] - girth[i]);
  };
  const near = f < 0.5 ? [at(low - 1), at(low), f + 0.5] : [at(low), at(low + 1), f - 0.5];
  const slope = near[0] + near[2] * (near[1] - near[0]);
  return Math.max(slope, LEAST_SLOPE);
}
/** Slope of ln pressure over growth under which a tank is past its maximum for all practical purposes. */
const LEAST_SLOPE = 0.05;
