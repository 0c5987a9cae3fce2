/** The path of one steel as tables over the growth of the largest girth, and what is read off it. */
import type { SteelDraw } from '../../steel/belief/draw.ts';
import { RATE_FLOOR } from '../../steel/plane.ts';

/** A tank of one steel as tables over `growth`. */
export interface QuickPath {
  readonly growth: Float64Array;
  readonly pressure: Float64Array;
  readonly volume: Float64Array;
  readonly girths: readonly Float64Array[];
  readonly flow: Float64Array;
  readonly plastic: Float64Array;
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

/** Plastic strain per growth of girth: plane strain. */
export const PLASTIC_PER_GROWTH = 2 / Math.sqrt(3);

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
