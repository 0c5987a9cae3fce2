/**
 * Direct solution of symmetric systems whose graph is a tree of 3 x 3 blocks: every node is tied to itself and to one
 * parent of higher number. Elimination from the leaves to the root fills nothing in, so factor and solve are linear in
 * the number of nodes. A chain is the common case, and then this is block Cholesky on a banded matrix.
 *
 * No pivoting between nodes: past a pressure maximum the matrix has one negative pivot, which L D L' takes.
 */

/** Blocks are stored row by row, nine numbers a node. */
export interface TreeMatrix {
  readonly parent: Int32Array;
  /** Diagonal blocks. After `factor`: their inverses. */
  readonly diagonal: Float64Array;
  /** Block (node, parent). After `factor`: inverse(diagonal) x block. */
  readonly link: Float64Array;
}

export function treeMatrix(parent: Int32Array): TreeMatrix {
  return {
    parent,
    diagonal: new Float64Array(9 * parent.length),
    link: new Float64Array(9 * parent.length),
  };
}

const block = new Float64Array(9);

/** Replaces the matrix by its factors. Returns the number of negative pivots (0: stable), or -1 if a block is singular. */
export function factor(matrix: TreeMatrix): number {
  const { parent, diagonal: D, link: U } = matrix;
  let negative = 0;
  for (let i = 0; i < parent.length; i++) {
    const o = 9 * i;
    const signs = invertSymmetric(D, o);
    if (signs < 0) return -1;
    negative += signs;
    const p = parent[i];
    if (p < 0) continue;
    multiply(D, U, o);
    subtractProduct(D, 9 * p, U, o);
    for (let k = 0; k < 9; k++) U[o + k] = block[k];
  }
  return negative;
}

/** block = D(o) x U(o). */
function multiply(D: Float64Array, U: Float64Array, o: number): void {
  for (let r = 0; r < 3; r++) {
    const a = D[o + 3 * r];
    const b = D[o + 3 * r + 1];
    const c = D[o + 3 * r + 2];
    block[3 * r] = a * U[o] + b * U[o + 3] + c * U[o + 6];
    block[3 * r + 1] = a * U[o + 1] + b * U[o + 4] + c * U[o + 7];
    block[3 * r + 2] = a * U[o + 2] + b * U[o + 5] + c * U[o + 8];
  }
}

/** D(p) -= U(o)' x block. */
function subtractProduct(D: Float64Array, p: number, U: Float64Array, o: number): void {
  for (let r = 0; r < 3; r++) {
    const a = U[o + r];
    const b = U[o + r + 3];
    const c = U[o + r + 6];
    D[p + 3 * r] -= a * block[0] + b * block[3] + c * block[6];
    D[p + 3 * r + 1] -= a * block[1] + b * block[4] + c * block[7];
    D[p + 3 * r + 2] -= a * block[2] + b * block[5] + c * block[8];
  }
}

/** Inverts the symmetric block at o in place by its L D L' pivots. Returns how many are negative, -1 if singular. */
function invertSymmetric(D: Float64Array, o: number): number {
  const a = D[o];
  const b = D[o + 1];
  const c = D[o + 2];
  const e = D[o + 4];
  const f = D[o + 5];
  const i = D[o + 8];
  const m1 = a * e - b * b;
  const c11 = e * i - f * f;
  const c12 = c * f - b * i;
  const c13 = b * f - c * e;
  const det = a * c11 + b * c12 + c * c13;
  if (det === 0 || !Number.isFinite(det)) return -1;
  const s = 1 / det;
  D[o] = c11 * s;
  D[o + 1] = D[o + 3] = c12 * s;
  D[o + 2] = D[o + 6] = c13 * s;
  D[o + 4] = (a * i - c * c) * s;
  D[o + 5] = D[o + 7] = (b * c - a * f) * s;
  D[o + 8] = m1 * s;
  const negativeFirst = a < 0 ? 1 : 0;
  const negativeSecond = m1 < 0 !== a < 0 ? 1 : 0;
  const negativeThird = det < 0 !== m1 < 0 ? 1 : 0;
  return negativeFirst + negativeSecond + negativeThird;
}

/** Solves in place: x holds the right side on entry (3 entries a node) and the solution on return. */
export function solveTree(factored: TreeMatrix, x: Float64Array): void {
  const { parent, diagonal: D, link: U } = factored;
  const n = parent.length;
  for (let i = 0; i < n; i++) {
    const o = 9 * i;
    const k = 3 * i;
    const p = 3 * parent[i];
    const a = x[k];
    const b = x[k + 1];
    const c = x[k + 2];
    if (p >= 0) {
      x[p] -= U[o] * a + U[o + 3] * b + U[o + 6] * c;
      x[p + 1] -= U[o + 1] * a + U[o + 4] * b + U[o + 7] * c;
      x[p + 2] -= U[o + 2] * a + U[o + 5] * b + U[o + 8] * c;
    }
    x[k] = D[o] * a + D[o + 1] * b + D[o + 2] * c;
    x[k + 1] = D[o + 3] * a + D[o + 4] * b + D[o + 5] * c;
    x[k + 2] = D[o + 6] * a + D[o + 7] * b + D[o + 8] * c;
  }
  for (let i = n - 1; i >= 0; i--) {
    const p = 3 * parent[i];
    if (p < 0) continue;
    const o = 9 * i;
    const k = 3 * i;
    const a = x[p];
    const b = x[p + 1];
    const c = x[p + 2];
    x[k] -= U[o] * a + U[o + 1] * b + U[o + 2] * c;
    x[k + 1] -= U[o + 3] * a + U[o + 4] * b + U[o + 5] * c;
    x[k + 2] -= U[o + 6] * a + U[o + 7] * b + U[o + 8] * c;
  }
}
