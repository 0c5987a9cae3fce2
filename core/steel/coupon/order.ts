/** Order statistics of a list of numbers. */

/** Middle of the list, between the two middles of an even one; NaN of nothing. */
export const median = (values: readonly number[]): number => quantile(values, 0.5);

/** Value below which the fraction `q` of the list lies, linear between neighbours; NaN of nothing. */
export const quantile = (values: readonly number[], q: number): number => {
  const sorted = values.toSorted((a, b) => a - b);
  const place = q * (sorted.length - 1);
  const low = Math.floor(place);
  const part = place - low;
  return part === 0 ? (sorted[low] ?? Number.NaN) : sorted[low] * (1 - part) + sorted[low + 1] * part;
};

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
