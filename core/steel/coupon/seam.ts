/** Coupons pulled across the seam, judged beside coupons of the plate; and coupons preloaded as a stretch would. */
import { median } from './order.ts';
import { given } from './record.ts';
import { trueStressAt, type TrueCurve } from './true-curve.ts';

/** True plastic strains of a stretch at which seam and plate are compared. */
export const STRETCH_STRAINS = [0.01, 0.02, 0.03, 0.05, 0.07] as const;

/** Scatter between coupons of one plate is about 2 %: a smaller difference is none. Common practice, no source. */
const EVEN = 0.02;

/** What the seam needs of an evaluated test. */
export interface SeamFigures {
  readonly strength?: number;
  readonly uniform?: number;
  readonly elongation?: number;
  readonly youngUsed: number;
  readonly trueCurve: TrueCurve;
}

export type BrokeIn = 'seam' | 'heat-affected zone' | 'plate';

/** Where seam metal lies within the gauge length; both mm. */
export interface SeamPlace {
  readonly seamWidth: number;
  readonly gauge: number;
}

export interface SeamMatch {
  readonly plastic: number;
  /** Flow stress over that of the plate at the same plastic strain: of the seam metal, or of the gauge as a whole. */
  readonly ratio: number;
  readonly verdict: 'over' | 'even' | 'under';
}

export interface SeamResult {
  /** Rm across the seam over the middle Rm of the plate coupons. */
  readonly strengthFactor?: number;
  readonly match: readonly SeamMatch[];
  /** `metal`: seam and plate were told apart in series; `gauge`: the average over the gauge length, which hides the seam. */
  readonly matchOf: 'metal' | 'gauge';
  /** Middle of the match ratios: what the seam's flow curve is to the plate's in a stretch. */
  readonly flowFactor?: number;
  /** Ag and A over those of the plate. */
  readonly uniformFactor?: number;
  readonly elongationFactor?: number;
  readonly broke: BrokeIn | 'not stated';
}

/** Compares one seam coupon with coupons of the same plate; with no plate coupon there is nothing to compare with. */
export const seamResult = (
  seam: SeamFigures,
  plates: readonly SeamFigures[],
  { place, broke }: { readonly place?: SeamPlace; readonly broke?: BrokeIn } = {},
): SeamResult => {
  const match = STRETCH_STRAINS.flatMap((ep) => matchAt(ep, { seam, plates, place }));
  const factor = (key: 'strength' | 'uniform' | 'elongation'): number | undefined => {
    const own = seam[key];
    const plate = median(plates.flatMap((coupon) => coupon[key] ?? []));
    return own === undefined || Number.isNaN(plate) ? undefined : own / plate;
  };
  return {
    ...given('strengthFactor', factor('strength')),
    match,
    matchOf: place ? 'metal' : 'gauge',
    ...given('flowFactor', match.length > 0 ? median(match.map(({ ratio }) => ratio)) : undefined),
    ...given('uniformFactor', factor('uniform')),
    ...given('elongationFactor', factor('elongation')),
    broke: broke ?? 'not stated',
  };
};

interface Pair {
  readonly seam: SeamFigures;
  readonly plates: readonly SeamFigures[];
  readonly place: SeamPlace | undefined;
}

const matchAt = (ep: number, { seam, plates, place }: Pair): SeamMatch[] => {
  const plate = plateAt(plates, ep);
  const own = trueStressAt(place ? seamMetal(seam, plates, place) : seam.trueCurve, ep);
  if (own === undefined || plate === undefined) return [];
  const ratio = own / plate;
  return [{ plastic: ep, ratio, verdict: ratio > 1 + EVEN ? 'over' : ratio < 1 - EVEN ? 'under' : 'even' }];
};

/** Middle true stress of the plate coupons; absent where none of them reaches. */
const plateAt = (plates: readonly SeamFigures[], ep: number): number | undefined => {
  const stresses = plates.flatMap(({ trueCurve }) => trueStressAt(trueCurve, ep) ?? []);
  return stresses.length > 0 ? median(stresses) : undefined;
};

/**
 * Seam and plate lie in series under the same force and began with the same section, so at each engineering stress the
 * strain of the gauge is theirs averaged by length. The plate's share is taken off, which leaves the seam metal's.
 */
const seamMetal = (
  seam: SeamFigures,
  plates: readonly SeamFigures[],
  { seamWidth, gauge }: SeamPlace,
): TrueCurve => {
  const share = Math.min(1, seamWidth / gauge);
  const strainOfPlate = inverseOf(plates);
  const { plastic, stress } = seam.trueCurve;
  const metal: { plastic: number[]; stress: number[] } = { plastic: [], stress: [] };
  plastic.forEach((whole, k) => {
    const point = engineeringOf(whole, stress[k], seam.youngUsed);
    const strain = (point.strain - (1 - share) * strainOfPlate(point.stress)) / share;
    const sigma = point.stress * (1 + strain);
    const ep = Math.log1p(strain) - sigma / seam.youngUsed;
    if (!(ep > (metal.plastic[metal.plastic.length - 1] ?? 0))) return;
    metal.plastic.push(ep);
    metal.stress.push(sigma);
  });
  return { ...metal, ends: seam.trueCurve.ends };
};

const engineeringOf = (
  plastic: number,
  stress: number,
  young: number,
): { strain: number; stress: number } => {
  const strain = Math.expm1(plastic + stress / young);
  return { strain, stress: stress / (1 + strain) };
};

/** Plastic strains at which the plate's middle curve is laid down before it is read the other way round. */
const LADDER = [
  0.0002, 0.0005, 0.001, 0.002, 0.003, 0.005, 0.0075, 0.01, 0.015, 0.02, 0.03, 0.04, 0.055, 0.075, 0.1, 0.13,
  0.17, 0.22, 0.28, 0.34, 0.4,
] as const;

/** Engineering strain of the plate at an engineering stress: elastic below its curve, NaN beyond it. */
const inverseOf = (plates: readonly SeamFigures[]): ((stress: number) => number) => {
  const young = median(plates.map(({ youngUsed }) => youngUsed));
  const rungs = LADDER.flatMap((ep) => {
    const stress = plateAt(plates, ep);
    return stress === undefined ? [] : [engineeringOf(ep, stress, young)];
  });
  return (stress) => {
    const k = rungs.findIndex((rung) => rung.stress >= stress);
    if (k <= 0) return k === 0 ? stress / young : Number.NaN;
    const [low, high] = [rungs[k - 1], rungs[k]];
    return low.strain + ((stress - low.stress) / (high.stress - low.stress)) * (high.strain - low.strain);
  };
};

/** What a preload did: the coupon was pulled to a stress (MPa) or strain, let go, and tested. */
export interface PreloadResult {
  /** Rp0.2 after the preload over the plate's. */
  readonly proofFactor?: number;
  /** Rp0.2 after the preload over the preload stress: at 1 or above the strengthening stayed. */
  readonly kept?: number;
  /** Ag that is left, and what the plate had. */
  readonly uniformLeft?: number;
  readonly uniformOfPlate?: number;
}

export const preloadResult = (
  after: SeamFigures & { readonly proof02?: number },
  plates: readonly (SeamFigures & { readonly proof02?: number })[],
  preloadStress?: number,
): PreloadResult => {
  const middle = (values: readonly number[]): number | undefined =>
    values.length > 0 ? median(values) : undefined;
  const proof = middle(plates.flatMap(({ proof02 }) => proof02 ?? []));
  const over = (a: number | undefined, b: number | undefined): number | undefined =>
    a === undefined || b === undefined ? undefined : a / b;
  return {
    ...given('proofFactor', over(after.proof02, proof)),
    ...given('kept', over(after.proof02, preloadStress)),
    ...given('uniformLeft', after.uniform),
    ...given('uniformOfPlate', middle(plates.flatMap(({ uniform }) => uniform ?? []))),
  };
};
