/** The pressures of the day: seating, three points far below yield, stops, the hold near a quarter of the growth, the target. */
import { type Forecast, type Moment } from '@hoopwright/core/stretch';
import type { Hold } from '@hoopwright/core/tank';

/** MPa, rising, each a multiple of `unit`, so that a gauge has a line there. The target stays what the duty says. */
export interface Ladder {
  readonly unit: number;
  /** Where the girths have their zero. */
  readonly seat: number;
  readonly first: readonly [number, number, number];
  /** Stops on the way up, holds left out. */
  readonly stops: readonly number[];
  /** Holds under the target, rising; one of them near a quarter of the growth. */
  readonly holds: readonly Hold[];
  readonly target: number;
  /** Where readings at the tank are taken, come down to from above; 0: none are. */
  readonly approach: number;
}

/** Shares of the growth on arrival at which the pump stops for a reading. About a dozen rows fill a log sheet. */
const STOPS = [0.1, 0.4, 0.55, 0.7, 0.85] as const;
/** A hold shows the rate coefficient, a ramp does not; 10 min are enough (hand calculation, see `checks`). */
const QUARTER_HOLD = 600;
/** A hold of the duty within these shares of the whole growth serves as the one near a quarter. */
const NEAR_QUARTER = [0.1, 0.4] as const;
/** Seating pressure over the target: takes up slack, stretches nothing. Common practice, no source. */
const SEATING = 0.05;
/** Top of the first step over the pressure of first yield anywhere: "far below". Our choice. */
const FIRST_TOP = 0.5;

export interface LadderOrders {
  readonly target: number;
  /** Pressure up to which somebody may stand at the tank; 0: nobody does. */
  readonly approach: number;
  /** Holds of the duty. */
  readonly holds: readonly Hold[];
}

/** @param way a forecast up to the target and through the final hold */
export function ladderFor(way: Forecast, { target, approach, holds }: LadderOrders): Ladder {
  const yielding = way.firstYield?.pressure ?? way.barrelYield ?? target;
  const top = FIRST_TOP * Math.min(yielding, target);
  const unit = prettyUnder(Math.min(target / 50, top / 6));
  const round = (pressure: number): number => tidy(Math.round(pressure / unit) * unit);
  const high = tidy(Math.floor(top / unit + 1e-9) * unit);
  const seatWanted = Math.min(SEATING * target, high / 3, approach > 0 ? approach : Infinity);
  const seat = tidy(Math.max(1, Math.floor(seatWanted / unit + 0.5 * (approach > 0 ? 0 : 1))) * unit);
  const first = [seat, round(0.5 * (seat + high)), high] as const;
  const below = holdsBelow(way, holds, target, { unit, high, round });
  return {
    unit,
    seat,
    first,
    holds: below,
    target,
    // Come down to from above: never over the first step.
    approach: Math.min(approach, first[1]),
    stops: stopsFor(way, { first, below, target, unit, round }),
  };
}

interface StopOrders {
  readonly first: readonly number[];
  readonly below: readonly Hold[];
  readonly target: number;
  readonly unit: number;
  readonly round: (pressure: number) => number;
}

function stopsFor(way: Forecast, { first, below, target, unit, round }: StopOrders): number[] {
  const growth = way.arrived?.largest.growth ?? 0;
  const high = first[first.length - 1];
  const elastic = 0.5 * (high + Math.min(way.barrelYield ?? target, target));
  const wanted = [elastic, ...STOPS.map((share) => pressureAtGrowth(way, share * growth))].map(round);
  const taken = [high, target, ...below.map((h) => h.pressure)];
  const stops: number[] = [];
  for (const stop of wanted.filter((p) => p > high && p < target).sort((a, b) => a - b)) {
    if ([...taken, ...stops].every((other) => Math.abs(other - stop) > 1.5 * unit)) stops.push(stop);
  }
  return stops;
}

/** The duty's own holds between first step and target, and one near a quarter of the growth where they have none. */
function holdsBelow(
  way: Forecast,
  holds: readonly Hold[],
  target: number,
  {
    unit,
    high,
    round,
  }: { readonly unit: number; readonly high: number; readonly round: (pressure: number) => number },
): Hold[] {
  const own = holds
    .filter((h) => h.pressure > high * (1 + 1e-9) && h.pressure < target * (1 - 1e-9))
    .sort((a, b) => a.pressure - b.pressure);
  const whole = (way.held ?? way.arrived)?.largest.growth ?? 0;
  const share = (h: Hold): number => growthAtPressure(way, h.pressure) / whole;
  const serves = (h: Hold): boolean =>
    h.time >= QUARTER_HOLD && share(h) >= NEAR_QUARTER[0] && share(h) <= NEAR_QUARTER[1];
  if (own.some(serves)) return own;
  // Where creep in the final hold is most of the growth, the last line of the gauge under the target is nearest.
  const under = tidy(Math.ceil(target / unit - 1 - 1e-9) * unit);
  const quarterOf = round(pressureAtGrowth(way, 0.25 * whole));
  const pressure = Math.min(Math.max(quarterOf, tidy(high + unit)), under);
  const quarter: Hold = { pressure, time: QUARTER_HOLD, valve: 'open' };
  const others = own.filter((h) => Math.abs(h.pressure - pressure) > 1e-9 * pressure);
  return [...others, quarter].sort((a, b) => a.pressure - b.pressure);
}

const rising = (way: Forecast): Moment[] => [way.start, ...way.path.filter((m) => m.phase === 'stretch')];

/** Pressure on the way up at which the largest girth has grown so much, straight between moments. */
export function pressureAtGrowth(way: Forecast, growth: number): number {
  const moments = rising(way);
  const past = moments.findIndex((m) => m.largest.growth >= growth);
  if (past < 1) return moments[past < 0 ? moments.length - 1 : 0].pressure;
  const [a, b] = [moments[past - 1], moments[past]];
  const f = (growth - a.largest.growth) / (b.largest.growth - a.largest.growth);
  return a.pressure + f * (b.pressure - a.pressure);
}

function growthAtPressure(way: Forecast, pressure: number): number {
  const moments = rising(way);
  const past = moments.findIndex((m) => m.pressure >= pressure);
  if (past < 1) return moments[past < 0 ? moments.length - 1 : 0].largest.growth;
  const [a, b] = [moments[past - 1], moments[past]];
  const f = (pressure - a.pressure) / (b.pressure - a.pressure);
  return a.largest.growth + f * (b.largest.growth - a.largest.growth);
}

/** The largest of 1, 2, 5 x 10^k that is not over `value`. */
export function prettyUnder(value: number): number {
  const ten = 10 ** Math.floor(Math.log10(value) + 1e-9);
  const step = [5, 2, 1].find((s) => s * ten <= value * (1 + 1e-9)) ?? 1;
  return tidy(step * ten);
}

/** 1.2000000000000002 is 1.2. */
const tidy = (value: number): number => Number(value.toPrecision(12));
