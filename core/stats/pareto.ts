/**
 * Importance weights, and whether they may be trusted: draws from a stand-in count by the ratio of the true density to
 * the stand-in's. Where few draws carry most of the weight the answer is worthless, and this says so.
 */
import type { Dice } from '../math/dice.ts';

export interface Weighted {
  /** Sum 1. */
  readonly weights: Float64Array;
  /**
   * Shape of the Pareto tail of the raw weights: under 0.5 good, 0.5-0.7 usable, above 0.7 not to be trusted
   * (Vehtari, Simpson, Gelman, Yao & Gabry, J. Mach. Learn. Res. 25 (2024) 72).
   */
  readonly tail: number;
  /** Number of equally weighted draws that would say as much. */
  readonly effective: number;
}

/** Smooths the largest weights to the quantiles of the Pareto tail fitted to them, and sums to one. */
export const paretoSmoothed = (logWeights: Float64Array): Weighted => {
  const n = logWeights.length;
  if (n < 25) throw new Error(`a Pareto tail needs 25 weights or more, got ${n}`);
  const most = logWeights.reduce((a, b) => Math.max(a, b), -Infinity);
  const weights = logWeights.map((w) => Math.exp(w - most));
  const count = Math.min(Math.floor(n / 5), Math.ceil(3 * Math.sqrt(n)));
  const order = Array.from(weights.keys()).sort((a, b) => weights[a] - weights[b]);
  const largest = order.slice(n - count);
  const cut = weights[order[n - count - 1]];
  const above = Float64Array.from(largest, (k) => weights[k] - cut);
  const { shape, scale } = paretoOf(above);
  if (Number.isFinite(shape) && scale > 0) {
    largest.forEach((index, k) => {
      weights[index] = Math.min(1, cut + paretoQuantile((k + 0.5) / count, shape, scale));
    });
  }
  return { weights: normalised(weights), tail: shape, effective: effectiveNumber(weights) };
};

const paretoQuantile = (p: number, shape: number, scale: number): number =>
  Math.abs(shape) < 1e-9 ? -scale * Math.log1p(-p) : (scale * Math.expm1(-shape * Math.log1p(-p))) / shape;

/**
 * Generalised Pareto distribution fitted to a rising sample (Zhang & Stephens, Technometrics 51 (2009) 316), the shape
 * drawn towards 0.5 by ten pseudo-draws as in the paper named above. Equal values: shape -Infinity, no tail.
 */
const paretoOf = (rising: Float64Array): { shape: number; scale: number } => {
  const n = rising.length;
  const top = rising[n - 1];
  if (!(top > 1e-12)) return { shape: -Infinity, scale: 0 };
  const quarter = Math.max(rising[Math.floor(n / 4 + 0.5) - 1], 1e-12 * top);
  const grid = 30 + Math.floor(Math.sqrt(n));
  const theta = Float64Array.from(
    { length: grid },
    (_, j) => 1 / top + (1 - Math.sqrt(grid / (j + 0.5))) / (3 * quarter),
  );
  const likelihood = theta.map((b) => {
    const k = meanLog(rising, b);
    return n * (Math.log(-b / k) - k - 1);
  });
  const most = likelihood.reduce((a, b) => Math.max(a, b), -Infinity);
  let [sum, weighted] = [0, 0];
  for (let j = 0; j < grid; j++) {
    const share = Math.exp(likelihood[j] - most);
    sum += share;
    weighted += share * theta[j];
  }
  const b = weighted / sum;
  const raw = meanLog(rising, b);
  return { shape: (n * raw + 10 * 0.5) / (n + 10), scale: -raw / b };
};

const meanLog = (values: Float64Array, b: number): number =>
  values.reduce((sum, value) => sum + Math.log1p(-b * value), 0) / values.length;

const normalised = (weights: Float64Array): Float64Array => {
  const sum = weights.reduce((a, b) => a + b, 0);
  return weights.map((w) => w / sum);
};

const effectiveNumber = (weights: Float64Array): number => {
  const sum = weights.reduce((a, b) => a + b, 0);
  return (sum * sum) / weights.reduce((a, b) => a + b * b, 0);
};

/** Indices of `count` equally weighted draws, by one throw and even steps (systematic resampling; Kitagawa 1996). */
export const resampled = (weights: Float64Array, count: number, dice: Dice): number[] => {
  const start = dice.uniform();
  const total = weights.reduce((a, b) => a + b, 0);
  const picked: number[] = [];
  let passed = 0;
  for (let k = 0; k < weights.length && picked.length < count; k++) {
    passed += (weights[k] / total) * count;
    while (picked.length < count && start + picked.length < passed) picked.push(k);
  }
  while (picked.length < count) picked.push(weights.length - 1);
  return picked;
};
