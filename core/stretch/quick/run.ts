/** One real shell solution as a table over the growth of the largest girth: what the quick tank is fitted to. */
import type { SteelDraw } from '../../steel/belief/draw.ts';
import type { Steel } from '../../steel/steel.ts';
import type { Tank } from '../../tank/tank.ts';
import { cloneState } from '../../shell/state.ts';
import { forecast } from '../forecast.ts';
import { type Datum, datumOf, largestGrowth, momentAt } from '../growth.ts';
import { hold, SETTLED_RATE } from '../hold.ts';
import { elasticStride, rise, STANDARD_RISE } from '../rise.ts';
import { type Walk, walkFrom } from '../walk.ts';
import { drawnTank } from './drawn.ts';
import { solverOf } from './solver.ts';
import { thinYield } from './thin.ts';

/** Longest final hold that is waited for, s. */
export const HOLD_CAP = 4 * 3600;

/** Plain numbers, so that a worker can send it. Inside units. */
export interface ShellRun {
  /** Largest growth of girth (fraction), rising, moment by moment up to the maximum. */
  readonly growth: readonly number[];
  readonly pressure: readonly number[];
  /** Growth of the inside volume, mm³. */
  readonly volume: readonly number[];
  /** Growth of each named girth, moment by moment. */
  readonly girths: readonly (readonly number[])[];
  /** MPa; of the plate alone (pressure maximum or local necking, whichever comes first). */
  readonly maximum: number;
  /** Growth of the largest girth there. */
  readonly maximumGrowth: number;
  readonly firstYield: number;
  /** Inside volume before the stretch, mm³. */
  readonly filled: number;
  /** The final hold at the release pressure; absent where none is asked, or the tank does not get there. */
  readonly hold?: HoldRun;
}

/** From arrival to the end of a final hold. */
export interface HoldRun {
  readonly from: HoldPoint;
  readonly to: HoldPoint;
  readonly time: number;
  /** Growth rate of the largest girth at the end, 1/s. */
  readonly rate: number;
}

export interface HoldPoint {
  readonly growth: number;
  readonly volume: number;
  readonly girths: readonly number[];
}

/**
 * Runs the shell with a drawn steel, without rate effect and holds, to its maximum; with `target`, also from there
 * through the final hold (0.1 %/h or four hours) with its rate effect.
 */
export function shellRun(tank: Tank, plate: Steel, draw: SteelDraw, target?: number): ShellRun {
  const { longSeam: _, ...noSeam } = drawnTank(tank, plate, draw);
  const bend = thinYield(tank, plate, draw);
  const marks = NEAR_YIELD.map((share) => share * bend);
  const result = forecast(noSeam, undefined, { shell: MESH, rise: SHORT_STEPS, marks });
  const way = result.path.filter((m, i, all) => i === 0 || m.largest.growth > all[i - 1].largest.growth);
  const last = result.maximum?.growth ?? Infinity;
  const kept = way.filter((m) => m.largest.growth > 0 && m.largest.growth <= last);
  const held =
    target === undefined || target >= (result.maximum?.pressure ?? Infinity)
      ? undefined
      : holdRun(noSeam, target);
  return {
    growth: kept.map((m) => m.largest.growth),
    pressure: kept.map((m) => m.pressure),
    volume: kept.map((m) => m.growth),
    girths: tank.girths.map((_girth, k) => kept.map((m) => m.girths[k].growth)),
    maximum: result.maximum?.pressure ?? Math.max(...kept.map((m) => m.pressure)),
    maximumGrowth: result.maximum?.growth ?? kept[kept.length - 1].largest.growth,
    firstYield: result.firstYield?.pressure ?? 0,
    filled: result.datum.volume,
    ...(held === undefined ? {} : { hold: held }),
  };
}

/** Straight up to the target at the rate of the curve, and the final hold there. */
function holdRun(tank: Tank, target: number): HoldRun | undefined {
  const walk = walkFrom(solverOf(tank, MESH));
  const datum = datumOf(walk.solver, cloneState(walk.now));
  const up = { marks: [target], beyond: false, seconds: () => 0, watch: () => false };
  elasticStride(walk, up);
  if (rise(walk, datum.state.volume, up).kind !== 'landed') return undefined;
  const from = pointAt(datum, walk);
  const seen = [{ time: walk.time, growth: from.growth }];
  hold(walk, datum, {
    valve: 'open',
    time: HOLD_CAP,
    watch: () => {
      seen.push({ time: walk.time, growth: largestGrowth(datum, walk.now).growth });
      return rateOf(seen) < SETTLED_RATE || seen[seen.length - 1].growth > RUNS_AWAY;
    },
  });
  const to = pointAt(datum, walk);
  return to.growth > RUNS_AWAY ? undefined : { from, to, time: walk.time, rate: rateOf(seen) };
}

/** Growth that a run must reach to be fitted to, where most runs do. Our choice. */
const REACH = 0.2;

/**
 * Those that end at a maximum of their own. A steel that hardly hardens after yield snaps through: its run ends where
 * the balance is lost, far short of the others, and neither its maximum nor its reach is the tank's. Where most runs are
 * short, as on plate that is cold worked through, it is the tank that is, and all are kept.
 */
export function wholeRuns<T extends { readonly run: ShellRun }>(runs: readonly T[]): readonly T[] {
  const whole = runs.filter(({ run }) => (run.growth.at(-1) ?? 0) > REACH);
  return 2 * whole.length > runs.length ? whole : runs;
}

/** Half the elements of a forecast: 0.1 % off in pressure (VERIFICATION.md), as much as the fit itself. */
const MESH = { elements: 80, layers: 5 };

/**
 * A third of steps half as long again as a forecast's. Between whole ones the path is off by up to 0.2 % of pressure on steels
 * of the trials, against the same tank pumped in steps of a second; between thirds by 0.05 %, for half the time more.
 */
const SHORT_STEPS = { ...STANDARD_RISE, largestOfGrowth: 0.08, largestOfVolume: 0.03, refine: 3 };

/** Shares of the yield pressure of the long cylinder at which every run has a moment. */
const NEAR_YIELD = [0.85, 0.9, 0.94, 0.97, 1, 1.03, 1.06, 1.1, 1.15, 1.22];

/** Growth beyond which a hold is taken to run away. */
const RUNS_AWAY = 0.3;

function rateOf(seen: readonly { readonly time: number; readonly growth: number }[]): number {
  const [a, b] = seen.slice(-2);
  return (b.growth - a.growth) / (b.time - a.time);
}

function pointAt(datum: Datum, walk: Walk): HoldPoint {
  const moment = momentAt(datum, walk.now, 'hold', walk.time);
  return { growth: moment.largest.growth, volume: moment.growth, girths: moment.girths.map((g) => g.growth) };
}
