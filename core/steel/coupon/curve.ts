/** From record to loading curve: up to the break, without lone wrong points, loops and dips, while the gauge was on. */
import type { CouponFinding } from './finding.ts';
import { greatest, indices, least, median, noiseOf, placeOfGreatest, smoothed } from './order.ts';
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

/** Up and down below this part of the highest stress is shaking at low load and stays in. */
const SHAKEN = 0.25;

/**
 * Points of a loop or dip are left out of the curve and each is a finding. Where the force dips and comes back at a
 * much larger extension the metal did not follow: `grip-slip`.
 */
export const loadingCurve = (
  record: CouponRecord,
  time: readonly number[] | undefined,
  findings: CouponFinding[],
): CouponCurve => withoutDips(withoutLoops(record, findings), time, findings);

/** Falls of strain smaller than this are noise of the extensometer, not unloading. */
const LOOP_STRAIN = 1.5e-4;

const withoutLoops = (record: CouponRecord, findings: CouponFinding[]): CouponCurve => {
  const { strain, stress, at } = record;
  const low = SHAKEN * greatest(stress);
  const keep: number[] = [];
  let far = 0;
  for (let k = 0; k < strain.length; k++) {
    if (stress[far] > low && unloads(record, far, k)) {
      const back = backOnCurve(record, far, k);
      while (keep.length > 0 && keep[keep.length - 1] > far) keep.pop();
      if (back === strain.length) {
        findings.push(endWithoutReturn(record, far));
        break;
      }
      findings.push({ kind: 'loop', at: at[far], from: stress[far], to: least(stress.slice(far, back)) });
      k = back;
    }
    keep.push(k);
    if (strain[k] >= strain[far]) far = k;
  }
  return picked(record, keep);
};

const unloads = ({ strain, stress }: CouponCurve, far: number, k: number): boolean => {
  const back = strain[far] - strain[k];
  return back > LOOP_STRAIN && stress[far] - stress[k] > 0.3 * NOMINAL_YOUNG * back;
};

const backOnCurve = ({ strain, stress }: CouponCurve, far: number, from: number): number => {
  let k = from;
  while (k < strain.length && strain[k] < strain[far] && stress[k] < stress[far]) k++;
  return k;
};

/** A break with the gauge already unloading by a tenth means that the neck was elsewhere. */
const endWithoutReturn = (record: CouponRecord, far: number): CouponFinding => {
  const last = record.stress[record.stress.length - 1];
  return record.broke || last > 0.5 * record.stress[far]
    ? { kind: 'outside-gauge', at: record.at[far] }
    : { kind: 'let-go', at: record.at[far], stress: record.stress[far] };
};

/** A dip takes away this part of the force, and more than this many times the noise of the force. */
const DIP = 0.02;
const DIP_NOISE = 8;
/** The force is back when it is this near to what it was. */
const BACK = 0.995;

/** Dips before the maximum: a pause, or grips that slipped. */
const withoutDips = (
  curve: CouponCurve,
  time: readonly number[] | undefined,
  findings: CouponFinding[],
): CouponCurve => {
  const { stress } = curve;
  const top = placeOfGreatest(stress);
  const noise = DIP_NOISE * noiseOf(stress);
  const out = new Set<number>();
  let high = 0;
  for (let k = 1; k <= top; k++) {
    if (stress[k] < BACK * stress[high]) continue;
    const drop = stress[high] - least(stress.slice(high, k + 1));
    if (drop > Math.max(DIP * stress[high], noise) && stress[high] > SHAKEN * stress[top]) {
      findings.push(dipFinding(curve, time, { high, back: k, drop }));
      for (let j = high + 1; j < k; j++) out.add(j);
      high = k;
    } else if (stress[k] >= stress[high]) high = k;
  }
  return out.size === 0
    ? curve
    : picked(
        curve,
        indices(stress.length).filter((k) => !out.has(k)),
      );
};

/** Extension that runs on by more than this in a dip, and by more than so many ordinary steps, was not the metal's. */
const RAN_ON = 0.005;
const RAN_STEPS = 4;
/** Where the clock shows that it ran on at less than this part of its usual rate, the pull itself had paused. */
const PAUSED = 0.7;

interface Dip {
  readonly high: number;
  readonly back: number;
  readonly drop: number;
}

const dipFinding = (
  curve: CouponCurve,
  time: readonly number[] | undefined,
  { high, back, drop }: Dip,
): CouponFinding => {
  const { strain, stress, at } = curve;
  const ran = strain[back] - strain[high];
  const before = indices(Math.min(5, high)).map((j) => high - j);
  const usual = median(before.map((k) => Math.abs(strain[k] - strain[k - 1]))) || 0;
  const pace = (from: number, to: number): number =>
    time ? (strain[to] - strain[from]) / (time[at[to]] - time[at[from]]) : Infinity;
  const paused = time && pace(high, back) < PAUSED * median(before.map((k) => pace(k - 1, k)));
  const plastic = strain[high] - stress[high] / NOMINAL_YOUNG;
  return !paused && ran > Math.max(RAN_ON, RAN_STEPS * usual)
    ? { kind: 'grip-slip', at: at[high], drop, strain: ran, plastic }
    : { kind: 'dip', at: at[high], drop };
};

/** The points of a curve at the places `keep`. */
const picked = (curve: CouponCurve, keep: readonly number[]): CouponCurve => ({
  strain: keep.map((k) => curve.strain[k]),
  stress: keep.map((k) => curve.stress[k]),
  at: keep.map((k) => curve.at[k]),
});
