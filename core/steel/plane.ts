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

/** A rate effect takes at most nine tenths off the curve, so that no coefficient makes a metal of no strength. Our choice. */
const LEAST_SHARE = 0.1;

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

/**
 * Slots of a layer point: what goes in, and what comes out of `returnPoint`. Numbers travel in the array, since a call
 * that is not inlined would put each of them on the heap (96 kB an assembly of 160 elements).
 */
export const MERIDIONAL = 0;
export const HOOP = 1;
export const TANGENT_MM = 2;
export const TANGENT_MH = 3;
export const TANGENT_HH = 4;
/** Increments of plastic strain: meridional, hoop, equivalent. */
export const PLASTIC_M = 5;
export const PLASTIC_H = 6;
export const PLASTIC_EQ = 7;
/** Elastic trial strains: logarithmic strain less the plastic strain at the start of the step. */
export const TRIAL_M = 8;
export const TRIAL_H = 9;
/** Equivalent plastic strain at the start of the step. */
export const EQUIVALENT = 10;
/** Length of the step, s; 0 leaves the rate effect out (the curve as it stands). */
export const TIME = 11;
/** Plastic increment that is expected; saves looks at the curve, changes nothing else. */
export const GUESS = 12;
export const ANSWER_LENGTH = 13;

const NEWTON_CAP = 60;
/**
 * Nearness (of the root mean square, to one) at which one straight step more, without another look at the curve, will
 * do: it leaves 1e-6 of the stress where the curve bends most, and far less once the strains of a step have settled.
 */
const NEAR = 5e-4;
/** With a rate effect the logarithm bends: the straight step must also be so small a part of the increment. */
const NEAR_INCREMENT = 0.01;
/** A point left on the curve by the last step is elastic until it is strained further, whatever the rounding. */
const ON_THE_CURVE = 1e-7;

/** Flow stress and its slope, then sum, gap and increment of the point at hand: see the note on slots. */
const now = new Float64Array(5);
const FLOW = 0;
const SLOPE = 1;
const SUM = 2;
const GAP = 3;
const INCREMENT = 4;

/** Writes flow stress and slope at the plastic strain reached by the increment into `now`. */
function flowStress(metal: Metal, point: Float64Array): void {
  const x = now[INCREMENT];
  metal.flow.at(point[EQUIVALENT] + x, now);
  const time = point[TIME];
  if (metal.viscosity === 0 || time === 0) return;
  // Per e-fold, MPa: the proportional law's grows with the curve.
  const c = metal.proportional ? metal.viscosity * now[FLOW] : metal.viscosity;
  const efolds = Math.log(x / time + RATE_FLOOR) - metal.logReference;
  if (now[FLOW] + c * efolds < LEAST_SHARE * now[FLOW]) {
    now[FLOW] *= LEAST_SHARE;
    now[SLOPE] *= LEAST_SHARE;
    return;
  }
  if (metal.proportional) now[SLOPE] *= 1 + metal.viscosity * efolds;
  now[FLOW] += c * efolds;
  now[SLOPE] += c / (x + RATE_FLOOR * time);
}

/** The same as `returnPoint` with its input as arguments: outside hot loops. Writes into `out`. */
export function returnToYield(
  metal: Metal,
  trialM: number,
  trialH: number,
  ep: number,
  time: number,
  out: Float64Array,
  guess = 0,
): void {
  out[TRIAL_M] = trialM;
  out[TRIAL_H] = trialH;
  out[EQUIVALENT] = ep;
  out[TIME] = time;
  out[GUESS] = guess;
  returnPoint(metal, out);
}

/**
 * Stress and consistent tangent for the elastic trial strains in `point` (see the slots above), written back into it.
 *
 * The condition a/S² + b/T² = 1 (S = flow + A x, T = flow + B x) is solved as its root mean square over one, which is
 * nearly straight in x, so Newton takes one look or two. It stays inside a bracket that shrinks; 60 steps of bisection
 * alone would reach rounding, so the cap means a defect and throws.
 */
export function returnPoint(metal: Metal, point: Float64Array): void {
  const sumTrial = metal.sumModulus * (point[TRIAL_M] + point[TRIAL_H]);
  const gapTrial = metal.gapModulus * (point[TRIAL_M] - point[TRIAL_H]);
  now[SUM] = sumTrial;
  now[GAP] = gapTrial;
  const a = 0.25 * sumTrial * sumTrial;
  const b = 0.75 * gapTrial * gapTrial;
  const trial = Math.sqrt(a + b);
  let low = 0;
  // Equal stresses both ways are the softest case: there x = (trial - flow)/A, and A >= young/2.
  let high = trial / (0.5 * metal.young);
  let x = point[GUESS];
  if (!(x > 0 && x < high)) {
    if (staysElastic(metal, point, trial)) return;
    x = firstLook(metal, point, trial);
  }
  const A = metal.sumReturn;
  const B = metal.gapReturn;
  const rate = metal.viscosity > 0 && point[TIME] > 0;
  for (let look = 0; look < NEWTON_CAP; look++) {
    now[INCREMENT] = x;
    flowStress(metal, point);
    const s = now[FLOW];
    const H = now[SLOPE];
    const perS = 1 / (s + A * x);
    const perT = 1 / (s + B * x);
    const ofSum = a * perS * perS;
    const ofGap = b * perT * perT;
    const square = ofSum + ofGap;
    const ratio = Math.sqrt(square);
    const next = x + (square * (ratio - 1)) / (ofSum * perS * (H + A) + ofGap * perT * (H + B));
    const near = Math.abs(ratio - 1) < NEAR && (!rate || Math.abs(next - x) < NEAR_INCREMENT * x);
    if ((near && next > 0) || high - low < 1e-16) {
      const end = s + H * (next - x);
      now[FLOW] = end;
      now[SUM] = (sumTrial * end) / (end + A * next);
      now[GAP] = (gapTrial * end) / (end + B * next);
      now[INCREMENT] = next;
      plastic(metal, point);
      return;
    }
    if (ratio > 1) low = x;
    else high = x;
    // The guess was of a plastic step; this one may be elastic.
    if (next <= 0 && low === 0 && staysElastic(metal, point, trial)) return;
    x = next > low && next < high ? next : 0.5 * (low + high);
  }
  throw new Error(
    `plane-stress return did not settle: trial ${trial} MPa, plastic strain ${point[EQUIVALENT]}, step ${point[TIME]} s, bracket ${low}..${high}`,
  );
}

/** Writes the elastic answer where the trial stays under the curve; leaves the flow stress at rest in `now` where not. */
function staysElastic(metal: Metal, point: Float64Array, trial: number): boolean {
  now[INCREMENT] = 0;
  flowStress(metal, point);
  if (trial > now[FLOW] * (1 + ON_THE_CURVE)) return false;
  const { sumModulus: a1, gapModulus: a2 } = metal;
  point[MERIDIONAL] = 0.5 * (now[SUM] + now[GAP]);
  point[HOOP] = 0.5 * (now[SUM] - now[GAP]);
  point[TANGENT_MM] = point[TANGENT_HH] = 0.5 * (a1 + a2);
  point[TANGENT_MH] = 0.5 * (a1 - a2);
  point[PLASTIC_M] = point[PLASTIC_H] = point[PLASTIC_EQ] = 0;
  return true;
}

/** Plastic increment to start from, with the flow stress at rest in `now`. */
function firstLook(metal: Metal, point: Float64Array, trial: number): number {
  const atRest = now[FLOW];
  if (point[TIME] === 0 || metal.viscosity === 0) return (trial - atRest) / (metal.young + now[SLOPE]);
  // The logarithm is steep at rest: take the slope of the curve alone, and never a look too near zero.
  metal.flow.at(point[EQUIVALENT], now);
  return Math.max((trial - atRest) / (metal.young + now[SLOPE]), 1e-9);
}

/** Differentiates the return: d sum = P a1 d(trial) - A P m sum dx, the same for the gap, dx from consistency. */
function plastic(metal: Metal, point: Float64Array): void {
  const s = now[FLOW];
  const H = now[SLOPE];
  const sum = now[SUM];
  const gap = now[GAP];
  const x = now[INCREMENT];
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
  point[MERIDIONAL] = 0.5 * (sum + gap);
  point[HOOP] = 0.5 * (sum - gap);
  point[TANGENT_MM] = 0.5 * (d11 + d22) + d12;
  point[TANGENT_MH] = 0.5 * (d11 - d22);
  point[TANGENT_HH] = 0.5 * (d11 + d22) - d12;
  point[PLASTIC_M] = 0.5 * y * (0.5 * sum + 1.5 * gap);
  point[PLASTIC_H] = 0.5 * y * (0.5 * sum - 1.5 * gap);
  point[PLASTIC_EQ] = x;
}
