/** Holds: pressure kept (valve open) or water kept (valve shut), while the wall creeps on. */
import type { Condition, Settled } from '../shell/solve.ts';
import { atPressure } from '../shell/solve.ts';
import { type Datum, pumpedFor } from './growth.ts';
import { airCompliance, waterCompliance } from './water.ts';
import { stepTo, turn, type Walk } from './walk.ts';

/** Growth of girth per time at which the published practice calls a tank settled: 0.1 %/h, in 1/s. */
export const SETTLED_RATE = 0.001 / 3600;

export interface HoldOrders {
  readonly valve: 'open' | 'shut';
  /** s. */
  readonly time: number;
  /** Called after each kept step; true ends the hold. */
  watch(walk: Walk): boolean;
}

/** First step of a hold, s, and the growth of the steps after it: the rate falls as 1/time. */
const FIRST_STEP = 0.5;
const LENGTHEN = 1.12;

/**
 * Runs a hold. Without a rate effect nothing moves and only the clock goes on. Backward Euler in steps that lengthen by 12 %:
 * 0.3 % of the creep off the closed form of a long cylinder (checks).
 */
export function hold(walk: Walk, datum: Datum, orders: HoldOrders): Settled | undefined {
  if (!walk.solver.shell.metals.some((metal) => metal.viscosity > 0)) {
    walk.time += orders.time;
    orders.watch(walk);
    return undefined;
  }
  const end = walk.time + orders.time;
  const condition = orders.valve === 'open' ? atPressure(walk.now.pressure) : shutValve(walk, datum);
  let step = Math.min(FIRST_STEP, orders.time);
  let failed: Settled | undefined;
  turn(walk);
  while (walk.time < end - 1e-9) {
    const seconds = Math.min(step, end - walk.time);
    const ahead = walk.past[0]?.volume ?? 0;
    const settled = stepTo(walk, condition, ahead, seconds);
    if (settled.kind === 'failed') {
      failed = settled;
      turn(walk);
      step *= 0.25;
      if (step < 1e-3) break;
      continue;
    }
    failed = undefined;
    if (orders.watch(walk)) break;
    step *= LENGTHEN;
  }
  turn(walk);
  return failed;
}

/** The water that is in stays in: growth + compression of water + compression of air is what it was. */
function shutValve(walk: Walk, datum: Datum): Condition {
  const { temperature, trappedAir } = datum.solver.shell.tank.water;
  const from = walk.now.volume;
  const drawn = pumpedFor(datum, 0, walk.now.pressure).all;
  return {
    value: (volume, pressure) => pumpedFor(datum, volume - from, pressure).all - drawn,
    slope: (_, pressure) => [
      1,
      waterCompliance(datum.volume, pressure, temperature) + airCompliance(trappedAir, pressure),
    ],
    tolerance: 1e-9 * datum.volume,
  };
}
