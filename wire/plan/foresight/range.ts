/** Ranges of the plan: many days of the same tank, each with another steel, and the quantiles of what they gave. */
import { rangeOf } from '@hoopwright/core/steel';
import { type Datum, type Forecast, type Moment, type Pumped, pumpedFor } from '@hoopwright/core/stretch';
import { finalMoments, type Foreseen } from './foresee.ts';
import type { Ladder } from './ladder.ts';
import type { Ranged } from '../plan.ts';

/** Something foreseen: an arrival, the end of a hold, what is left. */
export type MarkKey = string;

/** What one state of steel gave on the day. Inside units. */
export interface Draw {
  /** By key of the mark. */
  readonly marks: Readonly<Record<MarkKey, MarkFigures>>;
  /** s of the final hold. */
  readonly rest: number;
  /** s at the pump without the holds; 0 where no pump is stated. */
  readonly pumping: number;
}

export interface MarkFigures {
  readonly pressure: number;
  /** Of the inside volume. */
  readonly growth: number;
  readonly pumped: Pumped;
  /** mm, in the order of the tank's girths. */
  readonly girths: readonly number[];
  readonly growths: readonly number[];
  readonly largest: number;
}

/** Days of other steels on one ladder. */
export interface PlanRange {
  /** Those that stand to the end of the day. */
  readonly draws: readonly Draw[];
  /** Those that gave way before. */
  readonly burst: number;
  /** Highest pressure: where nine of ten lie, MPa. */
  readonly maximum?: readonly [low: number, high: number];
  /** Pressure that 99 of 100 survive: best estimate, and what so many draws assure. */
  readonly survive99?: { readonly value: number; readonly assured?: number };
  /** Pieces of evidence that were counted. */
  readonly basis: readonly string[];
}

export const arrivalKey = (pressure: number): MarkKey => `at ${pressure}`;
export const heldKey = (pressure: number): MarkKey => `held ${pressure}`;
export const LEFT_KEY: MarkKey = 'left';
/** Pressure of an arrival or a held mark; undefined for what is let down. */
export const pressureOf = (key: MarkKey): number | undefined => {
  const found = /^(?:at|held) (\S+)$/.exec(key);
  return found === null ? undefined : Number(found[1]);
};
/** Come down from another mark to the approach pressure. */
export const downKey = (from: MarkKey): MarkKey => `down from ${from}`;

/** What is foreseen by key: arrivals, ends of holds, and what is left. */
export function marksOf({ ladder, forecast, rest }: Foreseen): ReadonlyMap<MarkKey, MarkFigures> {
  const marks = new Map<MarkKey, MarkFigures>();
  for (const pressure of arrivals(ladder)) marks.set(arrivalKey(pressure), arrivalAt(forecast, pressure));
  for (const { pressure } of ladder.holds) {
    const held = forecast.path.filter((m) => m.phase === 'hold' && near(m, pressure));
    const end = held[held.length - 1];
    marks.set(heldKey(pressure), end === undefined ? arrivalAt(forecast, pressure) : figuresOf(end));
  }
  marks.set(heldKey(ladder.target), endOfRest(forecast, rest.time));
  if (forecast.released !== undefined) marks.set(LEFT_KEY, figuresOf(forecast.released.left));
  if (ladder.approach > 0) comeDown(marks, { ladder, forecast });
  return marks;
}

/** Marks from which the tank is let down to the approach pressure, so that somebody can read at it. */
export const downFrom = ({ first, holds, target }: Ladder): MarkKey[] => [
  arrivalKey(first[2]),
  ...holds.slice(0, 1).map((h) => heldKey(h.pressure)),
  heldKey(target),
];

function comeDown(
  marks: Map<MarkKey, MarkFigures>,
  { ladder, forecast }: Pick<Foreseen, 'ladder' | 'forecast'>,
): void {
  const [low, high] = [ladder.first[0], ladder.first[2]].map((p) => marks.get(arrivalKey(p)));
  if (low === undefined || high === undefined) throw new Error('the first step has no points');
  const slopes = slopesBetween(low, high);
  for (const key of downFrom(ladder)) {
    const from = marks.get(key);
    if (from !== undefined) marks.set(downKey(key), letDown(forecast.datum, from, ladder.approach, slopes));
  }
}

/** Slopes of the way up around a pressure: growth of the inside and of each girth per pressure. */
export function climbSlopes(forecast: Forecast, pressure: number): ElasticSlopes {
  const climb = [forecast.start, ...forecast.path.filter((m) => m.phase === 'stretch')];
  const next = climb.findIndex((m) => m.pressure >= pressure * (1 - 1e-9));
  const [a, b] = [climb[Math.max(0, next - 1)], climb[Math.max(1, next)]];
  return slopesBetween(figuresOf(a), figuresOf(b));
}

/** From the lowest to the highest point of the first step. */
export function elasticOf({ ladder, forecast }: Pick<Foreseen, 'ladder' | 'forecast'>): ElasticSlopes {
  return slopesBetween(arrivalAt(forecast, ladder.first[0]), arrivalAt(forecast, ladder.first[2]));
}

export function slopesBetween(low: MarkFigures, high: MarkFigures): ElasticSlopes {
  const rise = high.pressure - low.pressure;
  return {
    growth: (high.growth - low.growth) / rise,
    girths: high.girths.map((girth, i) => (girth - low.girths[i]) / rise),
  };
}

const near = (moment: Moment, pressure: number): boolean =>
  Math.abs(moment.pressure - pressure) <= 1e-6 * pressure;

/** The final hold may go on longer than the growth takes to rest. */
function endOfRest(forecast: Forecast, time: number): MarkFigures {
  const moments = finalMoments(forecast);
  const wanted = moments[0].time + time;
  const next = moments.findIndex((m) => m.time >= wanted - 1e-6);
  if (next <= 0) return figuresOf(moments[next < 0 ? moments.length - 1 : 0]);
  const [a, b] = [moments[next - 1], moments[next]];
  return between(forecast.datum, figuresOf(a), figuresOf(b), (wanted - a.time) / (b.time - a.time));
}

/**
 * First arrival at a pressure. The path lands on the steps of the day; a pressure between its moments lies on their
 * chord.
 */
function arrivalAt(forecast: Forecast, pressure: number): MarkFigures {
  const way = [forecast.start, ...forecast.path.filter((m) => m.phase !== 'release')];
  const next = way.findIndex((m) => m.pressure >= pressure * (1 - 1e-9));
  if (next < 1) throw new Error(`the path does not pass ${pressure} MPa`);
  const [a, b] = [way[next - 1], way[next]];
  return between(
    forecast.datum,
    figuresOf(a),
    figuresOf(b),
    Math.min(1, (pressure - a.pressure) / (b.pressure - a.pressure)),
  );
}

const figuresOf = (moment: Moment): MarkFigures => ({
  pressure: moment.pressure,
  growth: moment.growth,
  pumped: moment.pumped,
  girths: moment.girths.map((g) => g.girth),
  growths: moment.girths.map((g) => g.growth),
  largest: moment.largest.growth,
});

/** Lengths and room lie on a chord; the litres follow from them, as air does not go straight. */
function between(datum: Datum, a: MarkFigures, b: MarkFigures, f: number): MarkFigures {
  const mix = (x: number, y: number): number => x + f * (y - x);
  const mixed = (xs: readonly number[], ys: readonly number[]): number[] => xs.map((x, i) => mix(x, ys[i]));
  const pressure = mix(a.pressure, b.pressure);
  const growth = mix(a.growth, b.growth);
  return {
    pressure,
    growth,
    pumped: pumpedFor(datum, growth, pressure),
    girths: mixed(a.girths, b.girths),
    growths: mixed(a.growths, b.growths),
    largest: mix(a.largest, b.largest),
  };
}

/** Slopes while everything is elastic. */
export interface ElasticSlopes {
  /** mm³/MPa. */
  readonly growth: number;
  /** mm/MPa, in the order of the tank's girths. */
  readonly girths: readonly number[];
}

/**
 * The tank let down to a lower pressure: elastic, by the slopes it had when new. A grown tank is wider and thinner: its
 * girth springs 1 + 3 g as far, its room 1 + 4 g (r²/t and V r/t, plane strain, to first order in the growth g).
 */
export function letDown(
  datum: Datum,
  from: MarkFigures,
  pressure: number,
  slopes: ElasticSlopes,
): MarkFigures {
  const fall = from.pressure - pressure;
  const growth = from.growth - fall * slopes.growth * (1 + 4 * from.largest);
  const girths = from.girths.map((girth, i) => girth - fall * slopes.girths[i] * (1 + 3 * from.growths[i]));
  const growths = girths.map((girth, i) => (girth / from.girths[i]) * (1 + from.growths[i]) - 1);
  const spring = fall * slopes.girths[0] * (1 + 3 * from.largest);
  return {
    pressure,
    growth,
    pumped: pumpedFor(datum, growth, pressure),
    girths,
    growths,
    largest: from.largest - spring / from.girths[0],
  };
}

/** Every pressure that is arrived at on the way up, rising, each once. */
export const arrivals = (ladder: Ladder): number[] =>
  [
    ...new Set([...ladder.first, ...ladder.stops, ...ladder.holds.map((h) => h.pressure), ladder.target]),
  ].sort((a, b) => a - b);

/** s of the climb without the holds. */
export function pumpingTime(forecast: Forecast): number {
  let time = 0;
  let before = 0;
  for (const moment of forecast.path.filter((m) => m.phase !== 'release')) {
    if (moment === forecast.arrived) return time + moment.time - before;
    if (moment.phase === 'stretch') time += moment.time - before;
    before = moment.time;
  }
  return time;
}

/**
 * The forecast's own figure, with the 5 % and 95 % points of the draws laid around it by their distance from the median
 * of the draws: the figure comes from the shell, its range from many quick tanks. Alone where there are no draws.
 */
export function ranged(one: number, draws: readonly number[]): Ranged {
  if (draws.length === 0) return { value: one };
  const { median, wide } = rangeOf(draws);
  return { value: one, low: one + wide[0] - median, high: one + wide[1] - median };
}
