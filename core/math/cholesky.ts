/** Dense symmetric positive definite systems, a few dozen unknowns. Matrices are stored row by row. */

/** Lower factor L with A = L L', the upper part zero. Throws where a pivot is not positive: A was not definite. */
export const cholesky = (A: Float64Array, n: number): Float64Array => {
  const L = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = A[i * n + j];
      for (let k = 0; k < j; k++) sum -= L[i * n + k] * L[j * n + k];
      if (i > j) L[i * n + j] = sum / L[j * n + j];
      else if (sum > 0) L[i * n + i] = Math.sqrt(sum);
      else throw new Error(`matrix of order ${n} is not positive definite: pivot ${i} is ${sum}`);
    }
  }
  return L;
};

/** Solves L x = b; writes x over b. */
export const solveLower = (L: Float64Array, b: Float64Array): Float64Array => {
  const n = b.length;
  for (let i = 0; i < n; i++) {
    let sum = b[i];
    for (let k = 0; k < i; k++) sum -= L[i * n + k] * b[k];
    b[i] = sum / L[i * n + i];
  }
  return b;
};

/** Solves L' x = b; writes x over b. */
export const solveUpper = (L: Float64Array, b: Float64Array): Float64Array => {
  const n = b.length;
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i];
    for (let k = i + 1; k < n; k++) sum -= L[k * n + i] * b[k];
    b[i] = sum / L[i * n + i];
  }
  return b;
};

/** Solves A x = b with A = L L'. */
export const solveCholesky = (L: Float64Array, b: Float64Array): Float64Array =>
  solveUpper(L, solveLower(L, Float64Array.from(b)));

/** Inverse of A = L L'. */
export const inverseOf = (L: Float64Array, n: number): Float64Array => {
  const inverse = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    const column = new Float64Array(n);
    column[j] = 1;
    solveUpper(L, solveLower(L, column));
    for (let i = 0; i < n; i++) inverse[i * n + j] = column[i];
  }
  return inverse;
};

/** Logarithm of the determinant of A = L L'. */
export const logDeterminant = (L: Float64Array, n: number): number => {
  let sum = 0;
  for (let i = 0; i < n; i++) sum += Math.log(L[i * n + i]);
  return 2 * sum;
};
