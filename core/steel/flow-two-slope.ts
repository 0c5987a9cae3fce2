/**
 * The two-slope curve of the ASME code (VIII-2 Annex 3-D, VIII-3 KM-620) turned round: the code gives strain from
 * stress, the shell wants stress from plastic strain. Source key: asme-viii-2.
 */
import { root } from '../math/root.ts';
import { writeHermite } from '../math/spline.ts';
import type { Flow } from './hardening.ts';

/** Parameters of the curve for austenitic steel. */
export interface TwoSlope {
  readonly m1: number;
  readonly A1: number;
  readonly m2: number;
  readonly A2: number;
  /** True stress at Rm, MPa: the curve ends here. */
  readonly trueUltimate: number;
  /** Middle and half width (MPa) of the passage from the first slope to the second. */
  readonly middle: number;
  readonly halfWidth: number;
}

/** Plastic strain of the proportional limit, and offset strain of Rp0.2. */
const PROPORTIONAL = 2e-5;
const OFFSET = 0.002;

/** Constants from the engineering stresses Rp0.2 and Rm (MPa), with m2 of stainless steel, 0.75 (1 - R). */
export const twoSlopeOf = (Rp02: number, Rm: number): TwoSlope => {
  if (!(Rp02 > 0 && Rm > Rp02))
    throw new Error(`Rm must exceed Rp0.2 > 0, got Rp0.2 ${Rp02} and Rm ${Rm} MPa`);
  const R = Rp02 / Rm;
  const K = 1.5 * R ** 1.5 - 0.5 * R ** 2.5 - R ** 3.5;
  const m1 = (Math.log(R) + PROPORTIONAL - OFFSET) / Math.log(Math.log1p(PROPORTIONAL) / Math.log1p(OFFSET));
  const m2 = 0.75 * (1 - R);
  return {
    m1,
    A1: (Rp02 * (1 + OFFSET)) / Math.log1p(OFFSET) ** m1,
    m2,
    A2: (Rm * Math.exp(m2)) / m2 ** m2,
    trueUltimate: Rm * Math.exp(m2),
    middle: Rp02 + K * (Rm - Rp02),
    halfWidth: (K * (Rm - Rp02)) / 2,
  };
};

/** True plastic strain of the code's curve at a true stress (MPa). */
export const twoSlopePlastic = (curve: TwoSlope, stress: number): number => {
  const blend = Math.tanh((stress - curve.middle) / curve.halfWidth);
  const first = (stress / curve.A1) ** (1 / curve.m1);
  const second = (stress / curve.A2) ** (1 / curve.m2);
  return (first * (1 - blend) + second * (1 + blend)) / 2;
};

const INTERVALS = 256;

/**
 * The curve as a flow law: read off at equal steps of ln(plastic strain) and joined by cubics that carry the exact
 * slopes (error under 1e-7). Under 2e-5, where the code has no plastic strain, it goes on along its tangent; beyond
 * the true stress at Rm, where the code's curve ends, it stays on its last slope and `evidence` says where.
 */
export const twoSlopeFlow = (Rp02: number, Rm: number, factor: number): Flow => {
  const curve = twoSlopeOf(Rp02, Rm);
  const evidence = twoSlopePlastic(curve, curve.trueUltimate);
  const start = Math.log(PROPORTIONAL);
  const h = (Math.log(evidence) - start) / INTERVALS;
  const stress = new Float64Array(INTERVALS + 1);
  const rise = new Float64Array(INTERVALS + 1);
  for (let i = 0; i <= INTERVALS; i++) {
    const plastic = Math.exp(start + i * h);
    stress[i] = factor * stressAt(curve, plastic);
    rise[i] = factor * riseAt(curve, stress[i] / factor, plastic);
  }
  const firstSlope = rise[0] / PROPORTIONAL;
  const lastSlope = rise[INTERVALS] / evidence;
  return {
    evidence,
    at: (ep, out) => {
      if (ep <= PROPORTIONAL) {
        out[0] = stress[0] + firstSlope * (ep - PROPORTIONAL);
        out[1] = firstSlope;
      } else if (ep >= evidence) {
        out[0] = stress[INTERVALS] + lastSlope * (ep - evidence);
        out[1] = lastSlope;
      } else {
        const place = (Math.log(ep) - start) / h;
        const i = Math.min(Math.floor(place), INTERVALS - 1);
        writeHermite(stress[i], stress[i + 1], rise[i], rise[i + 1], h, place - i, out);
        out[1] /= ep;
      }
    },
  };
};

const stressAt = (curve: TwoSlope, plastic: number): number =>
  root((stress) => twoSlopePlastic(curve, stress) - plastic, 0, 1.05 * curve.trueUltimate);

/** d stress / d ln(plastic strain) at a point of the curve. */
const riseAt = (curve: TwoSlope, stress: number, plastic: number): number => {
  const blend = Math.tanh((stress - curve.middle) / curve.halfWidth);
  const first = (stress / curve.A1) ** (1 / curve.m1);
  const second = (stress / curve.A2) ** (1 / curve.m2);
  const plasticPerStress =
    (first * (1 - blend)) / (2 * curve.m1 * stress) +
    (second * (1 + blend)) / (2 * curve.m2 * stress) +
    ((second - first) * (1 - blend * blend)) / (2 * curve.halfWidth);
  return plastic / plasticPerStress;
};
