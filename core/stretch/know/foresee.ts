/** From what is known to what the tank will do: ranges at the end of the final hold, first yield, maximum, margin. */
import { solveUpper } from '../../math/cholesky.ts';
import type { Dice } from '../../math/dice.ts';
import { normalQuantile } from '../../stats/normal.ts';
import { type Range, rangeOf } from '../../stats/range.ts';
import { latinHypercube } from '../../stats/spread.ts';
import { SETTLED_RATE } from '../hold.ts';
import { quickDay } from '../quick/day.ts';
import { type QuickPath, valueAt } from '../quick/path.ts';
import { quickPath, type QuickTank } from '../quick/quick.ts';
import { HOLD_CAP } from '../quick/run.ts';
import { seamLimit, seamStrain } from '../quick/seam.ts';
import type { Knowledge } from './know.ts';
import { GAUGE, steelAt, straysOn, type Unknowns } from './unknowns.ts';

/** Inside units. Infinity in a range: it gives way before. */
export interface Foresight {
  /** Growth of the largest girth, and of the inside (mm³), at the end of the final hold. */
  readonly growth: Range;
  readonly volume: Range;
  /** s of the final hold. */
  readonly settling: Range;
  readonly firstYield: Range;
  /** Highest pressure it bears, and that over the stretch pressure. */
  readonly maximum: Range;
  readonly margin: Range;
  /** Strain across the long seam, as fractions; undefined for a tank without one. */
  readonly seam?: SeamForesight;
  /** Share of the tanks that this may be which give way at the stretch pressure. */
  readonly gives: number;
  /** Share of strays larger than usual. */
  readonly strange: number;
}

export interface SeamForesight {
  /** At the end of the final hold. */
  readonly end: Range;
  /** Where the largest girth has grown by so much, as a fraction. */
  readonly at: (growth: number) => Range;
}

export interface ForesightOrders {
  /** Stretch pressure as the gauge will show it, MPa. */
  readonly target: number;
  /** Growth rate on arrival, 1/s. */
  readonly rate: number;
  /** One for each tank that is tried, from `pointsFor`. */
  readonly points: readonly Float64Array[];
}

/** One tank that this may be. */
export interface Possible {
  readonly growth: number;
  readonly volume: number;
  readonly settling: number;
  readonly firstYield: number;
  readonly maximum: number;
  readonly seam: ((growth: number) => number) | undefined;
}

export function foresee(
  quick: QuickTank,
  unknowns: Unknowns,
  knowledge: Knowledge,
  orders: ForesightOrders,
): Foresight {
  const tanks = orders.points.map((point) => possible(quick, unknowns, knowledge, { ...orders, point }));
  const of = (read: (tank: Possible) => number): Range => rangeOf(tanks.map(read));
  return {
    growth: of((tank) => tank.growth),
    volume: of((tank) => tank.volume),
    settling: of((tank) => tank.settling),
    firstYield: of((tank) => tank.firstYield),
    maximum: of((tank) => tank.maximum),
    margin: of((tank) => tank.maximum / orders.target),
    ...seamsOf(tanks),
    gives: tanks.filter((tank) => tank.growth === Infinity).length / tanks.length,
    strange: knowledge.cases.reduce((sum, one) => sum + (one.times > 1 ? one.probability : 0), 0),
  };
}

function seamsOf(tanks: readonly Possible[]): Pick<Foresight, 'seam'> {
  const seams = tanks.flatMap(({ seam, growth }) => (seam === undefined ? [] : [{ seam, growth }]));
  if (seams.length === 0) return {};
  const strain = (seam: (growth: number) => number, growth: number): number =>
    Number.isFinite(growth) ? seam(growth) : Infinity;
  return {
    seam: {
      end: rangeOf(seams.map(({ seam, growth }) => strain(seam, growth))),
      at: (growth) => rangeOf(seams.map(({ seam }) => seam(growth))),
    },
  };
}

function possible(
  quick: QuickTank,
  unknowns: Unknowns,
  { cases, misfit }: Knowledge,
  { point, target, rate }: ForesightOrders & { readonly point: Float64Array },
): Possible {
  const { size } = unknowns;
  const chosen = caseAt(cases, point[size]);
  const z = solveUpper(chosen.root, point.slice(0, size));
  for (let k = 0; k < size; k++) z[k] += chosen.mean[k];
  const draw = steelAt(unknowns, z);
  const made = quickPath(quick, draw);
  const stray = straysOn(unknowns, z, made.growth, chosen.times);
  const path = withSeam(
    {
      ...made,
      pressure: made.pressure.map((p, k) => p * Math.exp(stray[k])),
      maximum: made.maximum * Math.exp(stray[stray.length - 1]),
    },
    seamLimit(draw),
    quick.tank.longSeam !== undefined,
  );
  const { gain, zero } = unknowns.errors.gauge;
  const real = target * Math.exp(-gain * z[GAUGE]) - zero * z[GAUGE + 1];
  const end =
    real >= path.maximum
      ? undefined
      : quickDay(path, draw, [
          { kind: 'ramp', pressure: real, rate },
          { kind: 'final hold', time: HOLD_CAP, rate: SETTLED_RATE },
        ]);
  const stands = end?.kind === 'stands' ? end : undefined;
  // What the readings leave unexplained makes the end less sure.
  const longer = 1 + unknowns.strays.final * Math.max(1, misfit) * point[size + 1];
  return {
    growth: longer * (stands?.growth ?? Infinity),
    volume: longer * (stands?.volume ?? Infinity),
    settling: stands?.time ?? Infinity,
    firstYield: path.firstYield,
    maximum: path.maximum,
    seam: quick.tank.longSeam === undefined ? undefined : seamStrain(draw, made),
  };
}

/** One coordinate of a point chooses the case. */
function caseAt(cases: Knowledge['cases'], share: number): Knowledge['cases'][number] {
  let left = share;
  for (const one of cases) {
    left -= one.probability;
    if (left < 0) return one;
  }
  return cases[0];
}

function withSeam(path: QuickPath, growth: number | undefined, hasSeam: boolean): QuickPath {
  if (!hasSeam || growth === undefined || growth >= path.growth[path.growth.length - 1]) return path;
  const parts = valueAt(path.growth, path.pressure, growth);
  return parts < path.maximum ? { ...path, maximum: parts } : path;
}

/** Points for `foresee`, standard normal but for the coordinate that chooses the case, which is even on (0, 1). */
export function pointsFor(unknowns: Unknowns, count: number, dice: Dice): Float64Array[] {
  return latinHypercube(count, unknowns.size + 2, dice).map((point) =>
    point.map((u, k) => (k === unknowns.size ? u : normalQuantile(u))),
  );
}
