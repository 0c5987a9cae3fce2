/**
 * J2 plasticity in plane stress, in principal axes that stay fixed: logarithmic strains in, Kirchhoff stresses out.
 *
 * Written in the sum and the gap of the two stresses the return splits into two scalars: no 3x3 is formed.
 * With y = (plastic increment)/(flow stress):  sum = sumTrial/(1 + A y),  gap = gapTrial/(1 + B y).
 * Source: Simo & Taylor, Int. J. Numer. Meth. Engng 22 (1986) 649, written here for principal axes.
 */
import type { Flow } from './hardening.ts';
import type { RateEffect } from './steel.ts';

/** A steel made ready for the inner loop. */
export interface Metal {
  readonly young: number;
  readonly poisson: number;
  readonly flow: Flow;
  /** Rise of flow stress per e-fold of rate, MPa; 0: no rate effect. */
  readonly viscosity: number;
  /** True: `viscosity` is a fraction of the flow stress per e-fold. */
  readonly proportional: boolean;
  /** Logarithm of the rate (1/s) at which the flow curve holds. */
  readonly logReference: number;
  /** Plane-stress moduli of sum and gap, and the factors A and B of the return. */
  readonly sumModulus: number;
  readonly gapModulus: number;
  readonly sumReturn: number;
  readonly gapReturn: number;
}

/**
 * Rate below which the logarithm is cut off, 1/s. Keeps the flow stress finite at rest; at 0.1 %/h (2.8e-7/s) it
 * moves the rate by 0.4 %. Our choice, no source.
 */
export const RATE_FLOOR = 1e-9;

export function metalOf(young: number, poisson: number, flow: Flow, rate?: RateEffect): Metal {
  const scratch = new Float64Array(2);
  flow.at(0.002, scratch);
  const proportional = rate?.on === 'curve';
  const perEfold = rate?.perEfold ?? 0;
  return {
    young,
    poisson,
    flow,
    viscosity: proportional ? perEfold / scratch[0] : perEfold,
    proportional,
    logReference: Math.log((rate?.reference ?? 1) + RATE_FLOOR),
    sumModulus: young / (1 - poisson),
    gapModulus: young / (1 + poisson),
    sumReturn: young / (2 * (1 - poisson)),
    gapReturn: (3 * young) / (2 * (1 + poisson)),
  };
}

/** Slots of the answer that `returnToYield` writes. */
export const MERIDIONAL = 0;
export const HOOP = 1;
export const TANGENT_MM = 2;
export const TANGENT_MH = 3;
export const TANGENT_HH = 4;
/** Increments of plastic strain: meridional, hoop, equivalent. */
export const PLASTIC_M = 5;
export const PLASTIC_H = 6;
export const PLASTIC_EQ = 7;
export const ANSWER_LENGTH = 8;

const NEWTON_CAP = 60;
const flowNow = new Float64Array(2);

/** Writes flow stress and slope at plastic strain `ep` reached by `x` within `time` (0: no rate effect) into flowNow. */
function flowStress(metal: Metal, ep: number, x: number, time: number): void {
  metal.flow.at(ep, flowNow);
  if (metal.viscosity === 0 || time === 0) return;
  const c = metal.viscosity;
  const efolds = Math.log(x / time + RATE_FLOOR) - metal.logReference;
  const rise = 1 / (x + RATE_FLOOR * time);
  if (metal.proportional) {
    flowNow[1] = flowNow[1] * (1 + c * efolds) + flowNow[0] * c * rise;
    flowNow[0] *= 1 + c * efolds;
  } else {
    flowNow[0] += c * efolds;
    flowNow[1] += c * rise;
  }
}

/**
 * Stress and consistent tangent for given elastic trial strains. Writes into `out` (see the slots above).
 *
 * @param trialM trialH  logarithmic strain less the plastic strain at the start of the step
 * @param ep    equivalent plastic strain at the start of the step
 * @param time  length of the step in s; 0 leaves the rate effect out (the curve as it stands)
 *
 * Newton runs on one scalar that falls monotonically with the plastic increment, kept inside a bracket that shrinks;
 * 60 steps of bisection alone would reach rounding, so the cap means a defect and throws.
 */
export function returnToYield(
  metal: Metal,
  trialM: number,
  trialH: number,
  ep: number,
  time: number,
  out: Float64Array,
): void {
  const a1 = metal.sumModulus;
  const a2 = metal.gapModulus;
  const sumTrial = a1 * (trialM + trialH);
  const gapTrial = a2 * (trialM - trialH);
  const trial = 0.5 * Math.sqrt(sumTrial * sumTrial + 3 * gapTrial * gapTrial);
  flowStress(metal, ep, 0, time);
  if (trial <= flowNow[0]) {
    elastic(out, sumTrial, gapTrial, a1, a2);
    return;
  }
  const A = metal.sumReturn;
  const B = metal.gapReturn;
  let low = 0;
  // Equal stresses both ways are the softest case: there x = (trial - flow)/A, and A >= young/2.
  let high = (trial - flowNow[0]) / (0.5 * metal.young);
  let x = (trial - flowNow[0]) / (metal.young + flowNow[1]);
  if (time > 0 && metal.viscosity > 0) {
    // The logarithm is steep at rest: start where the rate effect is already most of what it will be.
    metal.flow.at(ep, flowNow);
    x = Math.max(x, (trial - flowNow[0]) / (metal.young + flowNow[1]), 1e-3 * metal.viscosity / metal.young);
  }
  for (let turn = 0; turn < NEWTON_CAP; turn++) {
    flowStress(metal, ep + x, x, time);
    const s = flowNow[0];
    const H = flowNow[1];
    const y = x / s;
    const P = 1 / (1 + A * y);
    const Q = 1 / (1 + B * y);
    const sum = sumTrial * P;
    const gap = gapTrial * Q;
    const eq = 0.5 * Math.sqrt(sum * sum + 3 * gap * gap);
    const excess = eq - s;
    const G = (A * sum * sum * P + 3 * B * gap * gap * Q) / (4 * eq);
    const m = (s - x * H) / (s * s);
    if (Math.abs(excess) < 1e-10 * s || high - low < 1e-16) {
      plastic(out, sum, gap, x, y, P * a1, Q * a2, A * P * m, B * Q * m, 1 / (4 * s * (H + G * m)));
      return;
    }
    if (excess > 0) low = x;
    else high = x;
    const next = x + excess / (G * m + H);
    x = next > low && next < high ? next : 0.5 * (low + high);
  }
  throw new Error(
    `plane-stress return did not settle: trial ${trial} MPa, plastic strain ${ep}, step ${time} s, bracket ${low}..${high}`,
  );
}

function elastic(out: Float64Array, sum: number, gap: number, a1: number, a2: number): void {
  out[MERIDIONAL] = 0.5 * (sum + gap);
  out[HOOP] = 0.5 * (sum - gap);
  out[TANGENT_MM] = out[TANGENT_HH] = 0.5 * (a1 + a2);
  out[TANGENT_MH] = 0.5 * (a1 - a2);
  out[PLASTIC_M] = out[PLASTIC_H] = out[PLASTIC_EQ] = 0;
}

/** Differentiates the return: d sum = Pa d(trial sum) - A P m sum dx, the same for the gap, dx from consistency. */
function plastic(
  out: Float64Array,
  sum: number,
  gap: number,
  x: number,
  y: number,
  Pa: number,
  Qa: number,
  APm: number,
  BQm: number,
  k: number,
): void {
  const u = k * sum * Pa;
  const v = 3 * k * gap * Qa;
  const d11 = Pa - APm * sum * u;
  const d12 = -APm * sum * v;
  const d22 = Qa - BQm * gap * v;
  out[MERIDIONAL] = 0.5 * (sum + gap);
  out[HOOP] = 0.5 * (sum - gap);
  out[TANGENT_MM] = 0.5 * (d11 + d22) + d12;
  out[TANGENT_MH] = 0.5 * (d11 - d22);
  out[TANGENT_HH] = 0.5 * (d11 + d22) - d12;
  out[PLASTIC_M] = 0.5 * y * (0.5 * sum + 1.5 * gap);
  out[PLASTIC_H] = 0.5 * y * (0.5 * sum - 1.5 * gap);
  out[PLASTIC_EQ] = x;
}
