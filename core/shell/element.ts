/**
 * One element: from the strains of its layers to forces and stiffness on its two nodes.
 *
 * The layers give a work function W of five generalised strains g = (stretch e, shear gamma, curvature kappa, radius r,
 * angle phi). e and gamma depend on the line's slopes (r', z') and on phi; the slopes, kappa, r and phi depend linearly
 * on the six node displacements. The chain rule through those two maps is all there is.
 */
import {
  ANSWER_LENGTH,
  HOOP,
  MERIDIONAL,
  type Metal,
  PLASTIC_EQ,
  PLASTIC_H,
  PLASTIC_M,
  returnToYield,
  TANGENT_HH,
  TANGENT_MH,
  TANGENT_MM,
} from '../steel/plane.ts';
import type { Shell } from './shell.ts';
import type { State } from './state.ts';

/** Reused by every element of a solve. */
export interface ElementWork {
  /** Gradient of W by (r', z', kappa, r, phi). */
  readonly force: Float64Array;
  /** Hessian of W by the same five, full, row by row. */
  readonly stiffness: Float64Array;
  readonly answer: Float64Array;
  /** Gradient (5) and Hessian of W by g = (e, gamma, kappa, r, phi), upper part used. */
  readonly P: Float64Array;
}

export const elementWork = (): ElementWork => ({
  force: new Float64Array(5),
  stiffness: new Float64Array(25),
  answer: new Float64Array(ANSWER_LENGTH),
  P: new Float64Array(16),
});

// Slots of P.
const N = 0;
const M = 1;
const FR = 2;
const FP = 3;
const EE = 4;
const EK = 5;
const KK = 6;
const ER = 7;
const KR = 8;
const RR = 9;
const EP = 10;
const KP = 11;
const RP = 12;
const PP = 13;

/** Current shape of element i from the displacements of its nodes. Written into `shape`. */
export interface Shape {
  slopeR: number;
  slopeZ: number;
  kappa: number;
  r: number;
  sine: number;
  cosine: number;
  e: number;
  gamma: number;
}

export const emptyShape = (): Shape => ({
  slopeR: 0,
  slopeZ: 0,
  kappa: 0,
  r: 0,
  sine: 0,
  cosine: 0,
  e: 0,
  gamma: 0,
});

export function shapeOf(shell: Shell, i: number, move: Float64Array, shape: Shape): void {
  const a = 3 * shell.from[i];
  const b = 3 * shell.to[i];
  const L = shell.length[i];
  const phi0 = shell.angle[i];
  shape.slopeR = Math.cos(phi0) + (move[b] - move[a]) / L;
  shape.slopeZ = Math.sin(phi0) + (move[b + 1] - move[a + 1]) / L;
  shape.kappa = shell.curvature[i] + (move[b + 2] - move[a + 2]) / L;
  shape.r = shell.radius[i] + 0.5 * (move[a] + move[b]);
  const phi = phi0 + 0.5 * (move[a + 2] + move[b + 2]);
  shape.sine = Math.sin(phi);
  shape.cosine = Math.cos(phi);
  shape.e = shape.slopeR * shape.cosine + shape.slopeZ * shape.sine;
  shape.gamma = shape.slopeR * shape.sine - shape.slopeZ * shape.cosine;
}

/**
 * Runs the layers of element i from the state at the start of the step, writes stresses and plastic strains into
 * `trial`, sums P. `thinning` scales the depths (thickness over unformed thickness). False where a fibre turned inside out.
 */
export function runLayers(
  shell: Shell,
  i: number,
  shape: Shape,
  thinning: number,
  start: State,
  trial: State,
  time: number,
  work: ElementWork,
): boolean {
  const { P, answer } = work;
  const layers = shell.settings.layers;
  const metal: Metal = shell.metals[shell.metal[i]];
  const link = shell.link[i] === 1;
  P.fill(0);
  for (let point = i * layers, end = point + layers; point < end; point++) {
    const zeta = shell.depth[point] * thinning;
    const along = shape.e + zeta * shape.kappa;
    const around = shape.r + zeta * shape.sine;
    if (!(along > 0) || !(around > 0)) return false;
    const strainM = Math.log(along) - shell.logM[point];
    const strainH = link ? 0 : Math.log(around) - shell.logH[point];
    if (link) elasticLink(metal, strainM, answer);
    else
      returnToYield(
        metal,
        strainM - start.plasticM[point],
        strainH - start.plasticH[point],
        start.plasticEq[point],
        time,
        answer,
        trial.plasticEq[point] - start.plasticEq[point],
      );
    trial.plasticM[point] = start.plasticM[point] + answer[PLASTIC_M];
    trial.plasticH[point] = start.plasticH[point] + answer[PLASTIC_H];
    trial.plasticEq[point] = start.plasticEq[point] + answer[PLASTIC_EQ];
    trial.stressM[point] = answer[MERIDIONAL];
    trial.stressH[point] = answer[HOOP];
    addPoint(P, answer, shell.weight[point], zeta, 1 / along, 1 / around, shape);
  }
  return true;
}

function elasticLink(metal: Metal, strain: number, answer: Float64Array): void {
  answer.fill(0);
  answer[MERIDIONAL] = metal.young * strain;
  answer[TANGENT_MM] = metal.young;
}

function addPoint(
  P: Float64Array,
  answer: Float64Array,
  w: number,
  zeta: number,
  a: number,
  b: number,
  shape: Shape,
): void {
  const tauM = w * answer[MERIDIONAL] * a;
  const tauH = w * answer[HOOP] * b;
  const mm = w * (answer[TANGENT_MM] - answer[MERIDIONAL]) * a * a;
  const hh = w * (answer[TANGENT_HH] - answer[HOOP]) * b * b;
  const mh = w * answer[TANGENT_MH] * a * b;
  const lever = zeta * shape.cosine;
  P[N] += tauM;
  P[M] += tauM * zeta;
  P[FR] += tauH;
  P[FP] += tauH * lever;
  P[EE] += mm;
  P[EK] += mm * zeta;
  P[KK] += mm * zeta * zeta;
  P[ER] += mh;
  P[KR] += mh * zeta;
  P[RR] += hh;
  P[EP] += mh * lever;
  P[KP] += mh * lever * zeta;
  P[RP] += hh * lever;
  P[PP] += hh * lever * lever - tauH * zeta * shape.sine;
}

/**
 * Takes the pressure on a mid-surface that lies `offset` (current, mm) outside the line out of the work:
 * volume between line and mid-surface 2 pi L [r e o + (r kappa + e sin) o²/2 + kappa sin o³/3]. Returns that volume.
 */
export function offsetVolume(shape: Shape, length: number, o: number): number {
  const { e, kappa, r, sine } = shape;
  return 2 * Math.PI * length * o * (r * e + 0.5 * o * (r * kappa + e * sine) + (o * o * kappa * sine) / 3);
}

/** Adds -pressure x (that volume) to the work, by its derivatives in g. */
export function pressOffset(
  P: Float64Array,
  shape: Shape,
  length: number,
  o: number,
  pressure: number,
): void {
  const { e, kappa, r, sine, cosine } = shape;
  const c = -pressure * 2 * Math.PI * length * o;
  const o2 = 0.5 * o;
  const o3 = (o * o) / 3;
  P[N] += c * (r + o2 * sine);
  P[M] += c * (r * o2 + sine * o3);
  P[FR] += c * (e + o2 * kappa);
  P[FP] += c * cosine * (e * o2 + kappa * o3);
  P[ER] += c;
  P[KR] += c * o2;
  P[EP] += c * o2 * cosine;
  P[KP] += c * o3 * cosine;
  P[PP] -= c * sine * (e * o2 + kappa * o3);
}

/** Turns P into gradient and Hessian by (r', z', kappa, r, phi). `shear` is G k A: work shear gamma²/2. */
export function toSlopes(work: ElementWork, shape: Shape, shear: number): void {
  const { force: f, stiffness: K, P } = work;
  const { sine: s, cosine: c, e, gamma } = shape;
  const Q = shear * gamma;
  const n = P[N];
  f[0] = n * c + Q * s;
  f[1] = n * s - Q * c;
  f[2] = P[M];
  f[3] = P[FR];
  f[4] = P[FP] - n * gamma + Q * e;
  const ee = P[EE];
  // d e = (c, s, -gamma by phi), d gamma = (s, -c, e by phi).
  K[0] = ee * c * c + shear * s * s;
  K[1] = (ee - shear) * c * s;
  K[6] = ee * s * s + shear * c * c;
  K[2] = P[EK] * c;
  K[7] = P[EK] * s;
  K[12] = P[KK];
  K[3] = P[ER] * c;
  K[8] = P[ER] * s;
  K[13] = P[KR];
  K[18] = P[RR];
  const ePhi = P[EP] - ee * gamma;
  K[4] = ePhi * c + shear * e * s - n * s + Q * c;
  K[9] = ePhi * s - shear * e * c + n * c + Q * s;
  K[14] = P[KP] - P[EK] * gamma;
  K[19] = P[RP] - P[ER] * gamma;
  K[24] = P[PP] - 2 * P[EP] * gamma + ee * gamma * gamma + shear * e * e - n * e - Q * gamma;
}
