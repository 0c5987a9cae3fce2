/** Proof strengths by the offset line, and the middle of the plateau of maximum force. */
import type { CouponEnd } from './end.ts';
import type { CouponFinding } from './finding.ts';
import { greatest, noiseOf, smoothed } from './order.ts';
import type { CouponCurve } from './record.ts';
import type { ElasticSlope } from './slope.ts';

/**
 * Stress (MPa) where the curve meets the line of slope `young` offset by `offset`; straight between points.
 * Absent where the record begins beyond it, never gets there, or is no longer trusted there.
 */
export const proofStrength = (
  curve: CouponCurve,
  young: number,
  { offset, trusted }: { offset: number; trusted: number },
): number | undefined => {
  const { strain, stress } = curve;
  const plastic = (k: number): number => strain[k] - stress[k] / young;
  const k = crossing(curve, young, offset);
  if (k <= 0 || k > trusted) return undefined;
  const part = (offset - plastic(k - 1)) / (plastic(k) - plastic(k - 1));
  return stress[k - 1] + part * (stress[k] - stress[k - 1]);
};

/** First reading at or beyond the offset line; -1 where there is none. */
const crossing = ({ strain, stress }: CouponCurve, young: number, offset: number): number =>
  strain.findIndex((value, k) => value - stress[k] / young >= offset);

/** Two points further apart than this part of the stress between them leave the reading to the straight line. */
const SPARSE = 0.08;

/** Adds a finding where a proof strength lies between two points that are far apart: the curve bulges above them. */
export const sparseAt = (
  curve: CouponCurve,
  young: number,
  { offset, of }: { offset: number; of: 'Rp0.2' | 'Rp1.0' },
  findings: CouponFinding[],
): void => {
  const k = crossing(curve, young, offset);
  const [from, to] = [curve.stress[k - 1], curve.stress[k]];
  if (k > 0 && to - from > SPARSE * to) findings.push({ kind: 'sparse', of, from, to });
};

/** Over 0.2 % of strain beyond 0.2 % proof, annealed or cold-worked austenitic steel hardens by less than a fifth. */
const STEEPEST_AFTER_YIELD = 1.35;
/** A beginning that is off by this much strain moves Rp0.2 of annealed steel by about one per cent. */
const TOE_WORTH_SAYING = 2e-4;

/**
 * Without a slope nothing is shifted, so a slack beginning would put the offset line into the slack: then no proof
 * strength is given (true). Smaller shifts are left, and said.
 */
export const slackOf = (curve: CouponCurve, slope: ElasticSlope, findings: CouponFinding[]): boolean => {
  const k = crossing(curve, slope.youngUsed, 0.002);
  if (slope.young !== undefined || k <= 0) return false;
  const { strain, stress } = curve;
  // From the reading above the crossing on: between readings far apart the straight line is low, not slack.
  const later = stress.findIndex((_, j) => strain[j] >= strain[k] + 0.002);
  const beyond = later < 0 ? greatest(stress) : straightTo(curve, k, later);
  if (stress[k] <= 0 || beyond > STEEPEST_AFTER_YIELD * stress[k]) {
    findings.push({ kind: 'slack' });
    return true;
  }
  const low = stress[k];
  const off = strainAtStress(curve, 0.4 * low) - (0.4 * low) / slope.youngUsed;
  if (Math.abs(off) > TOE_WORTH_SAYING) findings.push({ kind: 'toe-left', strain: off });
  return false;
};

/** Stress 0.2 % of strain beyond reading k, on the straight line to the next reading there. */
const straightTo = ({ strain, stress }: CouponCurve, k: number, later: number): number => {
  const part = (strain[k] + 0.002 - strain[later - 1]) / (strain[later] - strain[later - 1]);
  return stress[later - 1] + part * (stress[later] - stress[later - 1]);
};

const strainAtStress = ({ strain, stress }: CouponCurve, level: number): number => {
  const k = Math.max(
    1,
    stress.findIndex((value) => value > level),
  );
  const part = (level - stress[k - 1]) / (stress[k] - stress[k - 1]);
  return strain[k - 1] + part * (strain[k] - strain[k - 1]);
};

/** The plateau is where the force is within this part, or its own noise, of its maximum. ISO 6892-1 takes its middle; the width is ours. */
const PLATEAU = 0.9995;

/** Strain at the middle of the plateau of maximum force; at the maximum itself where the plateau's end was not seen. */
export const strainAtMaximum = ({ strain, stress }: CouponCurve, top: number): number => {
  const even = smoothed(stress);
  const highest = greatest(even);
  const level = Math.min(PLATEAU * highest, highest - noiseOf(stress));
  const first = even.findIndex((value) => value >= level);
  const last = even.findLastIndex((value) => value >= level);
  return last === stress.length - 1 ? strain[top] : (strain[first] + strain[last]) / 2;
};

/** Ag as a fraction: plastic extension at the middle of the plateau. */
export const plateauOf = (
  curve: CouponCurve,
  end: CouponEnd,
  { young, trusted }: { young: number; trusted: number },
): number | undefined => {
  if (!end.uniform || end.top > trusted) return undefined;
  return strainAtMaximum(curve, end.top) - curve.stress[end.top] / young;
};
