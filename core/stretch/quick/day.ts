/**
 * The quick tank through a day: ramps, holds, final hold. The rate effect rides on the static path: at a growth the tank
 * carries p = static pressure x (1 + rise of flow stress / flow stress), the static pressure where what is elastic in the
 * rise is taken off the growth, so the rate follows from the pressure and time from an integral over the growth.
 */
import type { SteelDraw } from '../../steel/belief/draw.ts';
import { SETTLED_RATE } from '../hold.ts';
import { creep } from './creep.ts';
import { growthAt, type QuickPath, valueAt } from './path.ts';
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
