/** Cubic through points that never overshoots them: between rising points the curve rises. Linear beyond both ends. */

export interface Cubic {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly slope: Float64Array;
}

/**
 * Monotone cubic through (x, y); x strictly rising, two points or more.
 * Slopes after Fritsch & Carlson (SIAM J. Numer. Anal. 17, 1980, 238), in the weighted harmonic form of
 * Fritsch & Butland (SIAM J. Sci. Stat. Comput. 5, 1984, 300).
 */
export const monotoneCubic = (xs: readonly number[], ys: readonly number[]): Cubic => {
  const n = xs.length;
  if (n < 2 || ys.length !== n)
    throw new Error(`a curve needs two points or more, got ${n} x and ${ys.length} y`);
  for (let i = 0; i < n; i++) {
    if (!Number.isFinite(xs[i]) || !Number.isFinite(ys[i]))
      throw new Error(`point ${i} is not a number: ${xs[i]}, ${ys[i]}`);
    if (i > 0 && xs[i] <= xs[i - 1])
      throw new Error(`x must rise, but x[${i}] = ${xs[i]} follows ${xs[i - 1]}`);
  }
  const x = Float64Array.from(xs);
  const y = Float64Array.from(ys);
  const slope = new Float64Array(n);
  writeSlopes({ x, y, slope });
  return { x, y, slope };
};

/** Writes value and slope of the curve at `at` to out[0] and out[1]. Allocates nothing. */
export const writeCubic = (curve: Cubic, at: number, out: Float64Array): void => {
  const { x, y, slope } = curve;
  const last = x.length - 1;
  if (at <= x[0] || at >= x[last]) {
    const end = at <= x[0] ? 0 : last;
    out[0] = y[end] + slope[end] * (at - x[end]);
    out[1] = slope[end];
    return;
  }
  writeCubicIn(curve, intervalOf(x, at), at, out);
};

/** The same where the interval is known: x[i] <= at < x[i + 1]. For many points that rise. */
export const writeCubicIn = ({ x, y, slope }: Cubic, i: number, at: number, out: Float64Array): void => {
  const h = x[i + 1] - x[i];
  writeHermite(y[i], y[i + 1], slope[i], slope[i + 1], h, (at - x[i]) / h, out);
};

/** Cubic Hermite on one interval of width h at the fraction s: value to out[0], slope to out[1]. */
export const writeHermite = (
  y0: number,
  y1: number,
  slope0: number,
  slope1: number,
  h: number,
  s: number,
  out: Float64Array,
): void => {
  const rise = (y1 - y0) / h;
  const b = 3 * rise - 2 * slope0 - slope1;
  const c = slope0 + slope1 - 2 * rise;
  out[0] = y0 + h * s * (slope0 + s * (b + s * c));
  out[1] = slope0 + s * (2 * b + 3 * s * c);
};

/** Index i with x[i] <= at < x[i + 1], by halving; `at` lies inside the range. */
const intervalOf = (x: Float64Array, at: number): number => {
  let low = 0;
  let high = x.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (x[middle] <= at) low = middle;
    else high = middle;
  }
  return low;
};

/** Slopes of a curve whose points were written into it: for hot code that makes the same curve again and again. */
export const writeSlopes = ({ x, y, slope }: Cubic): void => {
  const n = x.length;
  const rise = (i: number): number => (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
  if (n === 2) return void slope.fill(rise(0));
  for (let i = 1; i < n - 1; i++) {
    slope[i] = innerSlope(x[i] - x[i - 1], x[i + 1] - x[i], rise(i - 1), rise(i));
  }
  slope[0] = endSlope(x[1] - x[0], x[2] - x[1], rise(0), rise(1));
  slope[n - 1] = endSlope(x[n - 1] - x[n - 2], x[n - 2] - x[n - 3], rise(n - 2), rise(n - 3));
};

const innerSlope = (before: number, after: number, riseBefore: number, riseAfter: number): number => {
  if (riseBefore * riseAfter <= 0) return 0;
  const a = 2 * after + before;
  const b = after + 2 * before;
  return (a + b) / (a / riseBefore + b / riseAfter);
};

/** One-sided three-point slope, held within the limit of monotony (three times the rise of its interval). */
const endSlope = (own: number, next: number, ownRise: number, nextRise: number): number => {
  const slope = ((2 * own + next) * ownRise - own * nextRise) / (own + next);
  if (slope * ownRise <= 0) return 0;
  const limit = 3 * ownRise;
  return Math.abs(slope) > Math.abs(limit) ? limit : slope;
};
