/** What a handful of numbers says. Infinity is a value (a tank that bursts grows without end) and may stand in a sample. */

export const mean = (values: readonly number[]): number => {
  if (values.length === 0) throw new Error('the mean of no values was asked for');
  return values.reduce((sum, value) => sum + value, 0) / values.length;
};

/** Variance with n - 1 below; two values or more. */
export const variance = (values: readonly number[]): number => {
  if (values.length < 2) throw new Error(`a variance needs two values or more, got ${values.length}`);
  const middle = mean(values);
  return values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1);
};

export const standardDeviation = (values: readonly number[]): number => Math.sqrt(variance(values));

export const covariance = (a: readonly number[], b: readonly number[]): number => {
  if (a.length !== b.length || a.length < 2)
    throw new Error(`a covariance needs two equally long samples, got ${a.length} and ${b.length}`);
  const [middleA, middleB] = [mean(a), mean(b)];
  return a.reduce((sum, value, k) => sum + (value - middleA) * (b[k] - middleB), 0) / (a.length - 1);
};

export const sorted = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b);

/**
 * Quantile of a rising sample: linear between the values, the first at 0 and the last at 1 (Hyndman & Fan, Am. Stat. 50
 * (1996) 361, type 7). Where a neighbour is infinite the answer is infinite as soon as that neighbour counts at all.
 */
export const quantileOf = (rising: readonly number[], p: number): number => {
  if (rising.length === 0) throw new Error('a quantile of no values was asked for');
  if (!(p >= 0 && p <= 1)) throw new Error(`a probability between 0 and 1 is wanted, got ${p}`);
  const at = p * (rising.length - 1);
  const low = Math.floor(at);
  const share = at - low;
  if (share === 0) return rising[low];
  const [a, b] = [rising[low], rising[low + 1]];
  return a === b ? a : a + share * (b - a);
};

export const quantile = (values: readonly number[], p: number): number => quantileOf(sorted(values), p);
