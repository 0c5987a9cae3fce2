/** A wire that slipped, or a tape that was moved: one girth jumps from one reading to the next, and no other does. */

export interface SlipGivens {
  /** Readings of one girth, newest last, one after the other without a gap; mm or growth. */
  readonly readings: readonly number[];
  /** Standard deviation of one. */
  readonly blur: number;
  /** The same readings of the other girths: where they moved alike, the pump was turned on, and no wire slipped. */
  readonly others?: readonly (readonly number[])[];
}

/** Readings on each side of a jump that it is judged by, and those before them that give the pace. */
const SIDE = 3;
const PACE = 6;
/** Blurs that a jump stands clear of: with medians of three under one in a million readings. */
const CLEAR = 9;

/** By how much it jumped between the last three readings and the three before; undefined where it did not. */
export function slipOf({ readings, blur, others = [] }: SlipGivens): number | undefined {
  const own = moveOf(readings);
  if (own === undefined) return undefined;
  const { jump, pace } = own;
  if (Math.abs(jump) <= CLEAR * blur + Math.abs(SIDE * pace)) return undefined;
  const alike = others.flatMap((one) => moveOf(one) ?? []).map((one) => one.jump / jump);
  return alike.length > 0 && middle(alike) > ALIKE ? undefined : jump;
}

/** Share of a jump that the others have too, from which on it is the tank's. Our choice. */
const ALIKE = 0.4;

function moveOf(readings: readonly number[]): { readonly jump: number; readonly pace: number } | undefined {
  const n = readings.length;
  if (n < 2 * SIDE + PACE) return undefined;
  const after = middle(readings.slice(n - SIDE));
  const before = middle(readings.slice(n - 2 * SIDE, n - SIDE));
  const past = readings.slice(n - 2 * SIDE - PACE, n - SIDE);
  const pace = (middle(past.slice(-SIDE)) - middle(past.slice(0, SIDE))) / (past.length - SIDE);
  return { jump: after - before - SIDE * pace, pace };
}

export const SLIP_READINGS = 2 * SIDE + PACE;

const middle = (values: readonly number[]): number => {
  const rising = [...values].sort((a, b) => a - b);
  return rising[rising.length >> 1];
};
