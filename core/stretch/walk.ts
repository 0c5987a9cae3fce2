/** Walks a shell along its path, one equilibrium at a time: predict from the last increments, settle, keep or cut. */
import { atPressure, atVolume, type Condition, type Settled, settle, type Solver } from '../shell/solve.ts';
import { cloneState, copyState, type State, unformed } from '../shell/state.ts';
import { type Ebb, ebbAfter, feltSeconds, STILL } from './ebb.ts';

/** A cut step: where it happened and why. */
export interface Cut {
  readonly pressure: number;
  readonly volumeStep: number;
  readonly reason: string;
}

/** What one step brought: displacements, volume, pressure. */
interface Increment {
  readonly move: Float64Array;
  readonly volume: number;
  readonly pressure: number;
}

/** Changing state of a walk; only the functions of this file write it. */
export interface Walk {
  readonly solver: Solver;
  readonly now: State;
  /** Seconds since the pump started. */
  time: number;
  readonly trial: State;
  /** The last steps, newest first. */
  readonly past: Increment[];
  /** Plastic increments of the last step, where the next return to yield starts looking. */
  readonly lastPlastic: Float64Array;
  /** Volume at the start of the walk, mm³. */
  readonly origin: number;
  /** Room made in the elastic range, mm³: what the first plastic steps are measured by. */
  elasticRoom: number;
  /** Plastic step that the rise would take next, mm³; 0 where it must feel its way. */
  stride: number;
  /** How creep dies down. */
  ebb: Ebb;
  readonly cuts: Cut[];
  /** Iterations of every kept step. */
  readonly iterations: number[];
}

/**
 * The filled tank at zero gauge: liquid head and the residual stress of rolling in balance. Where no balance is found
 * (a wall far thicker than any shell) it stands as it was built: its first step fails too, and the path says why.
 */
export function filled(solver: Solver): State {
  const state = unformed(solver.shell);
  const settled = settle(solver, unformed(solver.shell), state, atPressure(0), 0);
  return settled.kind === 'failed' ? unformed(solver.shell) : state;
}

export function walkFrom(solver: Solver, state: State = filled(solver)): Walk {
  return {
    solver,
    now: cloneState(state),
    time: 0,
    trial: cloneState(state),
    past: [],
    lastPlastic: new Float64Array(state.plasticEq.length),
    origin: state.volume,
    elasticRoom: 1e-4 * state.volume,
    stride: 0,
    ebb: STILL,
    cuts: [],
    iterations: [],
  };
}

/** Forgets the direction: after a turn (release, hold) the last increments say nothing of the next. */
export function turn(walk: Walk): void {
  walk.past.length = 0;
  walk.stride = 0;
  walk.ebb = STILL;
}

/**
 * Predicts displacements and pressure a volume step ahead: Newton's divided differences through the last one to four
 * states of a smooth path. Without a direction the prediction is where the shell stands.
 */
function predict(walk: Walk, volumeStep: number): void {
  const { now, trial, past } = walk;
  copyState(now, trial);
  const [newest] = past;
  if (newest === undefined || volumeStep === 0) return;
  const f = volumeStep / newest.volume;
  const weights = extrapolation(
    past.map((step) => step.volume),
    f > 0 ? volumeStep : 0,
    f,
  );
  weights.forEach((weight, j) => {
    const { move } = past[j];
    for (let k = 0; k < move.length; k++) trial.move[k] += weight * move[k];
    trial.pressure += weight * past[j].pressure;
  });
  if (f > 0) for (let k = 0; k < trial.plasticEq.length; k++) trial.plasticEq[k] += f * walk.lastPlastic[k];
}

/**
 * Weights of the past increments (newest first, each over its volume h) that carry the path a step ahead.
 * The polynomial through the states at 0, -h1, -h1-h2, ... in its Lagrange form, summed by increments. Where the last
 * increment was a little one (a landing), a polynomial would swing: then straight on, by the mean of all increments.
 */
function extrapolation(volumes: readonly number[], step: number, linear: number): number[] {
  if (step === 0 || volumes.length === 1) return [linear];
  if (volumes[0] < LITTLE * step) {
    const all = volumes.reduce((sum, volume) => sum + volume, 0);
    return volumes.map(() => step / all);
  }
  const at = [0];
  for (const volume of volumes) at.push(at[at.length - 1] - volume);
  const lagrange = at.map((x, i) =>
    at.reduce((product, other, j) => (i === j ? product : (product * (step - other)) / (x - other)), 1),
  );
  // State i is the present one less the increments 0..i-1.
  return volumes.map((_, j) => -lagrange.slice(j + 1).reduce((sum, value) => sum + value, 0));
}

/** Last increment over the step ahead under which it is a little one. */
const LITTLE = 0.3;
const REMEMBERED = 2;

function keep(walk: Walk, seconds: number): void {
  const { now, trial, past } = walk;
  const volume = trial.volume - now.volume;
  const sameWay = past.length === 0 || past[0].volume * volume > 0;
  const spent = past.length < REMEMBERED ? undefined : past.pop();
  if (!sameWay) past.length = 0;
  const move = spent?.move ?? new Float64Array(now.move.length);
  for (let k = 0; k < move.length; k++) move[k] = trial.move[k] - now.move[k];
  for (let k = 0; k < trial.plasticEq.length; k++)
    walk.lastPlastic[k] = trial.plasticEq[k] - now.plasticEq[k];
  past.unshift({ move, volume, pressure: trial.pressure - now.pressure });
  if (seconds > 0) walk.ebb = ebbAfter(walk.ebb, largestOf(walk.lastPlastic), seconds);
  walk.time += seconds;
  copyState(trial, now);
}

export function largestOf(x: Float64Array): number {
  let most = 0;
  for (let k = 0; k < x.length; k++) if (x[k] > most) most = x[k];
  return most;
}

/**
 * One step under any condition. `volumeStep` is where the prediction looks; `seconds` 0 leaves the rate effect out.
 * The rate law sees the rate at the end of the step, as the last steps promise it; a pump that runs evenly says otherwise.
 */
export function stepTo(
  walk: Walk,
  condition: Condition,
  volumeStep: number,
  seconds: number,
  felt = feltSeconds(walk.ebb, seconds),
): Settled {
  predict(walk, volumeStep);
  const settled = settle(walk.solver, walk.now, walk.trial, condition, felt);
  if (settled.kind === 'failed') {
    walk.cuts.push({ pressure: walk.now.pressure, volumeStep, reason: settled.reason });
    return settled;
  }
  walk.iterations.push(settled.iterations);
  keep(walk, seconds);
  return settled;
}

/** Pumps `volumeStep` mm³ (of room made, not of water drawn). */
export const pumpStep = (walk: Walk, volumeStep: number, seconds: number): Settled =>
  stepTo(walk, atVolume(walk.now.volume + volumeStep), volumeStep, seconds, seconds);

/** Goes to a pressure; the volume that takes is guessed from the last step. */
export function pressureStep(walk: Walk, pressure: number, seconds: number): Settled {
  return stepTo(walk, atPressure(pressure), roomFor(walk, pressure), seconds, seconds);
}

/** Why a landing was not kept: the wall yielded on the way, and so long a step would be a coarse one. */
export const TOO_FAR = 'the pressure lies further than a step';

/** The time that a step took is that of the room it made, to this part: 0.01 % of the flow stress. */
const TIME_TOLERANCE = 0.005;
const MOST_TIMES = 8;
/** Largest correction of the time at once, e-folds. */
const LARGEST_EFOLDS = 1.5;

/**
 * Goes to a pressure by pumping: the time that takes follows from the room made, which is known only afterwards, so the
 * step is settled again until both agree (secant in the logarithm of the time). With a guessed time the wall would be
 * strained at a rate that the pump does not have, and the next step would see the pressure fall.
 * Where that takes more room than `farthest`, nothing is kept.
 */
export function pumpToPressure(
  walk: Walk,
  pressure: number,
  farthest: number,
  secondsFor: (volume: number) => number,
): Settled {
  const ahead = roomFor(walk, pressure);
  let seconds = secondsFor(ahead);
  predict(walk, ahead);
  let before: { readonly x: number; readonly f: number } | undefined;
  for (let look = 1; ; look++) {
    const settled = settle(walk.solver, walk.now, walk.trial, atPressure(pressure), seconds);
    if (settled.kind === 'failed') {
      walk.cuts.push({ pressure: walk.now.pressure, volumeStep: ahead, reason: settled.reason });
      return settled;
    }
    walk.iterations.push(settled.iterations);
    const room = walk.trial.volume - walk.now.volume;
    if (room > farthest) return { kind: 'failed', reason: TOO_FAR, iterations: settled.iterations };
    const needed = secondsFor(room);
    const [x, f] = [Math.log(seconds), Math.log(needed / seconds)];
    if (!Number.isFinite(x) || !Number.isFinite(f) || Math.abs(f) < TIME_TOLERANCE || look === MOST_TIMES) {
      keep(walk, seconds);
      return settled;
    }
    const straight = before === undefined ? f : (-f * (x - before.x)) / (f - before.f);
    const towards = straight * f > 0 ? straight : f;
    before = { x, f };
    seconds *= Math.exp(Math.max(-LARGEST_EFOLDS, Math.min(LARGEST_EFOLDS, towards)));
  }
}

/** Volume step that should reach a pressure, by the slope of the last step; 0 where nothing is known. */
export function roomFor(walk: Walk, pressure: number): number {
  const [last] = walk.past;
  return last === undefined ? 0 : (last.volume / last.pressure) * (pressure - walk.now.pressure);
}

/** Rise of pressure that a volume step should bring, by the slope of the last step. */
export function expectedRise(walk: Walk, volumeStep: number): number {
  const [last] = walk.past;
  return last === undefined ? 0 : (last.pressure / last.volume) * volumeStep;
}
