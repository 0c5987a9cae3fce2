/** Slips: the extension jumps while the force does not follow. (Grips that slip show as dips: see the loading curve.) */
import type { CouponEnd } from './end.ts';
import type { CouponFinding } from './finding.ts';
import { greatest, median } from './order.ts';
import { NOMINAL_YOUNG, type CouponCurve, type CouponTest } from './record.ts';

export interface Slips {
  /** Last point of the curve whose strain is trusted; Infinity where nothing slipped. */
  readonly first: number;
}

/** A jump is this many ordinary steps of its neighbourhood, on both sides of it; a gap, this many. */
const JUMP_STEPS = 3;
const GAP_STEPS = 6;
/** Least jump forward; least jump back. Smaller ones are within the extensometer's class and its noise. */
const LEAST_JUMP = 4e-4;
const LEAST_BACK = 2e-4;
/** A missing stretch of record shows the rise of force that belongs to it; a slip shows less than this part of it. */
const FOLLOWS = 0.4;

export const slipsOf = (
  test: CouponTest,
  curve: CouponCurve,
  end: CouponEnd,
  findings: CouponFinding[],
): Slips => {
  let first = Infinity;
  for (let k = 0; k < curve.strain.length - 1; k++) {
    const finding = jumpAt(test, curve, end, k);
    if (!finding) continue;
    findings.push(finding);
    if (finding.kind === 'slip') first = Math.min(first, k);
  }
  const gripped = findings.flatMap((finding) =>
    finding.kind === 'grip-slip' ? [curve.at.indexOf(finding.at)] : [],
  );
  return { first: Math.min(first, ...gripped) };
};

const jumpAt = (
  { time }: CouponTest,
  curve: CouponCurve,
  { top }: CouponEnd,
  k: number,
): CouponFinding | undefined => {
  const { strain, stress, at } = curve;
  // Where points were left out the step is larger than usual, and that was said.
  if (at[k + 1] - at[k] > 2) return undefined;
  const jump = strain[k + 1] - strain[k];
  const rise = stress[k + 1] - stress[k];
  const slip = (size: number): CouponFinding => ({
    kind: 'slip',
    at: at[k + 1],
    strain: size,
    plastic: strain[k] - stress[k] / NOMINAL_YOUNG,
  });
  if (jump < -LEAST_BACK)
    return jump < -noise(curve, k) && rise > 0.3 * NOMINAL_YOUNG * jump ? slip(jump) : undefined;
  if (jump < LEAST_JUMP) return undefined;
  const usual = ordinaryStep(strain, k);
  if (jump < JUMP_STEPS * usual) return undefined;
  const pace = time && paceOf(curve, time, k);
  const gap: CouponFinding | undefined =
    jump > GAP_STEPS * usual ? { kind: 'gap', at: at[k + 1], strain: jump } : undefined;
  if (pace !== undefined) return pace > JUMP_STEPS ? slip(jump - usual) : gap;
  const expected = tangentNear(curve, k) * jump;
  const tellable = k < top && expected > 0.004 * greatest(stress);
  return tellable && rise < FOLLOWS * expected ? slip(jump - usual) : gap;
};

/** Larger of the middle steps on either side, so that a change of recording speed is no jump. */
const ordinaryStep = (strain: readonly number[], k: number): number =>
  Math.max(middleStep(strain, k - 6, k), middleStep(strain, k + 1, k + 7));

const middleStep = (strain: readonly number[], from: number, to: number): number => {
  const near = strain.slice(Math.max(0, from), Math.max(0, to) + 1);
  return median(near.slice(1).map((value, j) => Math.abs(value - near[j]))) || 0;
};

/** Extensometer noise near a point: steps back of the same neighbourhood are no slips. */
const noise = ({ strain }: CouponCurve, k: number): number => {
  const near = strain.slice(Math.max(0, k - 10), k + 11);
  const back = near.slice(1).map((value, j) => Math.max(0, near[j] - value));
  return 4 * median(back);
};

/** Rate over the step against the usual rate about it; absent where the clock stands still. */
const paceOf = ({ strain, at }: CouponCurve, time: readonly number[], k: number): number | undefined => {
  const rate = (j: number): number => (strain[j + 1] - strain[j]) / (time[at[j + 1]] - time[at[j]]);
  const near = [-4, -3, -2, -1, 1, 2, 3, 4].map((d) => k + d).filter((j) => j >= 0 && j < strain.length - 1);
  const [before, after] = [near.filter((j) => j < k), near.filter((j) => j > k)].map((side) =>
    median(side.map(rate).filter((value) => Number.isFinite(value) && value > 0)),
  );
  const usual = Math.max(before || 0, after || 0);
  const here = rate(k);
  return Number.isFinite(here) && usual > 0 ? here / usual : undefined;
};

const tangentNear = ({ strain, stress }: CouponCurve, k: number): number => {
  const slope = (from: number, to: number): number => {
    const [a, b] = [Math.max(0, from), Math.min(strain.length - 1, to)];
    return strain[b] > strain[a] ? (stress[b] - stress[a]) / (strain[b] - strain[a]) : 0;
  };
  return Math.min(Math.abs(slope(k - 5, k)), Math.abs(slope(k + 1, k + 6)));
};
