import { describe, expect, test } from 'vitest';
import { cholesky, inverseOf, logDeterminant, solveCholesky } from './cholesky.ts';

// Small enough to check by hand: det = 4 (9 x 14 - 36) - 2 (28 - 18) + 3 (12 - 27) = 360 - 20 - 45 = 295.
const A = Float64Array.of(4, 2, 3, 2, 9, 6, 3, 6, 14);

describe('Cholesky', () => {
  test('the factor multiplies back to the matrix', () => {
    const L = cholesky(A, 3);
    for (let i = 0; i < 3; i++)
      for (let j = 0; j < 3; j++) {
        let sum = 0;
        for (let k = 0; k < 3; k++) sum += L[3 * i + k] * L[3 * j + k];
        expect(sum).toBeCloseTo(A[3 * i + j], 12);
      }
  });

  test('it solves, inverts and gives the determinant', () => {
    const L = cholesky(A, 3);
    const x = solveCholesky(L, Float64Array.of(17, 38, 57)); // A (1, 2, 3)
    [1, 2, 3].forEach((value, k) => expect(x[k]).toBeCloseTo(value, 12));
    expect(Math.exp(logDeterminant(L, 3))).toBeCloseTo(295, 9);
    expect(inverseOf(L, 3)[0]).toBeCloseTo((9 * 14 - 36) / 295, 12);
    expect(inverseOf(L, 3)[1]).toBeCloseTo(-(2 * 14 - 18) / 295, 12);
  });

  test('a matrix that is not definite is named with its pivot', () => {
    expect(() => cholesky(Float64Array.of(1, 2, 2, 1), 2)).toThrow('pivot 1 is -3');
  });
});
