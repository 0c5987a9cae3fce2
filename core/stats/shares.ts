/** Which input owes how much of a range: shares of the variance, fair to inputs that move together. */
import { cholesky, solveLower } from '../math/cholesky.ts';
import { normalQuantile } from './normal.ts';

export interface Share {
  readonly name: string;
  /** 0 to 1; all shares and what is left unexplained sum to one. */
  readonly share: number;
}

export interface Group {
  readonly name: string;
  /** One or more inputs that belong together, each as a column over the draws. */
  readonly columns: readonly (readonly number[])[];
}

/**
 * Shares of the variance of `values` (as normal scores, so that Infinity counts as the largest) by linear regression on
 * the groups: each group's gain in explained variance, averaged over every order in which groups could be added
 * (Lindeman, Merenda & Gold 1980; the same as Shapley values). At most ten groups. Largest share first.
 */
export const varianceShares = (
  values: readonly number[],
  groups: readonly Group[],
): { readonly shares: readonly Share[]; readonly unexplained: number } => {
  if (groups.length > 10)
    throw new Error(`shares are worked out for at most ten groups, got ${groups.length}`);
  const alive = groups.filter(({ columns }) => columns.some(moves));
  const explained = explainedBySubset(normalScores(values), alive);
  const shares = alive.map(({ name }, g) => ({ name, share: shapley(explained, alive.length, g) }));
  const idle = groups.filter((group) => !alive.includes(group)).map(({ name }) => ({ name, share: 0 }));
  return {
    shares: [...shares, ...idle].sort((a, b) => b.share - a.share),
    unexplained: 1 - explained[explained.length - 1],
  };
};

/** Share of the variance of `values` (as normal scores) that a linear regression on the columns explains. */
export const explainedShare = (
  values: readonly number[],
  columns: readonly (readonly number[])[],
): number => {
  const alive = columns.filter(moves);
  return alive.length === 0
    ? 0
    : explainedBySubset(normalScores(values), [{ name: 'all', columns: alive }])[1];
};

const moves = (column: readonly number[]): boolean => column.some((value) => value !== column[0]);

/** Each value replaced by the standard normal quantile of its rank; equal values share their middle rank. */
export const normalScores = (values: readonly number[]): number[] => {
  const order = values
    .map((_, k) => k)
    .sort((a, b) => (values[a] < values[b] ? -1 : values[a] > values[b] ? 1 : 0));
  const scores = values.map(() => 0);
  for (let from = 0; from < order.length; ) {
    let to = from;
    while (to + 1 < order.length && values[order[to + 1]] === values[order[from]]) to++;
    const score = normalQuantile(((from + to) / 2 + 0.5) / order.length);
    for (let k = from; k <= to; k++) scores[order[k]] = score;
    from = to + 1;
  }
  return scores;
};

/** Explained share for every subset of the groups, by its bits. */
const explainedBySubset = (scores: readonly number[], groups: readonly Group[]): number[] => {
  const owner = groups.flatMap(({ columns }, g) => columns.filter(moves).map(() => g));
  const columns = groups.flatMap(({ columns: own }) => own.filter(moves)).map(standardised);
  const target = standardised(scores);
  const correlation = columns.map((a) => columns.map((b) => inner(a, b)));
  const withTarget = columns.map((column) => inner(column, target));
  return Array.from({ length: 2 ** groups.length }, (_, subset) => {
    const chosen = owner.flatMap((g, k) => ((subset >> g) & 1 ? [k] : []));
    if (chosen.length === 0) return 0;
    const n = chosen.length;
    // A hair on the diagonal keeps columns that repeat each other solvable.
    const R = Float64Array.from(
      { length: n * n },
      (__, i) => correlation[chosen[Math.floor(i / n)]][chosen[i % n]],
    );
    for (let i = 0; i < n; i++) R[n * i + i] += 1e-9;
    const white = solveLower(
      cholesky(R, n),
      Float64Array.from(chosen, (k) => withTarget[k]),
    );
    return white.reduce((sum, x) => sum + x * x, 0);
  });
};

const shapley = (explained: readonly number[], count: number, group: number): number => {
  let sum = 0;
  for (let subset = 0; subset < explained.length; subset++) {
    if ((subset >> group) & 1) continue;
    const size = bitsIn(subset);
    sum += (explained[subset | (1 << group)] - explained[subset]) / (count * choose(count - 1, size));
  }
  return sum;
};

const bitsIn = (x: number): number => (x === 0 ? 0 : (x & 1) + bitsIn(x >> 1));

const choose = (n: number, k: number): number => {
  let ways = 1;
  for (let i = 1; i <= k; i++) ways = (ways * (n - k + i)) / i;
  return ways;
};

/** Mean 0 and sum of squares 1. */
const standardised = (column: readonly number[]): number[] => {
  const middle = column.reduce((a, b) => a + b, 0) / column.length;
  const size = Math.sqrt(column.reduce((sum, value) => sum + (value - middle) ** 2, 0));
  return column.map((value) => (value - middle) / size);
};

const inner = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, k) => sum + value * b[k], 0);
