/** The path of one steel as tables over the growth of the largest girth, and what is read off it. */
import type { SteelDraw } from '../../steel/belief/draw.ts';
import { RATE_FLOOR } from '../../steel/plane.ts';
import type { Steel } from '../../steel/steel.ts';

/** A tank of one steel as tables over `growth`. */
export interface QuickPath {
  readonly growth: Float64Array;
  readonly pressure: Float64Array;
  readonly volume: Float64Array;
  readonly girths: readonly Float64Array[];
  readonly flow: Float64Array;
  readonly plastic: Float64Array;
  /** Elastic growth per MPa of equivalent stress: a wall that carries less than its flow stress is shorter by so much. */
  readonly elastic: number;
  readonly maximum: number;
  readonly firstYield: number;
  readonly creep: CreepFit;
}

/** How holds of the shell differ from holds along the path. 1 everywhere: not at all. */
export interface CreepFit {
  /** Growth in a hold over that of the closed form. */
  readonly growth: number;
  /** What volume, and each girth, gain in a hold over what they gain on the path for the same growth of the largest girth. */
  readonly volume: number;
  readonly girths: readonly number[];
}

/** Elastic growth of a long cylinder per MPa of equivalent stress. */
export const elasticPerStress = ({ young, poisson }: Steel): number =>
  ((2 / Math.sqrt(3)) * (1 - poisson / 2)) / young;

/** Plastic strain per logarithm of girth: plane strain. */
export const PLASTIC_PER_GROWTH = 2 / Math.sqrt(3);

/** Pressure that the tank carries at a growth while it grows at a rate, MPa. */
export function pressureAt(path: QuickPath, draw: SteelDraw, growth: number, rate: number): number {
  const over = overStress(draw, growth, rate);
  const at = growth - over * path.elastic;
  return valueAt(path.growth, path.pressure, at) * (1 + over / valueAt(path.growth, path.flow, at));
}

/** Stress over the flow stress of the curve, MPa, with which the wall grows at a rate; under 0 where it is a slow one. */
export const overStress = (
  { rate: { perEfold, reference } }: SteelDraw,
  growth: number,
  rate: number,
): number => perEfold * Math.log(((PLASTIC_PER_GROWTH * rate) / (1 + growth) + RATE_FLOOR) / reference);

/** The rate of growth that goes with it, 1/s. */
export const rateUnder = (
  { rate: { perEfold, reference } }: SteelDraw,
  growth: number,
  over: number,
): number =>
  (Math.max(0, reference * Math.exp(over / perEfold) - RATE_FLOOR) * (1 + growth)) / PLASTIC_PER_GROWTH;

/** Growth at which a pressure is met on the way up at a rate; undefined above the maximum at that rate. */
export function growthAt(
  path: QuickPath,
  draw: SteelDraw,
  pressure: number,
  rate: number,
): number | undefined {
  const n = path.growth.length;
  let before = 0;
  let grown = 0;
  for (let j = 0; j < n; j++) {
    const over = path.plastic[j] > 0 ? overStress(draw, path.growth[j], rate) : 0;
    const carries = path.pressure[j] * (1 + over / path.flow[j]);
    const growth = path.growth[j] + over * path.elastic;
    if (carries >= pressure) {
      const f = (pressure - before) / (carries - before);
      return grown + f * (growth - grown);
    }
    before = Math.max(before, carries);
    grown = Math.max(grown, growth);
  }
  return undefined;
}

/** Growth of the largest girth that goes with a growth of girth `girth`; the last of the table beyond it. */
export function largestWith(path: QuickPath, girth: number, growth: number): number {
  const column = path.girths[girth];
  if (growth <= column[0]) return (growth * path.growth[0]) / column[0];
  const k = column.findIndex((value) => value >= growth);
  if (k < 1) return path.growth[path.growth.length - 1];
  const f = (growth - column[k - 1]) / (column[k] - column[k - 1]);
  return path.growth[k - 1] + f * (path.growth[k] - path.growth[k - 1]);
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
