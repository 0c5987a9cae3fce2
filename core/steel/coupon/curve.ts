/** The record of a test up to the break, without lone wrong points, and up to where the extensometer came off. */
import type { CouponFinding } from './finding.ts';
import { greatest, indices, least, median, placeOfGreatest, smoothed } from './order.ts';
import { NOMINAL_YOUNG, type CouponCurve, type CouponRecord, type CouponTest } from './record.ts';

/** A break is a fall of force by a quarter from one point to the next that never comes back. */
const BREAK_FALL = 0.75;

/** The record up to the break, without the points that one channel alone has wrong. */
export const withoutLonePoints = (test: CouponTest, findings: CouponFinding[]): CouponRecord => {
  const last = lastBeforeBreak(test.stress);
  const record = { strain: test.strain.slice(0, last + 1), stress: test.stress.slice(0, last + 1) };
  const keep: number[] = [];
  const judge = lonePointJudge(record);
  for (let k = 0; k <= last; k++) {
    const of = judge(k);
    if (of === undefined) keep.push(k);
    else findings.push({ kind: 'lone-point', at: k, of, value: record[of][k] });
  }
  return { ...picked({ ...record, at: indices(last + 1) }, keep), broke: last < test.stress.length - 1 };
};

const lastBeforeBreak = (stress: readonly number[]): number => {
  const top = placeOfGreatest(smoothed(stress));
  let later = -Infinity;
  let last = stress.length - 1;
  for (let k = stress.length - 1; k > top; k--) {
    later = Math.max(later, stress[k]);
    if (later < BREAK_FALL * stress[k - 1]) last = k - 1;
  }
  return last;
};

/** A lone point lies this many ordinary steps off the line between its neighbours, and at least this far. */
const LONE_STEPS = 8;
const LONE_STRAIN = 5e-4;
const LONE_STRESS = 0.015;
/** Its neighbours lie at most this part of its distance from each other. */
const AGREEING = 0.3;

/** A true excursion (unloading, a shaken specimen) moves both channels by the elastic ratio; a wrong figure moves one. */
const lonePointJudge = ({ strain, stress }: { strain: readonly number[]; stress: readonly number[] }) => {
  const floor = {
    stress: LONE_STRESS * median(stress.toSorted((a, b) => b - a).slice(0, 5)),
    strain: LONE_STRAIN,
  };
  return (k: number): 'strain' | 'stress' | undefined => {
    const strainOff = offNeighbours(strain, k);
    const stressOff = offNeighbours(stress, k);
    if (stressOff > floor.stress && strainOff < (0.3 * stressOff) / NOMINAL_YOUNG)
      return stressOff > LONE_STEPS * ordinaryStep(stress, k) ? 'stress' : undefined;
    if (strainOff > floor.strain && stressOff < 0.3 * strainOff * NOMINAL_YOUNG)
      return strainOff > LONE_STEPS * ordinaryStep(strain, k) ? 'strain' : undefined;
    return undefined;
  };
};

/** Distance from the middle of the two neighbours; 0 at the ends and where the neighbours disagree. */
const offNeighbours = (values: readonly number[], k: number): number => {
  if (k === 0 || k === values.length - 1) return 0;
  const off = Math.abs(values[k] - (values[k - 1] + values[k + 1]) / 2);
  return Math.abs(values[k + 1] - values[k - 1]) < AGREEING * off ? off : 0;
};

const ordinaryStep = (values: readonly number[], k: number): number => {
  const near = values.slice(Math.max(0, k - 10), k + 11);
  return median(near.slice(1).map((value, j) => Math.abs(value - near[j])));
};

/** Fewest points that an extension stands still for before the extensometer is taken to be off. */
const STILL_POINTS = 5;

/** The record up to where the extensometer was taken off: after that only the force speaks. */
export const clippedToGauge = (record: CouponRecord, findings: CouponFinding[]): CouponRecord => {
  const { strain, stress } = record;
  let from = strain.length - 1;
  while (from > 0 && strain[from - 1] === strain[strain.length - 1]) from--;
  const still = stress.slice(from);
  const moved = greatest(still) - least(still);
  if (still.length < STILL_POINTS || moved < 0.02 * greatest(stress)) return record;
  findings.push({ kind: 'gauge-off', at: record.at[from], strain: strain[from] });
  return { ...picked(record, indices(from + 1)), broke: false };
};

/** The points of a curve at the places `keep`. */
export const picked = (curve: CouponCurve, keep: readonly number[]): CouponCurve => ({
  strain: keep.map((k) => curve.strain[k]),
  stress: keep.map((k) => curve.stress[k]),
  at: keep.map((k) => curve.at[k]),
});
