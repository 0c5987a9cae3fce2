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
/** Nearness at which one straight step more, without another look at the curve, leaves less than 1e-8 of the stress. */
const NEAR = 5e-5;
/** A point left on the curve by the last step is elastic until it is strained further, whatever the rounding. */
const ON_THE_CURVE = 1e-7;
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
 * @param guess  plastic increment that is expected; saves iterations, changes nothing else
 *
 * The condition a/S² + b/T² = 1 (S = flow + A x, T = flow + B x) is solved as its root mean square over one, which is
 * nearly straight in x, so Newton takes two looks. It stays inside a bracket that shrinks; 60 steps of bisection alone would reach rounding, so the cap means a defect and throws.
 */
export function returnToYield(
  metal: Metal,
  trialM: number,
  trialH: number,
  ep: number,
  time: number,
  out: Float64Array,
  guess = 0,
): void {
  const a1 = metal.sumModulus;
  const a2 = metal.gapModulus;
  const sumTrial = a1 * (trialM + trialH);
  const gapTrial = a2 * (trialM - trialH);
  const trial = 0.5 * Math.sqrt(sumTrial * sumTrial + 3 * gapTrial * gapTrial);
  let low = 0;
  // Equal stresses both ways are the softest case: there x = (trial - flow)/A, and A >= young/2.
  let high = trial / (0.5 * metal.young);
  let x = guess;
  if (!(guess > 0 && guess < high)) {
    flowStress(metal, ep, 0, time);
    if (trial <= flowNow[0] * (1 + ON_THE_CURVE)) {
      elastic(out, sumTrial, gapTrial, a1, a2);
      return;
    }
    x = firstLook(metal, trial, ep, time);
  }
  const A = metal.sumReturn;
  const B = metal.gapReturn;
  const a = 0.25 * sumTrial * sumTrial;
  const b = 0.75 * gapTrial * gapTrial;
  for (let look = 0; look < NEWTON_CAP; look++) {
    flowStress(metal, ep + x, x, time);
    const s = flowNow[0];
    const H = flowNow[1];
    const perS = 1 / (s + A * x);
    const perT = 1 / (s + B * x);
    const ofSum = a * perS * perS;
    const ofGap = b * perT * perT;
    const square = ofSum + ofGap;
    const ratio = Math.sqrt(square);
    const next = x + (square * (ratio - 1)) / (ofSum * perS * (H + A) + ofGap * perT * (H + B));
    if ((Math.abs(ratio - 1) < NEAR && next > 0) || high - low < 1e-16) {
      const end = s + H * (next - x);
      flowNow[0] = end;
      plastic(metal, out, (sumTrial * end) / (end + A * next), (gapTrial * end) / (end + B * next), next);
      return;
    }
    if (ratio > 1) low = x;
    else high = x;
    if (next <= 0 && low === 0) {
      // The guess was of a plastic step; this one may be elastic.
      flowStress(metal, ep, 0, time);
      if (trial <= flowNow[0] * (1 + ON_THE_CURVE)) {
        elastic(out, sumTrial, gapTrial, a1, a2);
        return;
      }
    }
    x = next > low && next < high ? next : 0.5 * (low + high);
  }
  throw new Error(
    `plane-stress return did not settle: trial ${trial} MPa, plastic strain ${ep}, step ${time} s, bracket ${low}..${high}`,
  );
}

/** Plastic increment to start from, with the flow stress at rest in flowNow. */
function firstLook(metal: Metal, trial: number, ep: number, time: number): number {
  const atRest = flowNow[0];
  if (time === 0 || metal.viscosity === 0) return (trial - atRest) / (metal.young + flowNow[1]);
  // The logarithm is steep at rest: take the slope of the curve alone, and never a look too near zero.
  metal.flow.at(ep, flowNow);
  return Math.max((trial - atRest) / (metal.young + flowNow[1]), 1e-9);
}

function elastic(out: Float64Array, sum: number, gap: number, a1: number, a2: number): void {
  out[MERIDIONAL] = 0.5 * (sum + gap);
  out[HOOP] = 0.5 * (sum - gap);
  out[TANGENT_MM] = out[TANGENT_HH] = 0.5 * (a1 + a2);
  out[TANGENT_MH] = 0.5 * (a1 - a2);
  out[PLASTIC_M] = out[PLASTIC_H] = out[PLASTIC_EQ] = 0;
}

/** Differentiates the return: d sum = P a1 d(trial) - A P m sum dx, the same for the gap, dx from consistency. */
function plastic(metal: Metal, out: Float64Array, sum: number, gap: number, x: number): void {
  const s = flowNow[0];
  const H = flowNow[1];
  const y = x / s;
  const P = 1 / (1 + metal.sumReturn * y);
  const Q = 1 / (1 + metal.gapReturn * y);
  const m = (s - x * H) / (s * s);
  const AP = metal.sumReturn * P * sum;
  const BQ = metal.gapReturn * Q * gap;
  const k = 1 / (4 * s * H + m * (AP * sum + 3 * BQ * gap));
  const Pa = P * metal.sumModulus;
  const Qa = Q * metal.gapModulus;
  const u = k * sum * Pa;
  const v = 3 * k * gap * Qa;
  const d11 = Pa - AP * m * u;
  const d12 = -AP * m * v;
  const d22 = Qa - BQ * m * v;
  out[MERIDIONAL] = 0.5 * (sum + gap);
  out[HOOP] = 0.5 * (sum - gap);
  out[TANGENT_MM] = 0.5 * (d11 + d22) + d12;
  out[TANGENT_MH] = 0.5 * (d11 - d22);
  out[TANGENT_HH] = 0.5 * (d11 + d22) - d12;
  out[PLASTIC_M] = 0.5 * y * (0.5 * sum + 1.5 * gap);
  out[PLASTIC_H] = 0.5 * y * (0.5 * sum - 1.5 * gap);
  out[PLASTIC_EQ] = x;
}
