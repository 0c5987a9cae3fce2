/** A range read off equally likely values. Infinity is a value: a tank that bursts grows without end. */
import { logGamma } from './gamma.ts';
import { quantileOf, sorted } from './sample.ts';

export interface Range {
  readonly median: number;
  /** Half of the values lie within. */
  readonly half: readonly [number, number];
  /** Nine of ten lie within. */
  readonly wide: readonly [number, number];
}

/**
 * Its ends lie so that one more such value falls within as often as is said: the k-th of n values has the share k/(n + 1)
 * of all below it, on average over the values (Hyndman & Fan, Am. Stat. 50 (1996) 361, type 6).
 */
export const rangeOf = (values: readonly number[]): Range => {
  const rising = sorted(values);
  const n = rising.length;
  const at = (p: number): number =>
    quantileOf(rising, n < 2 ? p : Math.min(1, Math.max(0, (p * (n + 1) - 1) / (n - 1))));
  return { median: at(0.5), half: [at(0.25), at(0.75)], wide: [at(0.05), at(0.95)] };
};

/** Where a true value falls among equally likely ones: 0 below all, 1 above all; among equals by the throw `u` in (0, 1). */
export const rankAmong = (truth: number, values: readonly number[], u: number): number => {
  const below = values.filter((value) => value < truth).length;
  const equal = values.filter((value) => value === truth).length;
  return (below + u * (equal + 1)) / (values.length + 1);
};

export interface LowQuantile {
  /** Best estimate of the value that the share `p` of all lies below. */
  readonly value: number;
  /** With `confidence` at least 1 - p of all lie above this; undefined where the values are too few to say so. */
  readonly assured?: number;
  /** Values that would be needed. */
  readonly needed: number;
}

/**
 * A low quantile and how far so many values carry it. `assured` is an order statistic: nothing is assumed of the shape
 * of the distribution (Wilks, Ann. Math. Stat. 12 (1941) 91).
 */
export const lowQuantile = (values: readonly number[], p: number, confidence = 0.95): LowQuantile => {
  const rising = sorted(values);
  const order = assuredOrder(rising.length, p, confidence);
  return {
    value: quantileOf(rising, p),
    ...(order >= 0 ? { assured: rising[order] } : {}),
    needed: Math.ceil(Math.log(1 - confidence) / Math.log(1 - p)),
  };
};

/** Largest k such that more than k of n values lie below the quantile with the confidence asked for; -1: none. */
const assuredOrder = (n: number, p: number, confidence: number): number => {
  let atMost = 0;
  for (let k = 0; k <= n; k++) {
    const ways = logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);
    atMost += Math.exp(ways + k * Math.log(p) + (n - k) * Math.log1p(-p));
    if (1 - atMost < confidence) return k - 1;
  }
  return n - 1;
};
