/** Are these numbers uniform? Tests for ranks: where an honest range is honest, the truth takes every rank alike. */
import { chiSquareBelow } from './student.ts';
import { sorted } from './sample.ts';

export interface Verdict {
  readonly statistic: number;
  /** Chance of a statistic at least this large if the numbers are uniform. */
  readonly chance: number;
}

/**
 * Kolmogorov-Smirnov against the uniform distribution on (0, 1). The chance is the limit law with the small-sample
 * correction of Stephens (J. R. Stat. Soc. B 32 (1970) 115), good to two digits from five values on.
 */
export const kolmogorov = (values: readonly number[]): Verdict => {
  const n = values.length;
  if (n < 5) throw new Error(`Kolmogorov's test needs five values or more, got ${n}`);
  const statistic = sorted(values).reduce(
    (most, value, k) => Math.max(most, (k + 1) / n - value, value - k / n),
    0,
  );
  const scaled = statistic * (Math.sqrt(n) + 0.12 + 0.11 / Math.sqrt(n));
  return { statistic, chance: kolmogorovAbove(scaled) };
};

const kolmogorovAbove = (x: number): number => {
  if (x < 0.2) return 1;
  let sum = 0;
  for (let k = 1; k <= 100; k++) sum += (k % 2 === 1 ? 2 : -2) * Math.exp(-2 * k * k * x * x);
  return Math.min(1, Math.max(0, sum));
};

/** Pearson's chi-square of the counts in equal cells of (0, 1). Five expected in each cell or more. */
export const chiSquareOfCells = (values: readonly number[], cells: number): Verdict => {
  const expected = values.length / cells;
  if (expected < 5) throw new Error(`${values.length} values are too few for ${cells} cells`);
  const counts = Array.from({ length: cells }, () => 0);
  for (const value of values) counts[Math.min(cells - 1, Math.floor(value * cells))] += 1;
  const statistic = counts.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
  return { statistic, chance: 1 - chiSquareBelow(statistic, cells - 1) };
};
