/** How long a hold lasts until the growth of girth has come to rest, by the rule that a crew can follow with a watch. */
import { SETTLED_RATE } from '../hold.ts';
import type { Moment } from '../growth.ts';

/**
 * The rule: growth over the last `window` seconds is under `rate` x window, and the hold has lasted `atLeast`.
 * Published practice of cold stretching: under 0.1 %/h, at least an hour, rate over the last half hour; half an hour for
 * small vessels (from memory, medium confidence).
 */
export interface RestRule {
  /** Growth of girth per second, as a fraction. */
  readonly rate: number;
  /** s. */
  readonly window: number;
  readonly atLeast: number;
  /** Nobody waits longer, s. */
  readonly cap: number;
}

export const USUAL_REST: RestRule = { rate: SETTLED_RATE, window: 1800, atLeast: 3600, cap: 4 * 3600 };

export interface Rest {
  /** False: the cap comes first. */
  readonly settled: boolean;
  /** s after arrival; the cap where it does not settle. */
  readonly time: number;
  /** Largest girth growth then, as a fraction, under pressure. */
  readonly growth: number;
  /** Growth per second over the last window then. */
  readonly rate: number;
}

/**
 * @param hold moments of the hold with the arrival first, in order of time, reaching to the cap of the rule (a steel
 * without a rate effect has one moment only: it is settled as soon as the rule allows)
 */
export function restAfter(hold: readonly Moment[], rule: RestRule = USUAL_REST): Rest {
  if (hold.length === 0) throw new Error('a hold without a moment cannot settle');
  const at = (time: number): Rest => {
    const grown = growthAt(hold, time) - growthAt(hold, time - rule.window);
    return { settled: true, time, growth: growthAt(hold, time), rate: grown / rule.window };
  };
  const first = Math.max(rule.atLeast, rule.window);
  if (at(first).rate <= rule.rate) return at(first);
  const last = at(rule.cap);
  if (last.rate > rule.rate) return { ...last, settled: false };
  return at(firstUnder((time) => at(time).rate - rule.rate, first, rule.cap));
}

/** Time after arrival from which `excess` stays at zero or under: it falls as 1/time, so halving finds it. To 1 s. */
function firstUnder(excess: (time: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  while (high - low > 1) {
    const middle = 0.5 * (low + high);
    if (excess(middle) > 0) low = middle;
    else high = middle;
  }
  return high;
}

/** Straight between moments; before the first and after the last it is what it was there. */
function growthAt(hold: readonly Moment[], time: number): number {
  const wanted = hold[0].time + time;
  const next = hold.findIndex((moment) => moment.time >= wanted);
  if (next < 0) return hold[hold.length - 1].largest.growth;
  if (next === 0) return hold[0].largest.growth;
  const [a, b] = [hold[next - 1], hold[next]];
  const f = (wanted - a.time) / (b.time - a.time);
  return a.largest.growth + f * (b.largest.growth - a.largest.growth);
}
