/**
 * A tensile test becomes figures after the practice of ISO 6892-1: modulus, proof strengths, Rm, Ag, A, true curve,
 * strain rate, and whether the test may speak for the steel. A bad test is an answer with findings, never a throw.
 */
import { endOf, type CouponEnd } from './end.ts';
import { implausible, verdictOn, type CouponFinding, type CouponVerdict } from './finding.ts';
import { clippedToGauge, loadingCurve, withoutLonePoints } from './curve.ts';
import { plateauOf, proofStrength, slackOf, sparseAt } from './proof.ts';
import { rateOf } from './rate.ts';
import { given, NOMINAL_YOUNG, type CouponCurve, type CouponTest } from './record.ts';
import { elasticSlope, type ElasticSlope } from './slope.ts';
import { slipsOf, type Slips } from './slip.ts';
import { trueCurveOf, type TrueCurve } from './true-curve.ts';

export interface CouponResult {
  /** Slope of the elastic part, MPa; absent where that part cannot carry one. */
  readonly young?: number;
  /** Modulus used for plastic strain: `young`, else the nominal one. */
  readonly youngUsed: number;
  /** Strain taken off the whole curve: where the elastic line meets zero stress. 0 without `young`. */
  readonly toe: number;
  /** Rp0.2 and Rp1.0, MPa. */
  readonly proof02?: number;
  readonly proof10?: number;
  /** Rm, MPa: absent where the record ends while the force still rises. */
  readonly strength?: number;
  /** Ag: plastic extension at the middle of the plateau of maximum force, as a fraction. */
  readonly uniform?: number;
  /** A: plastic extension at the last point before the break, as a fraction; see the finding `ends-before-break`. */
  readonly elongation?: number;
  /** Median strain rate between 0.2 and 10 % plastic strain, 1/s. */
  readonly rate?: number;
  /** The loading curve, strain corrected for the toe; `at` is the place in the test as given. */
  readonly curve: CouponCurve;
  /** True stress (MPa) against true plastic strain, up to uniform strain or to where the record is trusted. */
  readonly trueCurve: TrueCurve;
  readonly findings: readonly CouponFinding[];
  readonly verdict: CouponVerdict;
}

/** Evaluates one test. Throws only on arrays of unequal length or values that are not finite: our bug. */
export const evaluateCoupon = (test: CouponTest): CouponResult => {
  refuseBroken(test);
  const findings: CouponFinding[] = [];
  const whole = withoutLonePoints(test, findings);
  const clipped = clippedToGauge(whole, findings);
  const curve = loadingCurve(clipped, test.time, findings);
  const end = endOf({ whole, clipped, curve }, findings);
  const slips = slipsOf(test, curve, end, findings);
  const crosshead = test.extension === 'crosshead';
  if (crosshead) findings.push({ kind: 'crosshead' });
  const slope = crosshead ? NO_SLOPE : elasticSlope(clipped, curve, findings);
  return assembled({ test, curve, end, slips, slope, crosshead, findings });
};

const NO_SLOPE: ElasticSlope = { youngUsed: NOMINAL_YOUNG, toe: 0 };

interface Parts {
  readonly test: CouponTest;
  readonly curve: CouponCurve;
  readonly end: CouponEnd;
  readonly slips: Slips;
  readonly slope: ElasticSlope;
  readonly crosshead: boolean;
  readonly findings: CouponFinding[];
}

const assembled = (parts: Parts): CouponResult => {
  const { test, end, slope, slips, crosshead, findings } = parts;
  const curve = { ...parts.curve, strain: parts.curve.strain.map((strain) => strain - slope.toe) };
  const trusted = crosshead ? 0 : slips.first;
  const slack = crosshead ? false : slackOf(curve, slope, findings);
  const proof = (offset: number): number | undefined =>
    slack ? undefined : proofStrength(curve, slope.youngUsed, { offset, trusted });
  const { young, youngUsed, toe } = slope;
  if (proof(0.002)) sparseAt(curve, youngUsed, { offset: 0.002, of: 'Rp0.2' }, findings);
  if (proof(0.01)) sparseAt(curve, youngUsed, { offset: 0.01, of: 'Rp1.0' }, findings);
  const measured = {
    ...given('young', young),
    ...given('proof02', proof(0.002)),
    ...given('proof10', proof(0.01)),
    ...given('strength', end.strength),
    ...given('uniform', crosshead ? undefined : plateauOf(curve, end, { young: youngUsed, trusted })),
    ...given('elongation', crosshead ? undefined : elongationOf(curve, end, { young: youngUsed, trusted })),
    ...given('rate', rateOf(test, curve, youngUsed, findings)),
  };
  const trueCurve = trueCurveOf(curve, end, { young: youngUsed, trusted: slack ? 0 : trusted });
  implausible(measured, findings);
  const verdict = verdictOn({ measured, trueCurve }, findings);
  return { ...measured, youngUsed, toe, curve, trueCurve, findings, verdict };
};

const elongationOf = (
  curve: CouponCurve,
  end: CouponEnd,
  { young, trusted }: { young: number; trusted: number },
): number | undefined => {
  const last = curve.strain.length - 1;
  if (!end.elongation || trusted <= last) return undefined;
  return curve.strain[last] - curve.stress[last] / young;
};

const refuseBroken = ({ strain, stress, time }: CouponTest): void => {
  const lengths = [strain.length, stress.length, time?.length ?? strain.length];
  if (new Set(lengths).size > 1)
    throw new Error(`a coupon's arrays must be equally long, got ${lengths.join(', ')}`);
  const bad = strain.findIndex((_, k) => !Number.isFinite(strain[k] + stress[k] + (time?.[k] ?? 0)));
  if (bad >= 0)
    throw new Error(`a coupon's values must be finite: point ${bad} is ${strain[bad]}, ${stress[bad]}`);
};
