/** Two gauges that do not show the same: by how much, and which of them goes with the elastic slope of the girths. */
import { lineThrough } from './line.ts';

export interface GaugesGivens {
  /** Means of both over the same readings, MPa, and of how many. */
  readonly first: number;
  readonly second: number;
  readonly count: number;
  /** Standard deviations of noise, zero (MPa) and gain of either. */
  readonly noise: number;
  readonly zero: number;
  readonly gain: number;
}

/** Standard deviations at which two gauges count as apart: with 3.3 some 7 of 1,000 sound pairs were called. */
const CLEAR = 3.6;

/** Ratio of the first to the second where they are apart; undefined where they may be alike. */
export function gaugesApart({ first, second, count, noise, zero, gain }: GaugesGivens): number | undefined {
  const spread = Math.SQRT2 * Math.hypot(noise / Math.sqrt(count), zero, gain * second);
  return Math.abs(first - second) > CLEAR * spread ? first / second : undefined;
}

export interface ElasticPoint {
  readonly pressures: readonly [number, number];
  readonly growth: number;
}

/** Growth per pressure by each of two gauges, over that of the model: a gauge that shows 5 % too much finds 0.95. */
export function elasticBy(points: readonly ElasticPoint[], model: number): [number, number] | undefined {
  const by = (which: 0 | 1): number | undefined =>
    lineThrough(points.map(({ pressures, growth }) => ({ x: pressures[which], y: growth })));
  const [a, b] = [by(0), by(1)];
  return a === undefined || b === undefined ? undefined : [a / model, b / model];
}
