/** Where the two clocks part: the laptop slept, was started anew, or its clock was set. No rate holds across that. */

export interface Moment {
  readonly run: number;
  readonly mono_ms: number;
  readonly wall_ms: number;
}

export interface Gap {
  /** `restart`: the monotonic clock began anew. `parted`: wall and monotonic clock went different ways. */
  readonly cause: 'restart' | 'parted';
  /** Wall clock's step less monotonic clock's step, ms: positive after sleep. */
  readonly parted_ms: number;
}

/** Clocks that stay within this are taken as one, ms. Common practice, no source: the issue's own figure. */
export const CLOCKS_PART_MS = 1000;

/** The gap between two moments that follow each other, if there is one. */
export const clockGap = (before: Moment, after: Moment): Gap | undefined => {
  const wall = after.wall_ms - before.wall_ms;
  if (after.run !== before.run) return { cause: 'restart', parted_ms: wall };
  const parted_ms = wall - (after.mono_ms - before.mono_ms);
  return Math.abs(parted_ms) > CLOCKS_PART_MS ? { cause: 'parted', parted_ms } : undefined;
};
