/** Letting the pressure out, what stays, and where the released tank yields again. */
import { profileOf, type WallPlace } from '../shell/profile.ts';
import { midPlastic, thicknessAt } from '../shell/read.ts';
import type { Solver } from '../shell/solve.ts';
import { cloneState, type State } from '../shell/state.ts';
import { type Datum, type Moment, momentAt } from './growth.ts';
import { pressureStep, turn, type Walk, walkFrom } from './walk.ts';

export interface Released {
  readonly moments: readonly Moment[];
  /** At zero gauge: growth left, girths left. */
  readonly left: Moment;
  readonly profile: readonly WallPlace[];
  /** Thinnest and mean wall of the barrel, mm. */
  readonly wall: { readonly thinnest: number; readonly mean: number };
  /** Pressure at which the barrel yields again on reloading, MPa. */
  readonly newYield: number;
}

/** Shares of the pressure that the usual release steps leave. */
const LEAVES = [0.8, 0.6, 0.4, 0.2, 0];
/** A release takes seconds: time enough for the rate effect to count a step as one, too little to creep. */
const STEP_TIME = 2;
const SMALLEST_PART = 1 / 256;
/** New plastic strain at mid-wall that counts as yielding again. */
const AGAIN = 1e-6;

/** Releases from `state`. Elastic but for the knuckles, which the bending left behind may yield backwards. */
export function release(datum: Datum, state: State, time: number): Released | { readonly reason: string } {
  const { solver } = datum;
  const walk = walkFrom(solver, state);
  walk.time = time;
  const moments: Moment[] = [];
  for (const share of LEAVES) {
    const reason = letDown(walk, state.pressure * share);
    if (reason !== undefined) return { reason };
    moments.push(momentAt(datum, cloneState(walk.now), 'release', walk.time));
  }
  const left = moments[moments.length - 1];
  return {
    moments,
    left,
    profile: profileOf(solver.shell, left.state),
    wall: barrelWall(datum, left.state),
    newYield: yieldAgain(solver, datum, left.state, state.pressure),
  };
}

/** A pressure met so nearly is met, MPa: rounding never leaves it exactly. */
const THERE = 1e-8;

/** Lets the pressure down to `target`, in halves where a stride fails. Returns why it could not. */
function letDown(walk: Walk, target: number): string | undefined {
  const whole = walk.now.pressure - target;
  let stride = whole;
  while (walk.now.pressure > target + THERE) {
    const settled = pressureStep(walk, Math.max(target, walk.now.pressure - stride), STEP_TIME);
    if (settled.kind === 'settled') continue;
    turn(walk);
    stride *= 0.5;
    if (stride < SMALLEST_PART * whole) return settled.reason;
  }
  return undefined;
}

function barrelWall(datum: Datum, state: State): { thinnest: number; mean: number } {
  const { shell } = datum.solver;
  let sum = 0;
  let length = 0;
  let thinnest = Infinity;
  for (const i of datum.barrel) {
    const wall = thicknessAt(shell, state, i);
    thinnest = Math.min(thinnest, wall);
    sum += wall * shell.length[i];
    length += shell.length[i];
  }
  return { thinnest, mean: sum / length };
}

/** Strides of the search over the release pressure: the first, and the one at which it ends. */
const RELOAD_STRIDE = 0.25;
const RELOAD_END = 1e-3;

/** Reloads in quarters of the release pressure, halving the stride where the barrel yields or no balance is found. */
function yieldAgain(solver: Solver, datum: Datum, released: State, from: number): number {
  if (!(from > THERE)) return from;
  let walk = walkFrom(solver, released);
  let stride = RELOAD_STRIDE * from;
  while (stride > RELOAD_END * from && walk.now.pressure < 2 * from) {
    const next = walkFrom(solver, walk.now);
    const settled = pressureStep(next, walk.now.pressure + stride, 0);
    if (settled.kind === 'failed' || yields(datum, released, next.now)) stride *= 0.5;
    else walk = next;
  }
  return walk.now.pressure + 0.5 * stride;
}

const yields = ({ barrel, solver: { shell } }: Datum, before: State, now: State): boolean =>
  barrel.some((i) => midPlastic(shell, now, i) > midPlastic(shell, before, i) + AGAIN);
