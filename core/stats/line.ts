/** Least squares: the straight line, the plane, and how much of the scatter it explains. */

export interface Regression {
  /** One per column, in the order of the columns. */
  readonly coefficients: readonly number[];
  /** Standard deviation of the residuals. */
  readonly residual: number;
  /** Share of the variance explained, 0 to 1; the first column is taken to be the constant. */
  readonly explained: number;
  /** Inverse of X'X: times residual squared it is the covariance of the coefficients. Row by row. */
  readonly spread: Float64Array;
}

/**
 * Fits y = sum of coefficient x column by Householder reflections (Golub & Van Loan, Matrix Computations, 5.3), which
 * keep twice the digits of the normal equations. Columns are equally long; the first is usually all ones.
 * Throws where a column is (to 1e-12) a combination of the ones before it.
 */
export const regression = (columns: readonly (readonly number[])[], y: readonly number[]): Regression => {
  const rows = y.length;
  const n = columns.length;
  if (rows <= n) throw new Error(`a regression on ${n} columns needs more than ${n} rows, got ${rows}`);
  const R = columns.map((column) => Float64Array.from(column));
  const q = Float64Array.from(y);
  const diagonal = new Float64Array(n);
  for (let k = 0; k < n; k++) diagonal[k] = reflect(R, q, k);
  const coefficients = backSubstitution(R, diagonal, q);
  let left = 0;
  for (let i = n; i < rows; i++) left += q[i] * q[i];
  const middle = y.reduce((sum, value) => sum + value, 0) / rows;
  const total = y.reduce((sum, value) => sum + (value - middle) ** 2, 0);
  return {
    coefficients,
    residual: Math.sqrt(left / (rows - n)),
    explained: total > 0 ? 1 - left / total : 0,
    spread: inverseGram(R, diagonal),
  };
};

/** Turns column k onto its axis and every later column and y with it. Gives the diagonal entry of R. */
const reflect = (columns: readonly Float64Array[], q: Float64Array, k: number): number => {
  const v = columns[k];
  const whole = Math.hypot(...v);
  let square = 0;
  for (let i = k; i < v.length; i++) square += v[i] * v[i];
  const size = Math.sqrt(square);
  if (!(size > 1e-12 * whole))
    throw new Error(`column ${k} of the regression is a combination of earlier ones`);
  const diagonal = v[k] > 0 ? -size : size;
  v[k] -= diagonal;
  const scale = 1 / (-diagonal * v[k]);
  for (const target of [...columns.slice(k + 1), q]) {
    let dot = 0;
    for (let i = k; i < v.length; i++) dot += v[i] * target[i];
    for (let i = k; i < v.length; i++) target[i] -= scale * dot * v[i];
  }
  return diagonal;
};

const backSubstitution = (
  R: readonly Float64Array[],
  diagonal: Float64Array,
  right: Float64Array,
): number[] => {
  const n = R.length;
  const x = Array.from({ length: n }, () => 0);
  for (let i = n - 1; i >= 0; i--) {
    let sum = right[i];
    for (let j = i + 1; j < n; j++) sum -= R[j][i] * x[j];
    x[i] = sum / diagonal[i];
  }
  return x;
};

const inverseGram = (R: readonly Float64Array[], diagonal: Float64Array): Float64Array => {
  const n = R.length;
  const inverse = Array.from({ length: n }, (_, k) => {
    const unit = new Float64Array(n);
    unit[k] = 1;
    return backSubstitution(R, diagonal, unit);
  });
  const gram = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) for (let k = 0; k < n; k++) gram[i * n + j] += inverse[k][i] * inverse[k][j];
  return gram;
};
