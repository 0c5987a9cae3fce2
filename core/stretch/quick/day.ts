/**
 * The quick tank through a day: ramps, holds, final hold. The rate effect rides on the static path: at a growth the tank
 * carries p = static pressure x (1 + rise of flow stress / flow stress), so the rate follows from the pressure in closed
 * form and time from an integral over the growth.
 */
import { RATE_FLOOR } from '../../steel/plane.ts';
import type { SteelDraw } from '../../steel/belief/draw.ts';
import { SETTLED_RATE } from '../hold.ts';
import type { QuickPath } from './quick.ts';
import { HOLD_CAP } from './run.ts';

/** One leg of the day. Inside units; rates are of the largest girth, 1/s. */
export type Leg =
  /** Up to a pressure at a growth rate (on arrival). */
  | { readonly kind: 'ramp'; readonly pressure: number; readonly rate: number }
  | { readonly kind: 'hold'; readonly time: number }
  /** Until growth is under `rate`, at most `time` s. */
  | { readonly kind: 'final hold'; readonly time: number; readonly rate: number };

export type QuickEnd =
  | {
      readonly kind: 'stands';
      readonly growth: number;
      readonly volume: number;
      /** Growth of each named girth. */
      readonly girths: readonly number[];
      /** s spent in holds. */
      readonly time: number;
      /** Growth rate of the largest girth at the end, 1/s. */
      readonly rate: number;
    }
  | { readonly kind: 'bursts'; readonly pressure: number };

/** Usual end of a day: up at a rate, then held until 0.1 %/h. */
export const rampAndHold = (pressure: number, rate: number): Leg[] => [
  { kind: 'ramp', pressure, rate },
  { kind: 'final hold', time: HOLD_CAP, rate: SETTLED_RATE },
];

/** Plastic strain per growth of girth: plane strain. */
export const PLASTIC_PER_GROWTH = 2 / Math.sqrt(3);

/** Where the quick tank stands: on its path at `growth`, with what holds have added beside the path. */
interface Standing {
  readonly growth: number;
  readonly pressure: number;
  readonly time: number;
  readonly rate: number;
  /** Volume and girths over those of the path at this growth. */
  readonly extra: { readonly volume: number; readonly girths: readonly number[] };
}

/** Runs the legs; the first that the tank does not survive ends it. */
export function quickDay(path: QuickPath, draw: SteelDraw, legs: readonly Leg[]): QuickEnd {
  let at: Standing = {
    growth: 0,
    pressure: 0,
    time: 0,
    rate: 0,
    extra: { volume: 0, girths: path.girths.map(() => 0) },
  };
  for (const leg of legs) {
    const next = leg.kind === 'ramp' ? ramped(path, draw, at, leg) : held(path, draw, at, leg);
    if (next === undefined)
      return { kind: 'bursts', pressure: leg.kind === 'ramp' ? path.maximum : at.pressure };
    at = next;
  }
  return {
    kind: 'stands',
    growth: at.growth,
    volume: valueAt(path.growth, path.volume, at.growth) + at.extra.volume,
    girths: path.girths.map((girth, k) => valueAt(path.growth, girth, at.growth) + at.extra.girths[k]),
    time: at.time,
    rate: at.rate,
  };
}

/** Up to a pressure; a tank that has crept past the growth for it stays where it is. */
function ramped(
  path: QuickPath,
  draw: SteelDraw,
  at: Standing,
  leg: Leg & { kind: 'ramp' },
): Standing | undefined {
  const growth = growthAt(path, draw, leg.pressure, leg.rate);
  if (growth === undefined) return undefined;
  return { ...at, growth: Math.max(growth, at.growth), pressure: leg.pressure, rate: leg.rate };
}

function held(
  path: QuickPath,
  draw: SteelDraw,
  at: Standing,
  leg: Exclude<Leg, { kind: 'ramp' }>,
): Standing | undefined {
  const ended = creep(path, draw, at, leg.time, leg.kind === 'hold' ? 0 : leg.rate);
  if (ended === undefined) return undefined;
  const { creep: fit } = path;
  const grown = fit.growth * (ended.growth - at.growth);
  const to = at.growth + grown;
  const beside = (column: Float64Array, ratio: number): number =>
    (ratio - 1) * (valueAt(path.growth, column, to) - valueAt(path.growth, column, at.growth));
  return {
    growth: to,
    pressure: at.pressure,
    time: at.time + ended.time,
    rate: ended.rate * fit.growth,
    extra: {
      volume: at.extra.volume + beside(path.volume, fit.volume),
      girths: path.girths.map((girth, k) => at.extra.girths[k] + beside(girth, fit.girths[k])),
    },
  };
}

/** Pressure that the tank carries at a growth while it grows at a rate, MPa. */
export function pressureAt(path: QuickPath, draw: SteelDraw, growth: number, rate: number): number {
  const flow = valueAt(path.growth, path.flow, growth);
  return valueAt(path.growth, path.pressure, growth) * (1 + (draw.rate.perEfold * efolds(draw, rate)) / flow);
}

/** E-folds of the plastic rate over the rate at which the flow curve holds. */
const efolds = (draw: SteelDraw, rate: number): number =>
  Math.log((PLASTIC_PER_GROWTH * rate + RATE_FLOOR) / draw.rate.reference);

/** Growth at which a pressure is met on the way up at a rate; undefined above the maximum at that rate. */
export function growthAt(
  path: QuickPath,
  draw: SteelDraw,
  pressure: number,
  rate: number,
): number | undefined {
  const rise = draw.rate.perEfold * efolds(draw, rate);
  const n = path.growth.length;
  let before = 0;
  let grown = 0;
  for (let j = 0; j < n; j++) {
    const carries = path.pressure[j] * (1 + (path.plastic[j] > 0 ? rise / path.flow[j] : 0));
    if (carries >= pressure) {
      const f = (pressure - before) / (carries - before);
      return grown + f * (path.growth[j] - grown);
    }
    before = Math.max(before, carries);
    grown = path.growth[j];
  }
  return undefined;
}

/** E-folds of fall in the rate that one step of the integral takes. */
const STEP = 0.08;
const LARGEST = 0.002;

interface Crept {
  readonly growth: number;
  readonly time: number;
  readonly rate: number;
}

/** Creeps at constant pressure for `time`, or until the rate of growth is under `settled`; undefined where it runs away. */
export function creep(
  path: QuickPath,
  draw: SteelDraw,
  from: { readonly growth: number; readonly pressure: number },
  time: number,
  settled: number,
): Crept | undefined {
  const reach = path.growth[path.growth.length - 1];
  const drive = (growth: number): number => {
    const over = from.pressure / valueAt(path.growth, path.pressure, growth) - 1;
    return (over * valueAt(path.growth, path.flow, growth)) / draw.rate.perEfold;
  };
  const rateAt = (d: number): number =>
    Math.max(0, draw.rate.reference * Math.exp(d) - RATE_FLOOR) / PLASTIC_PER_GROWTH;
  let growth = from.growth;
  let now = drive(growth);
  let passed = 0;
  const start = now;
  while (rateAt(now) > settled) {
    const slope = (drive(growth + 1e-5) - now) / 1e-5;
    const step = Math.min(LARGEST, STEP / Math.max(1e-9, Math.abs(slope)));
    const next = drive(growth + step);
    if (growth + step > reach || next > start + 1) return undefined;
    const spent = step / rateAt(0.5 * (now + next));
    if (passed + spent >= time) {
      const f = (time - passed) / spent;
      return { growth: growth + f * step, time, rate: rateAt(now + f * (next - now)) };
    }
    if (rateAt(next) <= settled) {
      const end = Math.log((PLASTIC_PER_GROWTH * settled + RATE_FLOOR) / draw.rate.reference);
      const f = (now - end) / (now - next);
      return { growth: growth + f * step, time: passed + f * spent, rate: settled };
    }
    passed += spent;
    growth += step;
    now = next;
  }
  return { growth, time: passed, rate: rateAt(now) };
}

/** Straight between grid points (their spacing is 9 % of the growth); through the origin before the first. */
export function valueAt(x: Float64Array, y: Float64Array, at: number): number {
  if (at <= x[0]) return (y[0] * at) / x[0];
  let low = 0;
  let high = x.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (x[middle] <= at) low = middle;
    else high = middle;
  }
  const f = (at - x[low]) / (x[high] - x[low]);
  return y[low] + f * (y[high] - y[low]);
}
