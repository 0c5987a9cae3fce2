/**
 * One element: from the strains of its layers to forces and stiffness on its two nodes.
 *
 * The layers give a work function W of five generalised strains g = (stretch e, shear gamma, curvature kappa, radius r,
 * angle phi). e and gamma depend on the line's slopes (r', z') and on phi; the slopes, kappa, r and phi depend linearly
 * on the six node displacements. The chain rule through those two maps is all there is.
 */
import {
  ANSWER_LENGTH,
  EQUIVALENT,
  GUESS,
  HOOP,
  MERIDIONAL,
  type Metal,
  PLASTIC_EQ,
  PLASTIC_H,
  PLASTIC_M,
  returnPoint,
  TANGENT_HH,
  TANGENT_MH,
  TANGENT_MM,
  TIME,
  TRIAL_H,
  TRIAL_M,
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
  shape.slopeR = shell.cosine[i] + (move[b] - move[a]) / L;
  shape.slopeZ = shell.sine[i] + (move[b + 1] - move[a + 1]) / L;
  shape.kappa = shell.curvature[i] + (move[b + 2] - move[a + 2]) / L;
  shape.r = shell.radius[i] + 0.5 * (move[a] + move[b]);
  const phi = shell.angle[i] + 0.5 * (move[a + 2] + move[b + 2]);
  shape.sine = Math.sin(phi);
  shape.cosine = Math.cos(phi);
  shape.e = shape.slopeR * shape.cosine + shape.slopeZ * shape.sine;
  shape.gamma = shape.slopeR * shape.sine - shape.slopeZ * shape.cosine;
}

/**
 * Runs the layers of element i from the state at the start of the step, writes stresses and plastic strains into
 * `trial`, sums P. `thinning` scales the depths (thickness over unformed thickness). False where a fibre turned inside out.
 * The innermost loop of everything: sums stay in local numbers, arrays are named once.
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
  if (shell.link[i] === 1) return runLink(shell, i, shape, trial, work);
  const { P, answer } = work;
  const { depth, weight, logM, logH } = shell;
  const { plasticM, plasticH, plasticEq } = start;
  const { plasticM: trialM, plasticH: trialH, plasticEq: trialEq, stressM, stressH } = trial;
  const { layers } = shell.settings;
  const metal: Metal = shell.metals[shell.metal[i]];
  const { e, kappa, r, sine, cosine } = shape;
  let n = 0;
  let m = 0;
  let fr = 0;
  let fp = 0;
  let ee = 0;
  let ek = 0;
  let kk = 0;
  let er = 0;
  let kr = 0;
  let rr = 0;
  let ep = 0;
  let kp = 0;
  let rp = 0;
  let pp = 0;
  for (let point = i * layers, end = point + layers; point < end; point++) {
    const zeta = depth[point] * thinning;
    const along = e + zeta * kappa;
    const around = r + zeta * sine;
    if (!(along > 0) || !(around > 0)) return false;
    const eq = plasticEq[point];
    answer[TRIAL_M] = Math.log(along) - logM[point] - plasticM[point];
    answer[TRIAL_H] = Math.log(around) - logH[point] - plasticH[point];
    answer[EQUIVALENT] = eq;
    answer[TIME] = time;
    answer[GUESS] = trialEq[point] - eq;
    returnPoint(metal, answer);
    trialM[point] = plasticM[point] + answer[PLASTIC_M];
    trialH[point] = plasticH[point] + answer[PLASTIC_H];
    trialEq[point] = eq + answer[PLASTIC_EQ];
    const sM = (stressM[point] = answer[MERIDIONAL]);
    const sH = (stressH[point] = answer[HOOP]);
    const w = weight[point];
    const perA = 1 / along;
    const perB = 1 / around;
    const tauM = w * sM * perA;
    const tauH = w * sH * perB;
    const mm = w * (answer[TANGENT_MM] - sM) * perA * perA;
    const hh = w * (answer[TANGENT_HH] - sH) * perB * perB;
    const mh = w * answer[TANGENT_MH] * perA * perB;
    const lever = zeta * cosine;
    n += tauM;
    m += tauM * zeta;
    fr += tauH;
    fp += tauH * lever;
    ee += mm;
    ek += mm * zeta;
    kk += mm * zeta * zeta;
    er += mh;
    kr += mh * zeta;
    rr += hh;
    ep += mh * lever;
    kp += mh * lever * zeta;
    rp += hh * lever;
    pp += hh * lever * lever - tauH * zeta * sine;
  }
  P[N] = n;
  P[M] = m;
  P[FR] = fr;
  P[FP] = fp;
  P[EE] = ee;
  P[EK] = ek;
  P[KK] = kk;
  P[ER] = er;
  P[KR] = kr;
  P[RR] = rr;
  P[EP] = ep;
  P[KP] = kp;
  P[RP] = rp;
  P[PP] = pp;
  return true;
}

/** A link is elastic along the meridian and carries no hoop: its metal is counted in the wall it crosses. */
function runLink(shell: Shell, i: number, shape: Shape, trial: State, { P }: ElementWork): boolean {
  const { layers } = shell.settings;
  const { young } = shell.metals[shell.metal[i]];
  P.fill(0);
  for (let point = i * layers, end = point + layers; point < end; point++) {
    const zeta = shell.depth[point];
    const along = shape.e + zeta * shape.kappa;
    if (!(along > 0)) return false;
    const stress = young * (Math.log(along) - shell.logM[point]);
    const tau = (shell.weight[point] * stress) / along;
    const stiffness = (shell.weight[point] * (young - stress)) / (along * along);
    trial.stressM[point] = stress;
    P[N] += tau;
    P[M] += tau * zeta;
    P[EE] += stiffness;
    P[EK] += stiffness * zeta;
    P[KK] += stiffness * zeta * zeta;
  }
  return true;
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
