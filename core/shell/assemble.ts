/** All elements summed: inner forces, pressure, liquid head, stiffness, volume. */
import { treeMatrix } from '../math/tree.ts';
import {
  elementWork,
  emptyShape,
  offsetVolume,
  pressOffset,
  runLayers,
  shapeOf,
  toSlopes,
} from './element.ts';
import { addHead, addPressure } from './load.ts';
import type { Shell } from './shell.ts';
import type { State } from './state.ts';
import type { Loading, Work } from './work.ts';

export function workFor(shell: Shell): Work {
  const size = 3 * shell.mesh.nodes;
  return {
    matrix: treeMatrix(shell.parent),
    residual: new Float64Array(size),
    area: new Float64Array(size),
    step: new Float64Array(size),
    border: new Float64Array(size),
    thinning: new Float64Array(shell.length.length).fill(1),
    element: elementWork(),
    shape: emptyShape(),
    volume: 0,
  };
}

/**
 * Thickness of each element for an incompressible wall at these displacements. Held during Newton's iterations: its
 * change moves layers by t/r times the strain increment, and the predictor already carries most of it.
 */
export function thinWalls(shell: Shell, move: Float64Array, work: Work): void {
  const { shape, thinning } = work;
  for (let i = 0; i < thinning.length; i++) {
    shapeOf(shell, i, move, shape);
    thinning[i] = shell.link[i] === 1 ? 1 : shell.radius[i] / (shape.r * shape.e);
  }
}

/** Fills residual, area, matrix and volume for the displacements in `trial`; false where a fibre turned inside out. */
export function assemble(
  shell: Shell,
  start: State,
  trial: State,
  loading: Loading,
  time: number,
  work: Work,
): boolean {
  work.residual.fill(0);
  work.area.fill(0);
  work.matrix.diagonal.fill(0);
  work.volume = 0;
  for (let i = 0; i < shell.length.length; i++) {
    shapeOf(shell, i, trial.move, work.shape);
    if (!runLayers(shell, i, work.shape, work.thinning[i], start, trial, time, work.element)) return false;
    if (shell.wet[i] === 1) pressElementOffset(shell, i, loading.pressure, work);
    toSlopes(work.element, work.shape, shell.shear[i]);
    scatter(shell, i, work);
    if (shell.wet[i] === 1) {
      work.volume += addPressure(shell, i, trial.move, loading.pressure, work);
      if (loading.weight > 0) addHead(shell, i, trial.move, loading, work);
    }
  }
  return true;
}

function pressElementOffset(shell: Shell, i: number, pressure: number, work: Work): void {
  const o = shell.offset[i] * work.thinning[i];
  if (o === 0) return;
  const { shape } = work;
  const L = shell.length[i];
  pressOffset(work.element.P, shape, L, o, pressure);
  work.volume += offsetVolume(shape, L, o);
  addOffsetArea(shell, i, o, work);
}

/** Derivative of the offset volume by the node displacements: only the terms in r and e, the rest is (o/r)². */
function addOffsetArea(shell: Shell, i: number, o: number, work: Work): void {
  const { shape, area } = work;
  const c = 2 * Math.PI * shell.length[i] * o;
  const a = 3 * shell.from[i];
  const b = 3 * shell.to[i];
  const L = shell.length[i];
  const o2 = 0.5 * o;
  const o3 = (o * o) / 3;
  const byE = c * (shape.r + o2 * shape.sine);
  const byK = (c * (shape.r * o2 + shape.sine * o3)) / L;
  const byR = 0.5 * c * (shape.e + o2 * shape.kappa);
  const byPhi = 0.5 * (c * shape.cosine * (shape.e * o2 + shape.kappa * o3) - byE * shape.gamma);
  area[a] += byR - (byE * shape.cosine) / L;
  area[b] += byR + (byE * shape.cosine) / L;
  area[a + 1] -= (byE * shape.sine) / L;
  area[b + 1] += (byE * shape.sine) / L;
  area[a + 2] += byPhi - byK;
  area[b + 2] += byPhi + byK;
}

/**
 * From (r', z', kappa, r, phi) to the two nodes: slopes and curvature are differences over L, r and phi are means.
 * With d = Hessian part of differences / L², m = mixed / 2L, s = part of means / 4:
 * K11 = d - m - m' + s, K22 = d + m + m' + s, K12 = -d - m + m' + s (m: row of a difference, column of a mean).
 */
function scatter(shell: Shell, i: number, work: Work): void {
  const { force: f, stiffness: K } = work.element;
  const { residual } = work;
  const { diagonal: D, link: U } = work.matrix;
  const L = shell.length[i];
  const a = shell.from[i];
  const b = shell.to[i];
  const f0 = f[0] / L;
  const f1 = f[1] / L;
  const f2 = f[2] / L;
  residual[3 * a] += 0.5 * f[3] - f0;
  residual[3 * a + 1] -= f1;
  residual[3 * a + 2] += 0.5 * f[4] - f2;
  residual[3 * b] += 0.5 * f[3] + f0;
  residual[3 * b + 1] += f1;
  residual[3 * b + 2] += 0.5 * f[4] + f2;
  const q = 1 / (L * L);
  const h = 0.5 / L;
  const d00 = K[0] * q;
  const d01 = K[1] * q;
  const d02 = K[2] * q;
  const d11 = K[6] * q;
  const d12 = K[7] * q;
  const d22 = K[12] * q;
  // Mixed: differences (r', z', kappa) by means (r, phi), columns 0 and 2 of a node.
  const m00 = K[3] * h;
  const m02 = K[4] * h;
  const m10 = K[8] * h;
  const m12 = K[9] * h;
  const m20 = K[13] * h;
  const m22 = K[14] * h;
  const s00 = 0.25 * K[18];
  const s02 = 0.25 * K[19];
  const s22 = 0.25 * K[24];
  const A = 9 * a;
  const B = 9 * b;
  D[A] += d00 - 2 * m00 + s00;
  D[A + 4] += d11;
  D[A + 8] += d22 - 2 * m22 + s22;
  addPair(D, A + 1, A + 3, d01 - m10);
  addPair(D, A + 2, A + 6, d02 - m02 - m20 + s02);
  addPair(D, A + 5, A + 7, d12 - m12);
  D[B] += d00 + 2 * m00 + s00;
  D[B + 4] += d11;
  D[B + 8] += d22 + 2 * m22 + s22;
  addPair(D, B + 1, B + 3, d01 + m10);
  addPair(D, B + 2, B + 6, d02 + m02 + m20 + s02);
  addPair(D, B + 5, B + 7, d12 + m12);
  U[A] = -d00 + s00;
  U[A + 1] = -d01 + m10;
  U[A + 2] = -d02 - m02 + m20 + s02;
  U[A + 3] = -d01 - m10;
  U[A + 4] = -d11;
  U[A + 5] = -d12 - m12;
  U[A + 6] = -d02 + m02 - m20 + s02;
  U[A + 7] = -d12 + m12;
  U[A + 8] = -d22 + s22;
}

function addPair(D: Float64Array, one: number, other: number, value: number): void {
  D[one] += value;
  D[other] += value;
}
