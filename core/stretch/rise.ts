/** Raises the pressure by pumping: elastic in one stride to first yield, then in steps that grow while Newton is quick. */
import type { Settled, Solver } from '../shell/solve.ts';
import type { State } from '../shell/state.ts';
import { cloneState } from '../shell/state.ts';
import { expectedRise, pressureStep, pumpStep, pumpToPressure, TOO_FAR, type Walk } from './walk.ts';

export interface RiseSettings {
  /** First plastic step over the elastic growth at first yield. */
  readonly firstStep: number;
  /** Largest step over the volume of the tank, and over the growth so far. */
  readonly largestOfVolume: number;
  readonly largestOfGrowth: number;
  /** Largest rise that a step may expect, over the pressure. */
  readonly largestOfPressure: number;
  /** Growth of the step after a quick one. */
  readonly quicken: number;
  /** Every step is divided by this (a finer path for checks). */
  readonly refine: number;
}

export const STANDARD_RISE: RiseSettings = {
  firstStep: 0.08,
  largestOfVolume: 0.02,
  largestOfGrowth: 0.05,
  largestOfPressure: 0.15,
  quicken: 1.7,
  refine: 1,
};

/** Place where the metal yields first. */
export interface YieldPoint {
  readonly pressure: number;
  readonly element: number;
  readonly layer: number;
}

/**
 * Pressure at which the first layer anywhere reaches its flow stress, by straight extrapolation from `before` to `after`
 * (both elastic). The elastic path of a thin tank is straight to 0.1 %.
 */
export function firstYieldAhead(solver: Solver, before: State, after: State): YieldPoint {
  const { shell } = solver;
  const flow = new Float64Array(2);
  let best: YieldPoint = { pressure: Infinity, element: 0, layer: 0 };
  const between = after.pressure - before.pressure;
  for (let point = 0; point < shell.depth.length; point++) {
    const element = Math.floor(point / shell.settings.layers);
    if (shell.link[element] === 1) continue;
    shell.metals[shell.metal[element]].flow.at(after.plasticEq[point], flow);
    const m0 = before.stressM[point];
    const h0 = before.stressH[point];
    const f = multipleToYield(m0, h0, after.stressM[point] - m0, after.stressH[point] - h0, flow[0]);
    const pressure = before.pressure + f * between;
    if (pressure < best.pressure) best = { pressure, element, layer: point % shell.settings.layers };
  }
  return best;
}

/** Smallest f >= 0 with von Mises stress of (m0 + f m, h0 + f h) equal to `flow`. */
function multipleToYield(m0: number, h0: number, m: number, h: number, flow: number): number {
  const a = m * m - m * h + h * h;
  const b = 2 * m0 * m - m0 * h - h0 * m + 2 * h0 * h;
  const c = m0 * m0 - m0 * h0 + h0 * h0 - flow * flow;
  if (c >= 0) return 0;
  if (a === 0) return Infinity;
  return (-b + Math.sqrt(b * b - 4 * a * c)) / (2 * a);
}

/** Why a rise came to its end. */
export type RiseEnd =
  | { readonly kind: 'landed' }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'past maximum' }
  | { readonly kind: 'stuck'; readonly reason: string };

export interface RiseOrders {
  /** Pressures to land on, rising. The rise ends at the last one unless `beyond`. */
  readonly marks: readonly number[];
  /** Goes on past the last mark to the pressure maximum. */
  readonly beyond: boolean;
  /** Time the pump needs for a volume step and a pressure step, s; 0: no rate effect. */
  seconds(volume: number, pressure: number): number;
  /** Called after each kept step; true stops. */
  watch(walk: Walk): boolean;
}

/** First stride over the pressure to first yield that the stiffness at rest promises, and the last over the second look. */
const FIRST_STRIDE = 0.6;
export const SHORT_OF_YIELD = 0.98;

/**
 * Up through the elastic range in a few strides, to just short of first yield, or to the last mark if that comes first.
 * Heads stiffen or soften as they turn (up to 13 % of first yield in thin torispheres), so the place and pressure of
 * first yield are looked for again from the last two states. Returns where it is.
 */
export function elasticStride(walk: Walk, orders: RiseOrders): YieldPoint {
  const before = cloneState(walk.now);
  const last = orders.marks.at(-1);
  const end = orders.beyond || last === undefined ? Infinity : last;
  const probe = Math.min(Math.max(PROBE, PROBE_SHARE * before.pressure), 0.1 * (end - before.pressure));
  pressureStep(walk, before.pressure + probe, 0);
  let ahead = firstYieldAhead(walk.solver, before, walk.now);
  for (const share of [FIRST_STRIDE, SHORT_OF_YIELD]) {
    const from = cloneState(walk.now);
    const to = Math.min(before.pressure + share * (ahead.pressure - before.pressure), end);
    if (strideTo(walk, to, orders) === 'stopped') break;
    if (walk.now.pressure > from.pressure) ahead = firstYieldAhead(walk.solver, from, walk.now);
  }
  walk.elasticRoom = Math.max(walk.elasticRoom, walk.now.volume - walk.origin);
  return ahead;
}

/** Pressure step that finds a slope, MPa; higher up a share of the pressure, to stay clear of what is left unbalanced. */
const PROBE = 1e-3;
const PROBE_SHARE = 0.02;

function strideTo(walk: Walk, to: number, orders: RiseOrders): 'stopped' | 'there' {
  const marks = orders.marks.filter((mark) => mark < to * (1 - 1e-9));
  for (const mark of [...marks, to]) {
    if (mark <= walk.now.pressure * (1 + 1e-12)) continue;
    if (land(walk, mark, Infinity, orders).kind === 'failed') return 'there';
    if (orders.watch(walk)) return 'stopped';
  }
  return 'there';
}

const SMALLEST_STEP = 1e-7;
/** Fall under the highest pressure that ends a path: a knuckle that turns can take 0.2 % for a step or two. */
const PAST = 4e-3;

/** Room that landing on a mark may take, over the step that is due. */
const FARTHEST_LANDING = 2;

/** Pumps on from an elastic or plastic state. `origin` is the volume before forming. */
export function rise(
  walk: Walk,
  origin: number,
  orders: RiseOrders,
  settings: RiseSettings = STANDARD_RISE,
): RiseEnd {
  feelAhead(walk, orders);
  let step = Math.max((settings.firstStep * walk.elasticRoom) / settings.refine, walk.stride);
  let highest = walk.now.pressure;
  let mark = 0;
  while (mark < orders.marks.length && orders.marks[mark] <= walk.now.pressure * (1 + 1e-12)) mark++;
  for (;;) {
    if (mark >= orders.marks.length && !orders.beyond) return { kind: 'landed' };
    const target = orders.marks[mark];
    step = withinRise(walk, step, settings);
    const expected = expectedRise(walk, step);
    let landing = target !== undefined && expected >= (target - walk.now.pressure) * 0.999;
    let settled = landing
      ? land(walk, target, FARTHEST_LANDING * step, orders)
      : pumpStep(walk, step, orders.seconds(step, expected));
    if (settled.kind === 'failed' && settled.reason === TOO_FAR) {
      landing = false;
      settled = pumpStep(walk, step, orders.seconds(step, expected));
    }
    if (settled.kind === 'failed') {
      step *= 0.4;
      if (step < SMALLEST_STEP * origin) return { kind: 'stuck', reason: settled.reason };
      continue;
    }
    if (landing) mark++;
    if (orders.watch(walk)) return { kind: 'stopped' };
    if (walk.now.pressure < highest * (1 - PAST)) return { kind: 'past maximum' };
    highest = Math.max(highest, walk.now.pressure);
    // A step cut short by a mark says nothing for a longer one.
    if (!landing) step = nextStep(step, settled.iterations, walk.now.volume - origin, origin, settings);
    walk.stride = step;
  }
}

/**
 * After a hold no slope is known, and a first step could run past the next mark: a pressure step far smaller than the
 * way to the mark finds the slope.
 */
function feelAhead(walk: Walk, orders: RiseOrders): void {
  const next = orders.marks.find((mark) => mark > walk.now.pressure * (1 + 1e-12));
  if (walk.past.length > 0 || next === undefined) return;
  const little = Math.min(PROBE, 0.1 * (next - walk.now.pressure));
  pressureStep(walk, walk.now.pressure + little, orders.seconds(0, little));
}

const land = (walk: Walk, target: number, farthest: number, orders: RiseOrders): Settled =>
  pumpToPressure(walk, target, farthest, (volume) => orders.seconds(volume, target - walk.now.pressure));

/** Shortens a step that the stiffness of the last one would carry too far: the next part may yield on the way. */
function withinRise(walk: Walk, step: number, { largestOfPressure, refine }: RiseSettings): number {
  const expected = expectedRise(walk, step);
  const most = (largestOfPressure * Math.max(walk.now.pressure, PROBE)) / refine;
  return expected > most ? (step * most) / expected : step;
}

function nextStep(
  step: number,
  iterations: number,
  growth: number,
  origin: number,
  settings: RiseSettings,
): number {
  const largest =
    Math.max(settings.largestOfVolume * origin, settings.largestOfGrowth * growth) / settings.refine;
  const factor = iterations <= 3 ? settings.quicken : iterations === 4 ? 1 : 0.7;
  return Math.min(step * factor ** (1 / settings.refine), largest);
}
