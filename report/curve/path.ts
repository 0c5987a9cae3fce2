/** The path of a forecast as lines to draw: up with its holds, back down, and on to the maximum. */
import type { Forecast, Moment } from '@hoopwright/core/stretch';
import type { Place } from './panel.ts';

/** What the curve needs of a moment; a forecast's own moments have it. */
export type CurveMoment = Pick<
  Moment,
  'phase' | 'time' | 'pressure' | 'growth' | 'pumped' | 'girths' | 'largest'
>;

/** What the curve needs of a forecast, as plain values. */
export interface CurveForecast extends Pick<Forecast, 'firstYield' | 'barrelYield' | 'maximum' | 'target'> {
  readonly path: readonly CurveMoment[];
  readonly arrived?: CurveMoment;
  readonly held?: CurveMoment;
  readonly released?: { readonly left: CurveMoment };
}

export interface Branches {
  /** From nothing up to the release, with the holds; the whole way where nothing is released. */
  readonly up: readonly CurveMoment[];
  /** From the release down to nothing. */
  readonly down: readonly CurveMoment[];
  /** On from the release, as it would go on to the maximum. */
  readonly on: readonly CurveMoment[];
}

export function branchesOf(forecast: CurveForecast): Branches {
  const way = forecast.path.filter((m) => m.phase !== 'release');
  const released = forecast.path.filter((m) => m.phase === 'release');
  const turn = forecast.held ?? forecast.arrived;
  const top = turn === undefined ? way.length - 1 : lastLike(way, turn);
  return {
    up: way.slice(0, top + 1),
    down: turn === undefined || released.length === 0 ? [] : [turn, ...released],
    on: turn === undefined ? [] : way.slice(top),
  };
}

/** By value, not by identity: a forecast that came through a worker has copies. */
const lastLike = (way: readonly CurveMoment[], turn: CurveMoment): number =>
  way.findLastIndex((m) => m.time === turn.time && m.pressure === turn.pressure && m.growth === turn.growth);

export interface HoldSpan {
  readonly from: CurveMoment;
  readonly to: CurveMoment;
}

/** Runs of hold moments, each from the moment before it. */
export function holdsOf(up: readonly CurveMoment[]): HoldSpan[] {
  const spans: HoldSpan[] = [];
  up.forEach((moment, i) => {
    if (moment.phase !== 'hold') return;
    const last = spans[spans.length - 1];
    if (last !== undefined && last.to === up[i - 1])
      spans[spans.length - 1] = { from: last.from, to: moment };
    else spans.push({ from: up[i - 1] ?? moment, to: moment });
  });
  return spans;
}

export const byLargest = (m: CurveMoment): Place => [m.largest.growth, m.pressure];
export const byGirth =
  (k: number) =>
  (m: CurveMoment): Place => [m.girths[k].growth, m.pressure];
export const byGrown = (m: CurveMoment): Place => [m.growth, m.pressure];
export const byPumped = (m: CurveMoment): Place => [m.pumped.all, m.pressure];

/** Places of a branch, from nothing where it begins there. */
export const placesOf = (
  moments: readonly CurveMoment[],
  at: (m: CurveMoment) => Place,
  fromNothing: boolean,
): Place[] => [...(fromNothing ? [[0, 0] as const] : []), ...moments.map(at)];

/** Value of x where a rising `along` first reaches `reach`, straight between moments; the last one if it never does. */
export function whereReached(
  moments: readonly CurveMoment[],
  along: (m: CurveMoment) => number,
  reach: number,
  of: (m: CurveMoment) => number,
): number {
  const i = moments.findIndex((m) => along(m) >= reach);
  if (i < 0) return Math.max(0, ...moments.map(of));
  const before = moments[i - 1];
  const [a0, x0] = before === undefined ? [0, 0] : [along(before), of(before)];
  const f = (reach - a0) / (along(moments[i]) - a0);
  return x0 + f * (of(moments[i]) - x0);
}
