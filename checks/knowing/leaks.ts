/** Leaks in holds of invented tanks that live on the shell: shut valve, open valve with a weighed supply, tape only. */
import { type Dice, diceOf } from '../../core/math/dice.ts';
import {
  advance,
  justFilled,
  type Lived,
  type LivedTank,
  livedTank,
} from '../../core/stretch/lived/lived.ts';
import { type Truth, truthOf } from '../../core/stretch/lived/truth.ts';
import type { Weather } from '../../core/stretch/lived/weather.ts';
import { type Answers, answersOf } from '../../core/stretch/know/hold/answers.ts';
import {
  balanceOf,
  type BalanceFound,
  type BalanceReading,
  type Doubts,
} from '../../core/stretch/know/hold/balance.ts';
import { drawnTank } from '../../core/stretch/quick/drawn.ts';
import { quickPath, type QuickTank } from '../../core/stretch/quick/quick.ts';
import { FLOW, GIRTH, STEEL, TANK } from './tank.ts';
import { GAUGE, TAPE, WIRE } from './instruments.ts';
import { plannedFor } from './trial.ts';
import { type World, worldOf } from './world.ts';

/** A tank that has come to its stretch pressure and was held there, valve open, for a while. */
export interface Held {
  readonly lived: LivedTank;
  readonly now: Lived;
  /** Girths as filled, before any pressure, mm. */
  readonly zero: readonly number[];
  readonly pressure: number;
  readonly answers: Answers;
}

const MESH = { elements: 60, layers: 5 } as const;
/** s of the hold before anybody looks for leaks. */
const BEFORE = 600;

export function heldTank(seed: number, quick: QuickTank): Held {
  const world = worldOf(seed, 4, 100);
  return heldAt(world, quick, plannedFor(quick, world.draws).target);
}

/** Held where nothing yields yet: at the first step of the day. */
export function elasticTank(seed: number, quick: QuickTank): Held {
  const world = worldOf(seed, 4, 100);
  return heldAt(world, quick, FIRST_STEP * plannedFor(quick, world.draws).target);
}
const FIRST_STEP = 0.3;

function heldAt(world: World, quick: QuickTank, target: number): Held {
  const lived = livedTank(drawnTank(TANK, STEEL, world.truth), { shell: MESH });
  let now = justFilled(lived);
  const zero = truthOf(lived, now).girths;
  while (now.burst === undefined && now.walk.now.pressure < target * (1 - 1e-6))
    now = advance(lived, now, { does: 'pump', flow: FLOW, upTo: target, seconds: 2 });
  now = advance(lived, now, { does: 'pump', flow: FLOW, upTo: target, seconds: BEFORE });
  const answers = answersOf({
    // The crew does not know the true steel: it goes by another one out of the same range.
    path: quickPath(quick, world.draws[0]),
    filled: quick.filled,
    growth: truthOf(lived, now).growth,
    pressure: target,
    temperature: TANK.water.temperature,
    air: TANK.water.trappedAir,
  });
  return { lived, now, zero, pressure: target, answers };
}

export interface LeakOrders {
  readonly held: Held;
  readonly seed: number;
  /** mL/min. */
  readonly leak: number;
  readonly valve: 'shut' | 'open';
  readonly girth: 'wire' | 'tape';
  readonly thermometer: boolean;
  /** s. */
  readonly time: number;
}

/** Drift of a wire, mm, and of the water, K, in five minutes at most. */
const DRIFT = { time: 300, wire: 0.02, water: 0.2 } as const;
/** Supply weighed to 5 g, mm³; thermometer read to 0.1 K with this noise. */
const WEIGHED = 5e3;
const THERMOMETER = 0.03;

export const doubtsFor = (girth: LeakOrders['girth']): Doubts => ({
  pressure: GAUGE.noise,
  growth: (girth === 'wire' ? WIRE : TAPE).noise / GIRTH,
  stairs: girth === 'tape',
  drawn: WEIGHED / Math.sqrt(12),
  water: THERMOMETER,
  // Even between the ends: the standard deviation is the end over the root of three.
  growthDrift: girth === 'wire' ? DRIFT.wire / GIRTH / DRIFT.time / Math.sqrt(3) : 0,
  waterDrift: DRIFT.water / DRIFT.time / Math.sqrt(3),
});

/** What the balance says at the end of the hold. */
export function leakTrial(orders: LeakOrders): BalanceFound | undefined {
  const { held, seed, girth, time } = orders;
  const dice = diceOf(seed).named('leak');
  const every = girth === 'wire' ? 1 : 60;
  const warming = (2 * dice.uniform() - 1) * (DRIFT.water / DRIFT.time);
  const lived = { ...held.lived, weather: () => weatherFor(held.lived, warming) };
  const opening = (1e3 * orders.leak) / 60 / Math.sqrt(held.pressure);
  let now: Lived = { ...held.now, leak: opening };
  const drifts = TANK.girths.map(() => ((2 * dice.uniform() - 1) * DRIFT.wire) / DRIFT.time);
  // What stands on the tape beyond the whole millimetre when the girth is first read, mm.
  const starts = TANK.girths.map(() => dice.uniform());
  const gains = TANK.girths.map(() => 1 + (girth === 'wire' ? WIRE : TAPE).gain * dice.normal());
  const begun = now.seconds;
  const window: BalanceReading[] = [];
  for (let s = 0; s <= time; s += every) {
    const truth = truthOf(lived, now);
    window.push(readingOf(truth, { orders, drifts, starts, gains, spent: now.seconds - begun, dice }));
    const does =
      orders.valve === 'shut'
        ? ({ does: 'rest' } as const)
        : ({ does: 'pump', flow: FLOW, upTo: held.pressure } as const);
    now = advance(lived, now, { ...does, seconds: every });
  }
  return balanceOf(window, held.answers, doubtsFor(girth));
}

interface ReadingGivens {
  readonly orders: LeakOrders;
  readonly drifts: readonly number[];
  readonly starts: readonly number[];
  readonly gains: readonly number[];
  readonly spent: number;
  readonly dice: Dice;
}

function readingOf(
  truth: Truth,
  { orders, drifts, starts, gains, spent, dice }: ReadingGivens,
): BalanceReading {
  const growths = truth.girths.map((girth, i) => {
    const { [i]: zero } = orders.held.zero;
    const moved = gains[i] * (girth - zero);
    return (
      (orders.girth === 'wire'
        ? moved + drifts[i] * spent + WIRE.noise * dice.normal()
        : Math.round(moved + starts[i]) - Math.round(starts[i])) / zero
    );
  });
  return {
    seconds: truth.seconds,
    pressure: truth.pressure + GAUGE.noise * dice.normal(),
    growths,
    ...(orders.valve === 'open' ? { drawn: WEIGHED * Math.round(truth.drawn / WEIGHED) } : {}),
    ...(orders.thermometer ? { water: truth.water + THERMOMETER * dice.normal() } : {}),
  };
}

/** Sun, or cold wind, that warms the water at this rate, K/s. */
function weatherFor({ stores, tank }: LivedTank, rate: number): Weather {
  const power = rate * (stores.water + stores.wall);
  if (power >= 0) return { air: tank.water.temperature, sun: power, wind: 0 };
  const wind = 30;
  return { air: tank.water.temperature + power / wind, sun: 0, wind };
}
