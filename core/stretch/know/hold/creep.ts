/**
 * Growth rate of a girth in a hold: logarithmic creep and a straight drift, fitted so that single bad readings do not
 * count. Times in s since the hold began, growth as a fraction, rates 1/s.
 */
import { cholesky, inverseOf, solveCholesky } from '../../../math/cholesky.ts';
import { normalBelow, normalQuantile } from '../../../stats/normal.ts';
import { SETTLED_RATE } from '../../hold.ts';

export interface HoldReading {
  readonly time: number;
  readonly growth: number;
}

export interface CreepGivens {
  /** In order of time. */
  readonly readings: readonly HoldReading[];
  /** Standard deviation of one reading, as growth. */
  readonly blur: number;
  /** Standard deviation of the rate at which the instrument drifts, 1/s. */
  readonly drift: number;
  /** The rate is stated over the last so many s. */
  readonly window: number;
  /** Rate under which the hold has settled. */
  readonly settled?: number;
}

export interface CreepFound {
  /** Mean growth rate over the window, with its 90 % range. */
  readonly rate: number;
  readonly low: number;
  readonly high: number;
  /** Chance that it is under the settled rate. */
  readonly chance: number;
  readonly verdict: 'settled' | 'still grows' | 'cannot tell';
  /** s since the hold began at which the rate will be under the settled one; undefined where it does not fall to it. */
  readonly settlesAt?: number;
}

/** Unknowns: growth at the start, per e-fold of time, straight drift. */
const UNKNOWNS = 3;
/** s before the hold began at which the logarithm would start: the end of the ramp. */
const EARLIER = 5;
/** Readings that are looked at reach back to this share of the time: the law is straight only over a few e-folds. */
const REACH = 0.15;
const FEWEST = 4;
/** Huber's limit, and turns of its weights (Huber, Ann. Math. Stat. 35 (1964) 73). */
const HUBER = 1.345;
const TURNS = 12;
/** A verdict wants this chance. */
const SURE = 0.95;
const NINETY = normalQuantile(0.95);

/** Undefined where fewer than four readings lie in the piece of the hold that is fitted, or the window is longer than it. */
export function creepFound(givens: CreepGivens): CreepFound | undefined {
  const { readings, window, settled = SETTLED_RATE } = givens;
  const last = readings.at(-1);
  if (last === undefined || last.time < window) return undefined;
  const from = Math.min(REACH * last.time, last.time - window);
  const fitted = readings.filter(({ time }) => time >= from);
  if (fitted.length < FEWEST) return undefined;
  const { x, covariance } = fitOf(fitted, givens);
  const row = rateRow(last.time, window);
  const rate = dot(row, x);
  let variance = 0;
  for (let a = 0; a < UNKNOWNS; a++)
    for (let b = 0; b < UNKNOWNS; b++) variance += row[a] * covariance[a * UNKNOWNS + b] * row[b];
  const spread = Math.sqrt(variance);
  const chance = normalBelow((settled - rate) / spread);
  const at = settlesAt(x, { window, settled });
  return {
    rate,
    low: rate - NINETY * spread,
    high: rate + NINETY * spread,
    chance,
    verdict: chance >= SURE ? 'settled' : chance <= 1 - SURE ? 'still grows' : 'cannot tell',
    ...(at === undefined ? {} : { settlesAt: at }),
  };
}

const clock = (time: number): number => Math.log(time + EARLIER);

const rateRow = (time: number, window: number): number[] => [
  0,
  (clock(time) - clock(time - window)) / window,
  1,
];

const dot = (a: readonly number[], b: Float64Array): number => a.reduce((sum, x, k) => sum + x * b[k], 0);

/** Growth per e-fold that any steel may have, as a standard deviation: keeps the fit from taking drift for creep. */
const PER_EFOLD = 0.01;

function fitOf(
  readings: readonly HoldReading[],
  { blur, drift }: CreepGivens,
): { readonly x: Float64Array; readonly covariance: Float64Array } {
  const known = [0, PER_EFOLD ** -2, drift ** -2];
  let weights = readings.map(() => blur ** -2);
  let x: Float64Array = new Float64Array(UNKNOWNS);
  let root: Float64Array = new Float64Array();
  let scale = 1;
  const zero = readings[0].growth;
  for (let turn = 0; turn < TURNS; turn++) {
    const normal = new Float64Array(UNKNOWNS * UNKNOWNS);
    const right = new Float64Array(UNKNOWNS);
    for (let a = 0; a < UNKNOWNS; a++) normal[a * UNKNOWNS + a] = known[a];
    readings.forEach(({ time, growth }, i) => {
      const row = [1, clock(time), time];
      for (let a = 0; a < UNKNOWNS; a++) {
        right[a] += weights[i] * row[a] * (growth - zero);
        for (let b = 0; b < UNKNOWNS; b++) normal[a * UNKNOWNS + b] += weights[i] * row[a] * row[b];
      }
    });
    root = cholesky(normal, UNKNOWNS);
    x = solveCholesky(root, right);
    const misses = readings.map(({ time, growth }) => growth - zero - dot([1, clock(time), time], x));
    scale = Math.max(1, middleOf(misses.map(Math.abs)) / (MIDDLE * blur));
    weights = misses.map((miss) => {
      const off = Math.abs(miss) / (scale * blur);
      return Math.min(1, HUBER / Math.max(off, 1e-9)) / (scale * blur) ** 2;
    });
  }
  return { x, covariance: inverseOf(root, UNKNOWNS) };
}

/** Half of the readings of a normal lie within this many standard deviations. */
const MIDDLE = normalQuantile(0.75);

const middleOf = (values: readonly number[]): number => {
  const rising = [...values].sort((a, b) => a - b);
  return rising[rising.length >> 1];
};

/** Longest time that is looked ahead, s. */
const LONGEST = 1e6;

function settlesAt(
  x: Float64Array,
  { window, settled }: { readonly window: number; readonly settled: number },
): number | undefined {
  const over = (time: number): number => dot(rateRow(time, window), x) - settled;
  if (over(window) <= 0) return window;
  if (over(LONGEST) > 0) return undefined;
  let [low, high] = [window, LONGEST];
  while (high - low > 1) {
    const middle = Math.sqrt(low * high);
    if (over(middle) > 0) low = middle;
    else high = middle;
  }
  return high;
}
