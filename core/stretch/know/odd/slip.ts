/** A wire that slipped, or a tape that was moved: one girth jumps from one reading to the next, and no other does. */

export interface SlipGivens {
  /** Readings of one girth, newest last, one after the other without a gap; mm or growth. */
  readonly readings: readonly number[];
  /** Standard deviation of one. */
  readonly blur: number;
}

/** Readings on each side of a jump that it is judged by, and those before them that give the pace. */
const SIDE = 3;
const PACE = 6;
/** Blurs that a jump stands clear of: with medians of three under one in a million readings. */
const CLEAR = 9;

/** By how much it jumped between the last three readings and the three before; undefined where it did not. */
export function slipOf({ readings, blur }: SlipGivens): number | undefined {
  const n = readings.length;
  if (n < 2 * SIDE + PACE) return undefined;
  const after = middle(readings.slice(n - SIDE));
  const before = middle(readings.slice(n - 2 * SIDE, n - SIDE));
  const past = readings.slice(n - 2 * SIDE - PACE, n - SIDE);
  const pace = (middle(past.slice(-SIDE)) - middle(past.slice(0, SIDE))) / (past.length - SIDE);
  const jump = after - before - SIDE * pace;
  return Math.abs(jump) > CLEAR * blur + Math.abs(SIDE * pace) ? jump : undefined;
}

export const SLIP_READINGS = 2 * SIDE + PACE;

const middle = (values: readonly number[]): number => {
  const rising = [...values].sort((a, b) => a - b);
  return rising[rising.length >> 1];
};
