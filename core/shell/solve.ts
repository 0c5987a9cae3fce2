/** One equilibrium: Newton on the displacements and the pressure under one condition on volume and pressure. */
import { factor, solveTree } from '../math/tree.ts';
import { assemble, thinWalls, workFor } from './assemble.ts';
import type { Loading, Work } from './work.ts';
import { applyGrips, type Grip, gripsOf } from './grip.ts';
import type { Shell } from './shell.ts';
import type { State } from './state.ts';

/**
 * What is asked of the step: zero of a function of volume (mm³, whole tank) and pressure (MPa).
 * Litres: volume - target. Pressure: pressure - target. Shut valve: water drawn so far - target.
 */
export interface Condition {
  value(volume: number, pressure: number): number;
  /** Derivatives by volume and by pressure. */
  slope(volume: number, pressure: number): readonly [number, number];
  /** Size of `value` that counts as zero. */
  readonly tolerance: number;
}

export const atPressure = (target: number): Condition => ({
  value: (_, pressure) => pressure - target,
  slope: () => [0, 1],
  tolerance: 1e-9,
});

export const atVolume = (target: number): Condition => ({
  value: (volume) => volume - target,
  slope: () => [1, 0],
  tolerance: 1e-9 * Math.abs(target),
});

export type Settled =
  | { readonly kind: 'settled'; readonly iterations: number; readonly negativePivots: number }
  | { readonly kind: 'failed'; readonly reason: string; readonly iterations: number };

export interface Solver {
  readonly shell: Shell;
  readonly grips: readonly Grip[];
  readonly work: Work;
  readonly weight: number;
  readonly gauge: number;
  /** Halves counted: 2 where only the bottom half is solved. */
  readonly copies: number;
  /** Largest unbalanced force over the largest pressure force of a node that counts as equilibrium. */
  readonly balance: number;
}

/**
 * Largest unbalanced force over the largest pressure force of a node that always counts as equilibrium. Newton squares it
 * with each iteration, so most steps end orders below.
 */
const BALANCE = 2e-6;
/**
 * A step that changes the pressure much may leave more: this share of the change, up to the coarsest. The next step meets
 * it, so it does not add up (0.005 % of pressure on the reference tank, a fifth of the time). Little steps, holds and the
 * neighbourhood of the maximum, where slopes are read off differences, keep the fine balance.
 */
const SHARE_OF_CHANGE = 0.02;
const COARSEST_BALANCE = 5e-4;

export function solverFor(shell: Shell, weight: number, gauge: number, balance = BALANCE): Solver {
  return {
    shell,
    grips: gripsOf(shell),
    work: workFor(shell),
    weight,
    gauge,
    copies: shell.mesh.half ? 2 : 1,
    balance,
  };
}

const ITERATION_CAP = 12;

/**
 * Brings `trial` (on entry: the predicted displacements and pressure) into equilibrium under `condition`, counting
 * plastic strain from `start` over `time` seconds (0: no rate effect). On return `trial` holds the new state.
 */
export function settle(
  solver: Solver,
  start: State,
  trial: State,
  condition: Condition,
  time: number,
): Settled {
  const { shell, work, copies } = solver;
  thinWalls(shell, trial.move, work);
  let iterations = 0;
  for (;;) {
    const loading: Loading = { pressure: trial.pressure, weight: solver.weight, gauge: solver.gauge };
    if (!assemble(shell, start, trial, loading, time, work))
      return failed('a fibre turned inside out', iterations);
    applyGrips(solver.grips, work);
    trial.volume = copies * work.volume;
    const miss = condition.value(trial.volume, trial.pressure);
    const unbalanced = largest(work.residual) / (largest(work.area) * forceScale(solver, trial));
    if (!Number.isFinite(unbalanced)) return failed('the forces are no longer numbers', iterations);
    const balanced =
      unbalanced < allowed(solver, start, trial) && Math.abs(miss) <= condition.tolerance && iterations > 0;
    if (!balanced && iterations >= ITERATION_CAP)
      return failed(`no balance in ${ITERATION_CAP} iterations`, iterations);
    if (balanced) return { kind: 'settled', iterations, negativePivots: 0 };
    if (factor(work.matrix) < 0) return failed('the stiffness is singular', iterations);
    correct(solver, trial, condition, miss);
    iterations++;
    if (iterations === 1) thinWalls(shell, trial.move, work);
  }
}

/** What may be left unbalanced; a balance asked for by the caller holds as it is. */
function allowed({ balance }: Solver, start: State, trial: State): number {
  if (balance < BALANCE) return balance;
  const change = Math.abs(trial.pressure - start.pressure) / Math.max(Math.abs(trial.pressure), 0.1);
  return Math.min(Math.max(SHARE_OF_CHANGE * change, balance), COARSEST_BALANCE);
}

const failed = (reason: string, iterations: number): Settled => ({ kind: 'failed', reason, iterations });

/** Pressure whose forces the unbalanced ones are measured by: never under 0.1 MPa. */
const forceScale = (solver: Solver, trial: State): number =>
  Math.max(Math.abs(trial.pressure), solver.weight * solver.shell.tank.length, 0.1);

function largest(x: Float64Array): number {
  let most = 0;
  for (let i = 0; i < x.length; i++) most = Math.max(most, Math.abs(x[i]));
  return most;
}

/** One Newton correction. The condition is a border of the matrix, eliminated with a second back-substitution. */
function correct(solver: Solver, trial: State, condition: Condition, miss: number): void {
  const { work, copies } = solver;
  const { step, border, residual, area, matrix } = work;
  const [byVolume, byPressure] = condition.slope(trial.volume, trial.pressure);
  for (let k = 0; k < step.length; k++) {
    step[k] = -residual[k];
    border[k] = area[k];
  }
  solveTree(matrix, step);
  solveTree(matrix, border);
  let volumeByStep = 0;
  let volumeByBorder = 0;
  for (let k = 0; k < step.length; k++) {
    volumeByStep += area[k] * step[k];
    volumeByBorder += area[k] * border[k];
  }
  const along = byVolume * copies * volumeByBorder + byPressure;
  const rise = -(miss + byVolume * copies * volumeByStep) / along;
  for (let k = 0; k < step.length; k++) trial.move[k] += step[k] + rise * border[k];
  trial.pressure += rise;
}
