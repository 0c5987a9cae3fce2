/** The elastic part: its slope where it can carry one, and where its line meets zero stress. */
import type { CouponFinding } from './finding.ts';
import { greatest, least } from './order.ts';
import { NOMINAL_YOUNG, type CouponCurve } from './record.ts';

/** A slope outside these, MPa, is that of a slipping or bent specimen, not of the steel (limits of this project). */
export const YOUNG_RANGE = [160_000, 230_000] as const;

/** A line through fewer points says nothing of its own scatter. Common practice, no source. */
const FEWEST_POINTS = 8;
/**
 * Largest standard error of the slope over the slope: that of ISO 6892-1 Annex G (from memory, high confidence). A slope
 * 10 % out moves Rp0.2 of annealed steel by about 1 %, a toe with it by more.
 */
const LARGEST_SCATTER = 0.01;
/** The two halves of a straight part have slopes this near to each other; beyond it the line bends. */
const LARGEST_BEND = 0.12;

export interface ElasticSlope {
  readonly young?: number;
  readonly youngUsed: number;
  readonly toe: number;
}

/**
 * Least squares over windows of stress below yield; the window with the surest slope wins. `record` still holds loops
 * and shaking at low load: they are elastic too. The toe shift is given only with a slope.
 */
export const elasticSlope = (
  record: CouponCurve,
  curve: CouponCurve,
  findings: CouponFinding[],
): ElasticSlope => {
  const scale = stressAtOnePercent(curve);
  const fits = windowsOf(elasticPoints(record, HIGH[HIGH.length - 1] * scale), scale);
  const enough = fits.filter((fit) => fit.points >= FEWEST_POINTS && fit.span >= NARROWEST * scale);
  const best = enough.toSorted((a, b) => doubt(a) - doubt(b))[0];
  const trouble = troubleWith(best, fits);
  if (trouble) {
    findings.push(trouble);
    return { youngUsed: NOMINAL_YOUNG, toe: 0 };
  }
  if (Math.abs(best.zero) > TOE_WORTH_SAYING) findings.push({ kind: 'toe', strain: best.zero });
  return { young: best.young, youngUsed: best.young, toe: best.zero };
};

/** Shifts below this move Rp0.2 by less than the reading of an extensometer of class 1 (ISO 9513). */
const TOE_WORTH_SAYING = 1e-4;

const troubleWith = (best: Line | undefined, fits: readonly Line[]): CouponFinding | undefined => {
  const points = greatest([0, ...fits.map((fit) => fit.points)]);
  if (!best) return { kind: 'no-slope', why: 'few', points };
  if (best.scatter > LARGEST_SCATTER || best.bend > LARGEST_BEND)
    return { kind: 'no-slope', why: 'poor', points: best.points, scatter: Math.max(best.scatter, best.bend) };
  const inside = best.young >= YOUNG_RANGE[0] && best.young <= YOUNG_RANGE[1];
  return inside ? undefined : { kind: 'no-slope', why: 'outside', young: best.young };
};

/** Stress at 1 % strain beyond the elastic part, MPa: a measure of yield that neither toe nor slope upsets. */
const stressAtOnePercent = ({ strain, stress }: CouponCurve): number => {
  const highest = greatest(stress);
  const start = stress.findIndex((value) => value > 0.05 * highest);
  const k = stress.findIndex((value, j) => strain[j] - strain[start] - value / NOMINAL_YOUNG > 0.01);
  return k < 0 ? highest : stress[k];
};

/** Points before the stress first passes `high`. */
const elasticPoints = (
  { strain, stress }: CouponCurve,
  high: number,
): { strain: number[]; stress: number[] } => {
  const count = stress.findIndex((value) => value > high);
  const end = count < 0 ? stress.length : count;
  return { strain: strain.slice(0, end), stress: stress.slice(0, end) };
};

/** Ends of the windows as parts of the stress at 1 %: above the toe, below the bend of an austenitic curve. */
const LOW = [-0.02, 0.02, 0.06, 0.1, 0.15, 0.2];
const HIGH = [0.25, 0.3, 0.35, 0.4, 0.45];
/** A window spans at least this part of that stress. */
const NARROWEST = 0.12;

const windowsOf = (points: { strain: number[]; stress: number[] }, scale: number): Line[] =>
  LOW.flatMap((low) =>
    HIGH.filter((high) => high - low >= NARROWEST).map((high) => {
      const inside = points.stress.map((value) => value >= low * scale && value <= high * scale);
      return lineThrough(
        points.strain.filter((_, k) => inside[k]),
        points.stress.filter((_, k) => inside[k]),
      );
    }),
  );

interface Line {
  readonly points: number;
  /** Stress from the lowest to the highest point, MPa. */
  readonly span: number;
  readonly young: number;
  /** Strain where the line meets zero stress. */
  readonly zero: number;
  /** Standard error of the slope over the slope; Infinity where there is none. */
  readonly scatter: number;
  /** Relative gap between the slopes of the lower and the upper half. */
  readonly bend: number;
}

/** Scatter makes two half slopes differ by about this many standard errors of the whole: bend counts beyond that. */
const HALVES = 5;
/** Fewer points in a half tell nothing of its slope. */
const FEWEST_OF_HALF = 5;

const doubt = (line: Line): number => Math.hypot(line.scatter, line.bend / HALVES);

const lineThrough = (strain: readonly number[], stress: readonly number[]): Line => {
  const whole = leastSquares(strain, stress);
  const [low, high] = [least(stress), greatest(stress)];
  const half = (inside: (value: number) => boolean) =>
    leastSquares(
      strain.filter((_, k) => inside(stress[k])),
      stress.filter(inside),
    );
  const lower = half((value) => value <= (low + high) / 2);
  const upper = half((value) => value > (low + high) / 2);
  const judged = Math.min(lower.points, upper.points) >= FEWEST_OF_HALF;
  const gap = judged ? Math.abs(upper.slope - lower.slope) / whole.slope - HALVES * whole.scatter : 0;
  const { points, slope: young, zero, scatter } = whole;
  return { points, span: high - low, young, zero, scatter, bend: Math.max(0, gap) };
};

/** Straight line of stress on strain. */
const leastSquares = (strain: readonly number[], stress: readonly number[]) => {
  const n = strain.length;
  const meanStrain = sum(strain) / n;
  const meanStress = sum(stress) / n;
  const sxx = sum(strain.map((x) => (x - meanStrain) ** 2));
  const sxy = sum(strain.map((x, k) => (x - meanStrain) * (stress[k] - meanStress)));
  const syy = sum(stress.map((y) => (y - meanStress) ** 2));
  const slope = sxy / sxx;
  const left = Math.max(0, syy - slope * sxy);
  const scatter = n > 2 && sxx > 0 && slope > 0 ? Math.sqrt(left / (n - 2) / sxx) / slope : Infinity;
  return { points: n, slope, zero: meanStrain - meanStress / slope, scatter };
};

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
