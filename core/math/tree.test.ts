import { Matrix, solve } from 'ml-matrix';
import { expect, test } from 'vitest';
import { diceOf } from './dice.ts';
import { factor, solveTree, type TreeMatrix, treeMatrix } from './tree.ts';

/** Random tree of `n` nodes: parents of higher number, the last one the root. */
function randomTree(n: number, seed: number): { matrix: TreeMatrix; dense: Matrix } {
  const dice = diceOf(seed);
  const parent = Int32Array.from({ length: n }, (_, i) => (i === n - 1 ? -1 : i + 1 + dice.below(n - 1 - i)));
  const matrix = treeMatrix(parent);
  const dense = Matrix.zeros(3 * n, 3 * n);
  for (let i = 0; i < n; i++) {
    for (let r = 0; r < 3; r++) {
      for (let c = 0; c <= r; c++) put(dense, 3 * i + r, 3 * i + c, dice.normal() + (r === c ? 9 : 0));
      if (parent[i] < 0) continue;
      for (let c = 0; c < 3; c++) put(dense, 3 * i + r, 3 * parent[i] + c, dice.normal());
    }
  }
  return { matrix: fromDense(matrix, dense), dense };
}

function put(dense: Matrix, r: number, c: number, value: number): void {
  dense.set(r, c, value);
  dense.set(c, r, value);
}

function fromDense(matrix: TreeMatrix, dense: Matrix): TreeMatrix {
  for (let i = 0; i < matrix.parent.length; i++)
    for (let k = 0; k < 9; k++) {
      const [r, c] = [Math.floor(k / 3), k % 3];
      matrix.diagonal[9 * i + k] = dense.get(3 * i + r, 3 * i + c);
      const p = matrix.parent[i];
      if (p >= 0) matrix.link[9 * i + k] = dense.get(3 * i + r, 3 * p + c);
    }
  return matrix;
}

test.each([1, 2, 3, 4, 5])('a random tree of blocks is solved as the dense matrix is (seed %i)', (seed) => {
  const n = 23 + seed;
  const { matrix, dense } = randomTree(n, seed);
  const right = Float64Array.from({ length: 3 * n }, (_, k) => Math.sin(k + seed));
  const truth = solve(dense, Matrix.columnVector([...right]));
  expect(factor(matrix)).toBe(0);
  solveTree(matrix, right);
  for (let k = 0; k < 3 * n; k++) expect(right[k]).toBeCloseTo(truth.get(k, 0), 11);
});

test('the number of negative pivots is the number of negative eigenvalues (Sylvester)', () => {
  const { matrix, dense } = randomTree(9, 17);
  // One diagonal entry pulled far down gives one negative eigenvalue, two of different blocks give two.
  for (const [place, count] of [
    [4, 1],
    [13, 2],
  ]) {
    dense.set(place, place, -40);
    fromDense(matrix, dense);
    expect(factor(matrix)).toBe(count);
  }
});

test('an indefinite tree is solved as well: past a pressure maximum the stiffness has one negative pivot', () => {
  const { matrix, dense } = randomTree(12, 29);
  dense.set(7, 7, -31);
  fromDense(matrix, dense);
  const right = Float64Array.from({ length: 36 }, (_, k) => Math.cos(2 * k));
  const truth = solve(dense, Matrix.columnVector([...right]));
  factor(matrix);
  solveTree(matrix, right);
  for (let k = 0; k < 36; k++) expect(right[k]).toBeCloseTo(truth.get(k, 0), 10);
});

test('a singular block is told, not divided by', () => {
  const matrix = treeMatrix(Int32Array.of(1, -1));
  matrix.diagonal.set([1, 2, 3, 2, 4, 6, 3, 6, 9], 0);
  matrix.diagonal.set([1, 0, 0, 0, 1, 0, 0, 0, 1], 9);
  expect(factor(matrix)).toBe(-1);
});
