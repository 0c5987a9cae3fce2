/** Is a channel to be believed? Judged live, from its own last readings and from its twin's. */
import { type Channel, type ChannelReads, freshFor } from '../channel.ts';

export const AILMENTS = ['late', 'dead', 'stuck', 'out of range', 'jumping', 'drifting'] as const;
export type Ailing = (typeof AILMENTS)[number];

export interface Sample {
  /** s of the monotonic clock of the run. */
  readonly seconds: number;
  /** Calibrated, in the unit of the channel. */
  readonly value: number;
}

/** What ails a channel, with the figures behind it. */
export interface Ailed {
  readonly what: Ailing;
  /** s without a reading, s of standing still, the reading, the jump, the drift: in the unit of the channel. */
  readonly figure: number;
  readonly allowed: number;
}

/** What is remembered of a channel: enough to judge by, and no more. */
export interface Memory {
  readonly last?: Sample;
  /** Since when it has stood at its value, and how many readings. */
  readonly still: { readonly since: number; readonly count: number };
  /** Change from the reading before, beyond what could be; undefined where it was none. */
  readonly jump?: number;
  /** Difference from the twin, smoothed. */
  readonly apart?: number;
}

export const NO_MEMORY: Memory = { still: { since: 0, count: 0 } };

/** Fastest true change, in the unit of the channel per second: a tank of some hundred litres under a hand pump. Our choice. */
const FASTEST: Readonly<Record<ChannelReads, number>> = {
  pressure: 5,
  girth: 1,
  litres: 1,
  weight: 1,
  strokes: 5,
  temperature: 0.2,
  rise: 2,
  wall: 0.2,
  strain: 2000,
};
/** Standard deviations of the noise that a reading may be off. */
const OFF = 8;
/** So many readings that are all the same, where the noise would have moved them: one chance in 10^8 or less. */
const STILL_COUNT = 30;
/** A channel that is so many times older than it may be is dead, not late. */
const DEAD = 5;
/** Share of the newest difference in the smoothed one. */
const SMOOTH = 0.05;

/** Takes a reading in. `twin`: the last reading of the other channel, if it is fresh. */
export function heard(channel: Channel, before: Memory, sample: Sample, twin?: Sample): Memory {
  const { last } = before;
  const same = last !== undefined && last.value === sample.value;
  const still = same
    ? { since: before.still.since, count: before.still.count + 1 }
    : { since: sample.seconds, count: 1 };
  const jump = last === undefined ? undefined : jumpOf(channel, last, sample);
  const apart = twin === undefined ? before.apart : smoothed(before.apart, sample.value - twin.value);
  return {
    last: sample,
    still,
    ...(jump === undefined ? {} : { jump }),
    ...(apart === undefined ? {} : { apart }),
  };
}

const smoothed = (before: number | undefined, now: number): number =>
  before === undefined ? now : before + SMOOTH * (now - before);

function jumpOf(channel: Channel, from: Sample, to: Sample): number | undefined {
  const change = to.value - from.value;
  return Math.abs(change) > couldChange(channel, to.seconds - from.seconds) ? change : undefined;
}

const couldChange = ({ reads, resolution, noise = 0 }: Channel, seconds: number): number =>
  FASTEST[reads] * Math.max(seconds, 0) + OFF * noise + 2 * resolution;

export interface JudgeOrders {
  /** Now, s of the same clock. */
  readonly now: number;
  /** What two channels that read the same may be apart, in their unit. */
  readonly apart?: number;
}

/** What ails it now, worst first; undefined: nothing. */
export function judged(channel: Channel, memory: Memory, { now, apart }: JudgeOrders): Ailed | undefined {
  const { last, still, jump } = memory;
  const fresh = freshFor(channel);
  const age = last === undefined ? now : now - last.seconds;
  if (age > DEAD * fresh) return { what: 'dead', figure: age, allowed: fresh };
  if (last === undefined) return undefined;
  const { range, noise = 0, resolution } = channel;
  // A gauge without pressure reads a little under zero as often as a little over it.
  const blur = couldChange(channel, 0);
  if (range !== undefined && (last.value < range.from - blur || last.value > range.to + blur)) {
    const allowed = last.value < range.from ? range.from : range.to;
    return { what: 'out of range', figure: last.value, allowed };
  }
  if (noise > resolution / 2 && still.count >= STILL_COUNT)
    return { what: 'stuck', figure: last.seconds - still.since, allowed: STILL_COUNT };
  if (jump !== undefined) return { what: 'jumping', figure: jump, allowed: couldChange(channel, 1) };
  if (age > fresh) return { what: 'late', figure: age, allowed: fresh };
  if (apart !== undefined && memory.apart !== undefined && Math.abs(memory.apart) > apart)
    return { what: 'drifting', figure: memory.apart, allowed: apart };
  return undefined;
}

/** A channel with one of these is set aside; the others are only told. */
export const SETS_ASIDE: ReadonlySet<Ailing> = new Set(['dead', 'stuck', 'out of range', 'jumping']);

/** Raw figure of the instrument to a reading in the unit of the channel. */
export const calibrated = ({ calibration }: Channel, raw: number): number =>
  calibration === undefined ? raw : (raw - calibration.offset) / calibration.gain;
