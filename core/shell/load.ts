/** What the water does: follower pressure as the derivative of the enclosed volume, and the liquid column. */
import type { Loading, Work } from './work.ts';
import type { Shell } from './shell.ts';

/**
 * Volume under the line of element i (a conical frustum), its derivatives added to `area`, to the residual and, times
 * the pressure, to the stiffness. Symmetric, since pressure on a closed surface has a potential. Returns the volume, mm³.
 */
export function addPressure(
  shell: Shell,
  i: number,
  move: Float64Array,
  pressure: number,
  work: Work,
): number {
  const a = shell.from[i];
  const b = shell.to[i];
  const r1 = shell.R[a] + move[3 * a];
  const r2 = shell.R[b] + move[3 * b];
  const dz = shell.Z[b] + move[3 * b + 1] - shell.Z[a] - move[3 * a + 1];
  const third = Math.PI / 3;
  const cross = third * (r1 * r1 + r1 * r2 + r2 * r2);
  const g1 = third * dz * (2 * r1 + r2);
  const g2 = third * dz * (r1 + 2 * r2);
  addForce(work, 3 * a, g1, -cross, pressure);
  addForce(work, 3 * b, g2, cross, pressure);
  const { diagonal: D, link: U } = work.matrix;
  const p = pressure * third;
  const A = 9 * a;
  const B = 9 * b;
  D[A] -= 2 * p * dz;
  D[B] -= 2 * p * dz;
  U[A] -= p * dz;
  addTwice(D, A, p * (2 * r1 + r2));
  addTwice(D, B, -p * (r1 + 2 * r2));
  U[A + 1] -= p * (2 * r1 + r2);
  U[A + 3] += p * (r1 + 2 * r2);
  return cross * dz;
}

function addForce(work: Work, k: number, byR: number, byZ: number, pressure: number): void {
  work.area[k] += byR;
  work.area[k + 1] += byZ;
  work.residual[k] -= pressure * byR;
  work.residual[k + 1] -= pressure * byZ;
}

/** Adds to the (r, z) and (z, r) entries of the diagonal block at o. */
function addTwice(D: Float64Array, o: number, value: number): void {
  D[o + 1] += value;
  D[o + 3] += value;
}

/**
 * Liquid column: pressure rises by `weight` per mm below the gauge. Potential weight x (gauge V - integral of z dV),
 * with integral of z dV = pi dz (z1 A0 + dz A1), A0 = (r1² + r1 r2 + r2²)/3, A1 = (r1² + 2 r1 r2 + 3 r2²)/12.
 */
export function addHead(shell: Shell, i: number, move: Float64Array, loading: Loading, work: Work): void {
  const a = shell.from[i];
  const b = shell.to[i];
  const r1 = shell.R[a] + move[3 * a];
  const r2 = shell.R[b] + move[3 * b];
  const z1 = shell.Z[a] + move[3 * a + 1] - loading.gauge;
  const dz = shell.Z[b] + move[3 * b + 1] - loading.gauge - z1;
  const A0 = (r1 * r1 + r1 * r2 + r2 * r2) / 3;
  const A1 = (r1 * r1 + 2 * r1 * r2 + 3 * r2 * r2) / 12;
  const A0a = (2 * r1 + r2) / 3;
  const A0b = (r1 + 2 * r2) / 3;
  const A1a = (r1 + r2) / 6;
  const A1b = (r1 + 3 * r2) / 6;
  // Heights are taken from the gauge, so the potential is -weight x moment and its forces are + weight x derivative.
  const w = loading.weight * Math.PI;
  const { residual } = work;
  const { diagonal: D, link: U } = work.matrix;
  residual[3 * a] += w * dz * (z1 * A0a + dz * A1a);
  residual[3 * b] += w * dz * (z1 * A0b + dz * A1b);
  residual[3 * a + 1] += w * ((dz - z1) * A0 - 2 * dz * A1);
  residual[3 * b + 1] += w * (z1 * A0 + 2 * dz * A1);
  const A = 9 * a;
  const B = 9 * b;
  D[A] += w * dz * ((2 * z1) / 3 + dz / 6);
  D[B] += w * dz * ((2 * z1) / 3 + dz / 2);
  U[A] += w * dz * (z1 / 3 + dz / 6);
  D[A + 4] += w * 2 * (A1 - A0);
  D[B + 4] += w * 2 * A1;
  U[A + 4] += w * (A0 - 2 * A1);
  addTwice(D, A, w * ((dz - z1) * A0a - 2 * dz * A1a));
  addTwice(D, B, w * (z1 * A0b + 2 * dz * A1b));
  U[A + 1] += w * (z1 * A0a + 2 * dz * A1a);
  U[A + 3] += w * ((dz - z1) * A0b - 2 * dz * A1b);
}
