/** Letting the pressure out, what stays, and where the released tank yields again. */
import { midPlastic, profileOf, thicknessAt, type WallPlace } from '../shell/read.ts';
import type { Solver } from '../shell/solve.ts';
import { cloneState, type State } from '../shell/state.ts';
import { type Datum, type Moment, momentAt } from './growth.ts';
import { pressureStep, walkFrom } from './walk.ts';

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

const RELEASE_STEPS = 5;
/** New plastic strain at mid-wall that counts as yielding again. */
const AGAIN = 1e-6;

/** Releases from `state`. Elastic but for the knuckles, which the bending left behind may yield backwards. */
export function release(datum: Datum, state: State, time: number): Released | { readonly reason: string } {
  const { solver } = datum;
  const walk = walkFrom(solver, state);
  const from = state.pressure;
  const moments: Moment[] = [];
  for (let k = 1; k <= RELEASE_STEPS; k++) {
    const settled = pressureStep(walk, from * (1 - k / RELEASE_STEPS), 0);
    if (settled.kind === 'failed') return { reason: settled.reason };
    moments.push(momentAt(datum, cloneState(walk.now), 'release', time));
  }
  const left = moments[moments.length - 1];
  return {
    moments,
    left,
    profile: profileOf(solver.shell, left.state),
    wall: barrelWall(datum, left.state),
    newYield: yieldAgain(solver, datum, left.state, from),
  };
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

/** Reloads in quarters of the release pressure, then halves the last stride until it is under 0.1 %. */
function yieldAgain(solver: Solver, datum: Datum, released: State, from: number): number {
  const yields = (pressure: number): boolean => {
    const walk = walkFrom(solver, released);
    if (pressureStep(walk, pressure, 0).kind === 'failed') return true;
    return datum.barrel.some(
      (i) => midPlastic(solver.shell, walk.now, i) > midPlastic(solver.shell, released, i) + AGAIN,
    );
  };
  let low = 0;
  let high = from;
  while (!yields(high)) {
    low = high;
    high *= 1.05;
    if (high > 2 * from) return high;
  }
  while (high - low > 1e-3 * from) {
    const middle = 0.5 * (low + high);
    if (yields(middle)) high = middle;
    else low = middle;
  }
  return 0.5 * (low + high);
}
