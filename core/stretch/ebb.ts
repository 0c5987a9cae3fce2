/** How creep dies down from step to step, so that a step is given the rate at its end and not the mean of it. */

export interface Ebb {
  /** Largest plastic strain of a layer per second, mean of the last step. */
  readonly rate: number;
  /** Fall of the logarithm of that rate from the step before to the last, and how long the last was, s. */
  readonly fall: number;
  readonly seconds: number;
}

export const STILL: Ebb = { rate: 0, fall: 0, seconds: 0 };

/** Falls taken into account: creep that dies down, or begins to run away. */
const LEAST_FALL = -0.3;
const MOST_FALL = 0.7;

/** After a step that brought `plastic` (largest of any layer) in so many seconds. */
export function ebbAfter(before: Ebb, plastic: number, seconds: number): Ebb {
  const rate = plastic / seconds;
  const known = before.rate > 0 && rate > 0;
  const fall = known ? Math.log(before.rate / rate) : 0;
  return { rate, fall: Math.min(Math.max(fall, LEAST_FALL), MOST_FALL), seconds };
}

/**
 * Seconds that a rate law should see for a step: mean rate over the rate at the end, while its logarithm falls evenly. In
 * logarithmic creep steps that lengthen evenly have even falls, so the last fall is that of the next step; a step cut
 * short falls less. Without it backward Euler takes the mean for the end and misses 1.6 % of the creep.
 */
export function feltSeconds({ fall, seconds: last }: Ebb, seconds: number): number {
  const here = last > 0 ? fall * Math.min(1, seconds / last) : 0;
  return Math.abs(here) < 1e-6 ? seconds : (seconds * here) / (1 - Math.exp(-here));
}
