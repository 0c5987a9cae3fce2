/** A mill certificate as a reading: proof stresses and Rm of a specimen of the same heat, but of another place. */
import type { Certificate } from './evidence.ts';
import { ORDINARY_RATE, rateLift } from './coupon.ts';
import { addCommon, addOwn, RATE_AT, type Reading, SHARED_COUNT } from './reading.ts';
import { FACTORS, type Factors } from '../prior/shape.ts';
import { logProof, logStrength, PROOF02_PLASTIC, PROOF10_PLASTIC, sharesAt } from '../prior/figures.ts';
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
  readonly rate: number;
  readonly predicted: (factors: Factors) => number;
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
  const design = new Float64Array(FACTORS * rows);
  const shared = new Float64Array(SHARED_COUNT * rows);
  const observed = new Float64Array(rows);
  figures.forEach((figure, k) => {
    const shares = sharesAt(figure.place(near));
    design.set(shares, FACTORS * k);
    const along = shares.reduce((sum, share, j) => sum + share * near[j], 0);
    const lift = liftOf(figure, near);
    // The figure bends a little: its tangent at `near` is used, and `exact` puts it right.
    observed[k] = figure.log - lift - figure.predicted(near) + along;
    shared[SHARED_COUNT * k + RATE_AT] = lift * RATE.deviation;
  });
  const noise = new Float64Array(rows * rows);
  addCommon(
    noise,
    figures.map((figure) => figure.together),
  );
  addCommon(
    noise,
    figures.map(() => CERTIFICATE_ERROR.section),
  );
  addOwn(
    noise,
    figures.map((figure) => figure.own),
  );
  const exact = (factors: Factors, unknown: Factors): Float64Array =>
    Float64Array.from(figures, (figure, k) => {
      const tangent = observed[k] - figure.log + liftOf(figure, near);
      return figure.predicted(factors) + tangent + shared[SHARED_COUNT * k + RATE_AT] * unknown[RATE_AT];
    });
  return {
    origin: certificate,
    kind: 'certificate',
    plate,
    rows,
    observed,
    design,
    shared,
    noise,
    piece: 'coupon',
    exact,
  };
};

const figuresOf = ({ proof02, proof10, strength }: Certificate): Figure[] => {
  const figures: Figure[] = [];
  const proof = (stress: number, ep: number, own: number): Figure => ({
    log: Math.log(stress),
    own,
    together: CERTIFICATE_ERROR.proofTogether,
    rate: ORDINARY_RATE,
    predicted: (factors) => logProof(factors, ep),
    place: () => ep,
  });
  if (proof02 !== undefined) figures.push(proof(proof02, PROOF02_PLASTIC, CERTIFICATE_ERROR.proof02));
  if (proof10 !== undefined) figures.push(proof(proof10, PROOF10_PLASTIC, CERTIFICATE_ERROR.proof10));
  if (strength !== undefined)
    figures.push({
      log: Math.log(strength),
      own: CERTIFICATE_ERROR.strength,
      together: 0,
      rate: STRENGTH_RATE,
      predicted: (factors) => logStrength(factors).log,
      place: (factors) => logStrength(factors).plastic,
    });
  return figures;
};

const liftOf = (figure: Figure, near: Factors): number =>
  rateLift(figure.rate, figure.place(near), Math.exp(figure.predicted(near) + figure.place(near)));
