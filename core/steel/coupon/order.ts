/** Extremes, middles and noise of a list of numbers. */
import { quantile } from '../../stats/sample.ts';

/** Middle of the list; NaN of nothing. */
export const median = (values: readonly number[]): number =>
  values.length > 0 ? quantile(values, 0.5) : Number.NaN;

/** Place of the first greatest value; -1 of nothing. (Spreading a long record into Math.max overflows the stack.) */
export const placeOfGreatest = (values: readonly number[]): number => {
  let place = values.length - 1;
  for (let k = values.length - 1; k >= 0; k--) if (values[k] >= values[place]) place = k;
  return place;
};

export const greatest = (values: readonly number[]): number => values[placeOfGreatest(values)] ?? -Infinity;

export const least = (values: readonly number[]): number => -greatest(values.map((value) => -value));

export const indices = (count: number): number[] => Array.from({ length: count }, (_, k) => k);

/** Standard deviation of the white noise on a smooth course: middle size of the second differences. */
export const noiseOf = (values: readonly number[]): number => {
  const second = values.slice(2).map((value, k) => Math.abs(value - 2 * values[k + 1] + values[k]));
  return (median(second) || 0) / (0.6745 * Math.sqrt(6));
};

/** Middle of each point and up to two neighbours on both sides, fewer at the ends. */
export const smoothed = (values: readonly number[]): number[] =>
  values.map((_, k) => {
    const reach = Math.min(2, k, values.length - 1 - k);
    return median(values.slice(k - reach, k + reach + 1));
  });
