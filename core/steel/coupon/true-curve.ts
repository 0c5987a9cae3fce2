/** True stress against true plastic strain: measured up to uniform strain, a stated continuation beyond it. */
import type { CouponEnd } from './end.ts';
import { strainAtMaximum } from './proof.ts';
import type { CouponCurve } from './record.ts';

export interface TrueCurve {
  /** True plastic strain, strictly rising. */
  readonly plastic: readonly number[];
  /** True stress, MPa. */
  readonly stress: readonly number[];
  /** `uniform`: the curve ends at the maximum force; `record`: it ends before, where the record ends or slips. */
  readonly ends: 'uniform' | 'record';
}

/**
 * Constant volume, so it holds only while the specimen is evenly strained: the curve ends at the middle of the plateau
 * of maximum force, and before that at the last trusted point.
 */
export const trueCurveOf = (
  curve: CouponCurve,
  end: CouponEnd,
  { young, trusted }: { young: number; trusted: number },
): TrueCurve => {
  const plastic: number[] = [];
  const stress: number[] = [];
  const reach = end.uniform ? strainAtMaximum(curve, end.top) : Infinity;
  const last = Math.min(end.uniform ? curve.strain.length - 1 : end.top, trusted);
  for (let k = 0; k <= last && curve.strain[k] <= reach; k++) {
    const sigma = curve.stress[k] * (1 + curve.strain[k]);
    const ep = Math.log1p(curve.strain[k]) - sigma / young;
    if (ep <= LEAST_PLASTIC) {
      plastic[0] = Math.max(0, ep);
      stress[0] = sigma;
    } else if (ep > (plastic[plastic.length - 1] ?? 0)) {
      plastic.push(ep);
      stress.push(sigma);
    }
  }
  return { plastic, stress, ends: end.uniform && trusted >= end.top ? 'uniform' : 'record' };
};

/** Below this the plastic strain is the extensometer's noise; the last such point begins the curve. */
const LEAST_PLASTIC = 1e-4;

/** True stress (MPa) at a true plastic strain, straight between points; absent outside the measured curve. */
export const trueStressAt = ({ plastic, stress }: TrueCurve, ep: number): number | undefined => {
  const k = plastic.findIndex((value) => value >= ep);
  if (k < 0 || (k === 0 && plastic[0] > ep)) return undefined;
  if (plastic[k] === ep) return stress[k];
  const part = (ep - plastic[k - 1]) / (plastic[k] - plastic[k - 1]);
  return stress[k - 1] + part * (stress[k] - stress[k - 1]);
};

/** A guess beyond uniform strain, between two bounds. It is drawn and printed as one. */
export interface Continuation {
  /** True stress, MPa, at true total strain >= `from`. */
  readonly stress: (strain: number) => number;
  readonly lower: (strain: number) => number;
  readonly upper: (strain: number) => number;
  /** True total strain and true stress where the measured curve hands over. */
  readonly from: number;
  readonly at: number;
}

/**
 * Beyond the maximum force the slope equals the stress (Considère), and two curves leave it: the power law, which
 * falls short, and its tangent, which overshoots; `weight` of the tangent lies between 0 and 1, and without a
 * measurement in the neck nobody knows it. Form: Y. Ling, AMP J. Technol. 5 (1996) 37 (from memory, high confidence).
 * Absent where the curve does not reach uniform strain.
 */
export const continuationOf = (curve: TrueCurve, young: number, weight = 0.5): Continuation | undefined => {
  if (curve.ends !== 'uniform' || curve.plastic.length === 0) return undefined;
  if (!(weight >= 0 && weight <= 1)) throw new Error(`weight must lie between 0 and 1, got ${weight}`);
  const at = curve.stress[curve.stress.length - 1];
  const from = curve.plastic[curve.plastic.length - 1] + at / young;
  const lower = (strain: number): number => at * (strain / from) ** from;
  const upper = (strain: number): number => at * (1 + strain - from);
  const stress = (strain: number): number => weight * upper(strain) + (1 - weight) * lower(strain);
  return { stress, lower, upper, from, at };
};
