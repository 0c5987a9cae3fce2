/** A mill certificate as a reading: proof stresses and Rm of a specimen of the same heat, but of another place. */
import type { Certificate } from './evidence.ts';
import { ORDINARY_RATE, rateLift } from './coupon.ts';
import { addCommon, addOwn, RATE_AT, type Reading, SHARED_COUNT } from './reading.ts';
import { FACTORS, type Factors, logStress } from '../prior/shape.ts';
import {
  logProof,
  logStrength,
  PROOF02_PLASTIC,
  PROOF10_PLASTIC,
  sharesAt,
  UNIFORM_PLASTIC,
} from '../prior/figures.ts';
import { RATE } from '../prior/prior.ts';

/**
 * Relative errors of a mill's test, standard deviations. ISO 6892-1 (annex on uncertainty) reports for such steels a
 * reproducibility between laboratories (95 %) of several per cent for proof stress and 2 to 4 % for Rm (from memory,
 * middling); half of that is taken here, most of it common to the two proof stresses.
 */
export const CERTIFICATE_ERROR = {
  proof02: 0.018,
  proof10: 0.012,
  strength: 0.008,
  proofTogether: 0.015,
  section: 0.006,
} as const;

/** Rate at which Rm is usually reached by ISO 6892-1 (range 4 of method A), 1/s. */
export const STRENGTH_RATE = 6.7e-3;

interface Figure {
  /** ln of the stated engineering stress. */
  readonly log: number;
  readonly own: number;
  readonly together: number;
  /** Rise of the curve from the reference rate to that of the test, MPa. */
  readonly lift: number;
  readonly predicted: (factors: Factors, lift: number) => number;
  /** True plastic strain at which the figure is read on a curve. */
  readonly place: (factors: Factors) => number;
}

/** The reading, or undefined where the certificate states none of Rp0.2, Rp1.0 and Rm. `near`: factors to start from. */
export const certificateReading = (
  certificate: Certificate,
  plate: number,
  near: Factors,
): Reading | undefined => {
  const figures = figuresOf(certificate);
  const rows = figures.length;
  if (rows === 0) return undefined;
  const reading = {
    origin: certificate,
    kind: 'certificate',
    plate,
    rows,
    observed: new Float64Array(rows),
    design: new Float64Array(FACTORS * rows),
    shared: new Float64Array(SHARED_COUNT * rows),
    noise: noiseOf(figures),
    piece: 'coupon',
  } as const;
  // The figures bend a little: their tangents at `near` are used, and `exact` puts them right by weights.
  const beside = figures.map((figure, k) => writeTangent(reading, figure, near, k));
  const exact = (factors: Factors, unknown: Factors): Float64Array =>
    Float64Array.from(
      figures,
      ({ predicted, lift }, k) =>
        predicted(factors, lift * (1 + RATE.deviation * unknown[RATE_AT])) - beside[k],
    );
  return { ...reading, exact };
};

/** Fills row k; gives what a figure holds besides its tangent through zero. */
const writeTangent = (
  { observed, design, shared }: Pick<Reading, 'observed' | 'design' | 'shared'>,
  { log, lift, predicted, place }: Figure,
  near: Factors,
  k: number,
): number => {
  const ep = place(near);
  const stress = Math.exp(logStress(near, ep));
  const shares = sharesAt(ep).map((share) => (share * stress) / (stress + lift));
  design.set(shares, FACTORS * k);
  shared[SHARED_COUNT * k + RATE_AT] = (lift / (stress + lift)) * RATE.deviation;
  const beside = predicted(near, lift) - shares.reduce((sum, share, j) => sum + share * near[j], 0);
  observed[k] = log - beside;
  return beside;
};

const noiseOf = (figures: readonly Figure[]): Float64Array => {
  const noise = new Float64Array(figures.length ** 2);
  addCommon(
    noise,
    figures.map(({ together }) => together),
  );
  addCommon(
    noise,
    figures.map(() => CERTIFICATE_ERROR.section),
  );
  addOwn(
    noise,
    figures.map(({ own }) => own),
  );
  return noise;
};

const figuresOf = ({ proof02, proof10, strength }: Certificate): Figure[] => {
  const figures: Figure[] = [];
  const proof = (stress: number, ep: number, own: number): Figure => ({
    log: Math.log(stress),
    own,
    together: CERTIFICATE_ERROR.proofTogether,
    lift: rateLift(ORDINARY_RATE, ep),
    predicted: (factors, lift) => logProof(factors, ep, lift),
    place: () => ep,
  });
  if (proof02 !== undefined) figures.push(proof(proof02, PROOF02_PLASTIC, CERTIFICATE_ERROR.proof02));
  if (proof10 !== undefined) figures.push(proof(proof10, PROOF10_PLASTIC, CERTIFICATE_ERROR.proof10));
  if (strength !== undefined)
    figures.push({
      log: Math.log(strength),
      own: CERTIFICATE_ERROR.strength,
      together: 0,
      lift: rateLift(STRENGTH_RATE, UNIFORM_PLASTIC),
      predicted: (factors, lift) => logStrength(factors, lift).log,
      place: (factors) => logStrength(factors, rateLift(STRENGTH_RATE, UNIFORM_PLASTIC)).plastic,
    });
  return figures;
};
