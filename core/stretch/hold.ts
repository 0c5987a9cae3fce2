/** Holds: pressure kept (valve open) or water kept (valve shut), while the wall creeps on. */
import { insideVolume } from '../shell/read.ts';
import type { Condition } from '../shell/solve.ts';
import { atPressure } from '../shell/solve.ts';
import { type Datum, pumpedFor } from './growth.ts';
import { largestOf, stepTo, turn, type Walk } from './walk.ts';
import { airCompliance, waterCompliance } from './water.ts';

/** Growth of girth per time at which the published practice calls a tank settled: 0.1 %/h, in 1/s. */
export const SETTLED_RATE = 0.001 / 3600;

export interface HoldSettings {
  /** Growth of a step over the one before: the rate falls as 1/time. */
  readonly lengthen: number;
}

/** 0.2 % of the creep off the closed form of a long cylinder (hold.test.ts). */
export const STANDARD_HOLD: HoldSettings = { lengthen: 1.2 };

export interface HoldOrders {
  readonly valve: 'open' | 'shut';
  /** s. */
  readonly time: number;
  readonly settings?: HoldSettings | undefined;
  /** Called after each kept step; true ends the hold. */
  watch(walk: Walk): boolean;
}

export type HoldEnd =
  | { readonly kind: 'held' }
  /** The wall thins faster than it hardens: no balance is found any more `after` s of holding. */
  | { readonly kind: 'gives way'; readonly after: number; readonly reason: string };

/** First step of a hold, s. */
const FIRST_STEP = 0.5;
/** Growth of a step over the one before while no layer creeps. */
const LENGTHEN_AT_REST = 3;
/** Plastic strain of a step that counts as rest. */
const REST = 1e-9;
/** Shortest step before the hold is given up, s. */
const SHORTEST = 1e-3;

/** Runs a hold. Without a rate effect nothing moves and only the clock goes on. */
export function hold(walk: Walk, datum: Datum, orders: HoldOrders): HoldEnd {
  if (walk.solver.shell.metals.every((metal) => metal.viscosity === 0)) return standStill(walk, orders);
  turn(walk);
  const end = creep(walk, datum, orders);
  turn(walk);
  return end;
}

function standStill(walk: Walk, orders: HoldOrders): HoldEnd {
  walk.time += orders.time;
  orders.watch(walk);
  return { kind: 'held' };
}

function creep(walk: Walk, datum: Datum, orders: HoldOrders): HoldEnd {
  const from = walk.time;
  const end = from + orders.time;
  const { lengthen } = orders.settings ?? STANDARD_HOLD;
  const condition = conditionOf(walk, datum, orders.valve);
  let step = Math.min(FIRST_STEP, orders.time);
  while (walk.time < end - 1e-9) {
    const seconds = Math.min(step, end - walk.time);
    const settled = stepTo(walk, condition(), walk.past[0]?.volume ?? 0, seconds);
    if (settled.kind === 'failed') {
      turn(walk);
      step *= 0.25;
      if (step < SHORTEST) return { kind: 'gives way', after: walk.time - from, reason: settled.reason };
      continue;
    }
    if (orders.watch(walk)) break;
    step *= largestOf(walk.lastPlastic) > REST ? lengthen : LENGTHEN_AT_REST;
  }
  return { kind: 'held' };
}

/** The condition of the next step. */
function conditionOf(walk: Walk, datum: Datum, valve: HoldOrders['valve']): () => Condition {
  if (valve === 'open') {
    const open = atPressure(walk.now.pressure);
    return () => open;
  }
  const drawn = pumpedFor(datum, grownOf(walk, datum), walk.now.pressure).all;
  return () => shutValve(walk, datum, drawn);
}

const grownOf = (walk: Walk, datum: Datum): number =>
  insideVolume(datum.solver.shell, walk.now) - datum.volume;

/**
 * The water that is in stays in: growth + compression of water + compression of air is what it was. Counted from the
 * inside volume at the start of the step, since the shell knows only that under its mid-surface while it is solved.
 */
function shutValve(walk: Walk, datum: Datum, drawn: number): Condition {
  const { temperature, trappedAir } = datum.solver.shell.tank.water;
  const grown = grownOf(walk, datum) - walk.now.volume;
  return {
    value: (volume, pressure) => pumpedFor(datum, grown + volume, pressure).all - drawn,
    slope: (volume, pressure) => [
      1,
      waterCompliance(datum.volume + grown + volume, pressure, temperature) +
        airCompliance(trappedAir, pressure),
    ],
    tolerance: 1e-9 * datum.volume,
  };
}
