/**
 * A tank that lives through its day: it is filled, pumped, held, bled and burst, second by second, on the shell with its
 * rate effect. State in, state out; nothing is drawn at random here.
 */
import { insideVolume } from '../../shell/read.ts';
import { shellOf, type ShellSettings, STANDARD } from '../../shell/shell.ts';
import { atPressure, type Condition, solverFor } from '../../shell/solve.ts';
import { cloneState } from '../../shell/state.ts';
import type { Tank } from '../../tank/tank.ts';
import { GRAVITY } from '../../units.ts';
import { type Datum, datumOf, largestGrowth } from '../growth.ts';
import { neckingReserve } from '../limit/limit.ts';
import { seamUse } from '../limit/seams.ts';
import { stepTo, turn, type Walk, walkFrom } from '../walk.ts';
import { waterDensity } from '../water.ts';
import { type Exchange, type Opening, outflow, waterHeld, waterKept } from './balance.ts';
import { type HeatStores, heatStoresOf, type Warmth, warmed, type Weather } from './weather.ts';

/** What does not change through the day. */
export interface LivedTank {
  readonly tank: Tank;
  readonly datum: Datum;
  readonly stores: HeatStores;
  /** Weather at a time of the day, s since the vent was shut. */
  weather(seconds: number): Weather;
  /** Share of the trapped air that the water takes up per second and MPa. */
  readonly dissolves: number;
}

/** Why a tank burst. */
export type Burst = 'local necking' | 'seam' | 'no balance' | 'ordered';

/** One moment of the day. Never written into; `advance` makes the next one. */
export interface Lived {
  /** s since the vent was shut. */
  readonly seconds: number;
  readonly walk: Walk;
  readonly warmth: Warmth;
  /** mm³ in the tank, counted at atmospheric pressure and the temperature of filling. */
  readonly water: number;
  /** Trapped air as it would be at filling, mm³. */
  readonly air: number;
  /** mm³ that the pump has pushed in, and that leaked out or was let out, since the vent was shut. */
  readonly drawn: number;
  readonly lost: number;
  readonly leak: Opening;
  /** Longest step that is worth taking now, s: short after a turn, as the creep slows down with time. */
  readonly stride: number;
  readonly does: Act['does'];
  readonly burst?: { readonly why: Burst; readonly pressure: number; readonly growth: number };
}

export type Act =
  /** The pump gives `flow` (mm³/s) until the gauge stands at `upTo` (MPa), and keeps it there. It takes nothing back. */
  | { readonly does: 'pump'; readonly seconds: number; readonly flow: number; readonly upTo: number }
  /** Valve shut. */
  | { readonly does: 'rest'; readonly seconds: number }
  /** Release valve open by so much. */
  | { readonly does: 'bleed'; readonly seconds: number; readonly opening: Opening };

export interface LivedOptions {
  readonly shell?: ShellSettings;
  readonly weather?: (seconds: number) => Weather;
  readonly dissolves?: number;
}

export function livedTank(tank: Tank, options: LivedOptions = {}): LivedTank {
  const shell = shellOf(tank, options.shell ?? STANDARD);
  const { temperature } = tank.water;
  const weight = tank.stand?.axis === 'upright' ? waterDensity(temperature) * GRAVITY : 0;
  const solver = solverFor(shell, weight, tank.stand?.gauge ?? tank.length / 2);
  const datum = datumOf(solver, cloneState(walkFrom(solver).now));
  // A closed hall at the temperature of the water.
  const weather = options.weather ?? (() => ({ air: temperature, sun: 0, wind: 5 }));
  return { tank, datum, stores: heatStoresOf(datum), weather, dissolves: options.dissolves ?? 0 };
}

/** Full of water, the vent just shut. */
export function justFilled({ tank, datum }: LivedTank): Lived {
  const { temperature, trappedAir } = tank.water;
  return {
    seconds: 0,
    walk: walkFrom(datum.solver, datum.state),
    warmth: { water: temperature, wall: temperature },
    water: datum.volume - trappedAir,
    air: trappedAir,
    drawn: 0,
    lost: 0,
    leak: 0,
    stride: FIRST_STRIDE,
    does: 'rest',
  };
}

/** Longest first step after a turn, s, and how it lengthens: 0.3 % of the creep off the closed form (see hold.ts). */
const FIRST_STRIDE = 0.5;
const LENGTHEN = 1.12;
/** Longest step at all, s. */
const LONGEST = 60;
/** Shortest step before the tank is taken to have given way, s. */
const SHORTEST = 1e-3;
/** Room over the volume of the tank that one step may make. */
const ROOM = 4e-4;

/** The tank so many seconds later. A burst tank stays as it is; only its clock goes on. */
export function advance(lived: LivedTank, from: Lived, act: Act): Lived {
  if (!(act.seconds >= 0)) throw new Error(`time goes forward, got ${act.seconds} s`);
  const end = from.seconds + act.seconds;
  let now: Lived = act.does === from.does ? from : { ...from, stride: FIRST_STRIDE, does: act.does };
  while (now.burst === undefined && now.seconds < end - 1e-9) {
    const flow = act.does === 'pump' ? act.flow : 0;
    const most = Math.min(now.stride, LONGEST, flow > 0 ? (ROOM * lived.datum.volume) / flow : LONGEST);
    now = step(lived, now, { ...act, seconds: Math.min(most, end - now.seconds) });
  }
  return now.burst === undefined ? now : { ...now, seconds: end };
}

function step(lived: LivedTank, from: Lived, act: Act): Lived {
  for (let { seconds } = act; seconds >= SHORTEST; seconds *= 0.25) {
    const next = settled(lived, from, { ...act, seconds });
    if (next !== undefined) return endedBy(lived, next);
  }
  return burst(lived, from, 'no balance');
}

/** One step of the given length; undefined where no balance was found. */
function settled(lived: LivedTank, from: Lived, act: Act): Lived | undefined {
  if (act.does !== 'pump') {
    const opening = from.leak + (act.does === 'bleed' ? act.opening : 0);
    return stepped(lived, from, { seconds: act.seconds, added: 0, opening });
  }
  const { seconds, flow, upTo } = act;
  if (from.walk.now.pressure >= upTo * (1 - NEAR)) {
    const kept = pressureKept(lived, from, { seconds, pressure: upTo });
    const added = kept === undefined ? Infinity : kept.drawn - from.drawn;
    if (kept !== undefined && added >= 0 && added <= flow * seconds) return kept;
    return stepped(lived, from, { seconds, added: added < 0 ? 0 : flow * seconds, opening: from.leak });
  }
  const pumped = stepped(lived, from, { seconds, added: flow * seconds, opening: from.leak });
  if (pumped === undefined || pumped.walk.now.pressure <= upTo) return pumped;
  return landed(lived, from, { act, over: pumped.walk.now.pressure });
}

/** Arrives at the pressure in the part of the step that the pump needs for it, and begins to keep it with short steps. */
function landed(
  lived: LivedTank,
  from: Lived,
  { act, over }: { readonly act: Extract<Act, { does: 'pump' }>; readonly over: number },
): Lived | undefined {
  const { pressure } = from.walk.now;
  const share = (act.upTo - pressure) / (over - pressure);
  const seconds = Math.max(SHORTEST, share * act.seconds);
  const there = pressureKept(lived, from, { seconds, pressure: act.upTo });
  return there === undefined ? undefined : { ...there, stride: FIRST_STRIDE };
}

/** The pump keeps a pressure that is within this of it. */
const NEAR = 1e-3;

interface Passing {
  readonly seconds: number;
  readonly added: number;
  readonly opening: Opening;
}

function exchangeOf(lived: LivedTank, from: Lived, { seconds, added, opening }: Passing): Exchange {
  const { datum, tank } = lived;
  const { now } = from.walk;
  return {
    warmth: warmed(from.warmth, lived.weather(from.seconds), lived.stores, seconds),
    filledAt: tank.water.temperature,
    air: from.air * Math.exp(-lived.dissolves * Math.max(now.pressure, 0) * seconds),
    water: from.water,
    added,
    seconds,
    opening,
    from: { inside: insideVolume(datum.solver.shell, now), volume: now.volume },
  };
}

/** Water in and out are given; the pressure follows. */
function stepped(lived: LivedTank, from: Lived, passing: Passing): Lived | undefined {
  const exchange = exchangeOf(lived, from, passing);
  const walk = walked(from.walk, waterKept(exchange), passing);
  if (walk === undefined) return undefined;
  return after(from, { walk, exchange, lost: passing.seconds * outflow(passing.opening, walk.now.pressure) });
}

/** The pressure is given; what the pump adds follows, and may be negative. */
function pressureKept(
  lived: LivedTank,
  from: Lived,
  { seconds, pressure }: { readonly seconds: number; readonly pressure: number },
): Lived | undefined {
  const exchange = exchangeOf(lived, from, { seconds, added: 0, opening: from.leak });
  const walk = walked(from.walk, atPressure(pressure), { seconds, added: 0, opening: 0 });
  if (walk === undefined) return undefined;
  const lost = seconds * outflow(from.leak, pressure);
  const inside = insideVolume(lived.datum.solver.shell, walk.now);
  const added = waterHeld(inside, pressure, exchange) - exchange.water + lost;
  return after(from, { walk, exchange: { ...exchange, added }, lost });
}

function walked(before: Walk, condition: Condition, { seconds }: Passing): Walk | undefined {
  const walk = copied(before);
  if (stepTo(walk, condition, walk.past[0]?.volume ?? 0, seconds).kind === 'settled') return walk;
  const plain = copied(before);
  turn(plain);
  return stepTo(plain, condition, 0, seconds).kind === 'settled' ? plain : undefined;
}

interface Passed {
  readonly walk: Walk;
  readonly exchange: Exchange;
  readonly lost: number;
}

function after(from: Lived, { walk, exchange, lost }: Passed): Lived {
  const { seconds, warmth, added, air } = exchange;
  return {
    ...from,
    seconds: from.seconds + seconds,
    walk,
    warmth,
    air,
    water: from.water + added - lost,
    drawn: from.drawn + added,
    lost: from.lost + lost,
    stride: Math.max(from.stride * LENGTHEN, seconds),
  };
}

/** A walk of its own, so that the state it came from stays as it was. */
function copied(walk: Walk): Walk {
  return {
    ...walk,
    now: cloneState(walk.now),
    trial: cloneState(walk.trial),
    past: walk.past.map((one) => ({ ...one, move: one.move.slice() })),
    lastPlastic: walk.lastPlastic.slice(),
    cuts: [],
    iterations: [],
  };
}

function endedBy(lived: LivedTank, now: Lived): Lived {
  const { growth } = largestGrowth(lived.datum, now.walk.now);
  if ((seamUse(lived.datum, growth) ?? 0) >= 1) return burst(lived, now, 'seam');
  return neckingReserve(now.walk, lived.datum) < 0 ? burst(lived, now, 'local necking') : now;
}

/** The wall is open: no pressure any more, and the tank is as wide as it was. */
export function burst(lived: LivedTank, now: Lived, why: Burst): Lived {
  const { growth } = largestGrowth(lived.datum, now.walk.now);
  return { ...now, burst: { why, pressure: now.walk.now.pressure, growth } };
}
