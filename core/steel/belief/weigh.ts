/**
 * What the evidence says of the four factors of every plate and of the shared unknowns: a mixture of normal
 * distributions, exact for readings that are straight lines in the unknowns.
 *
 * Two things are not normal and are gone through case by case: the size of the scatter within a plate (five sizes), and
 * which coupons are bad (none, one or two of them; a bad one lies BAD_TIMES wider). Each case is one normal distribution
 * with its probability. Scatter between plates and between places is part of the covariances, so it costs no unknowns.
 */
import { cholesky, inverseOf, logDeterminant, solveCholesky, solveLower } from '../../math/cholesky.ts';
import { plateCovariance, type Plates } from './plates.ts';
import { type Reading, SHARED_COUNT } from '../evidence/reading.ts';
import { FACTORS } from '../prior/shape.ts';
import type { PlatePrior } from '../prior/prior.ts';
import { BAD_SHARE, BAD_TIMES, BARREL_SHARE, PLACE_SIZES, scatterOf } from '../prior/scatter.ts';

/** One case: unknowns are four factors for each plate in turn, then the shared ones. */
export interface Case {
  readonly probability: number;
  readonly mean: Float64Array;
  /** Lower Cholesky factor of the inverse covariance. */
  readonly root: Float64Array;
  /** Size of the scatter within the plate of the part, and within all others. */
  readonly size: number;
  readonly otherSize: number;
  /** Numbers of the readings taken to be bad. */
  readonly bad: readonly number[];
}

/** Cases this much less likely than the best are dropped. */
const LEAST_PROBABILITY = 1e-6;

export const weigh = (readings: readonly Reading[], plates: Plates, prior: PlatePrior): readonly Case[] => {
  const start = startOf(plates, prior);
  const scaled = readings.map((reading) => scaledBy(reading, start.mean.length));
  const cases: { log: number; case: Omit<Case, 'probability'> }[] = [];
  for (const sizes of sizesOf(readings)) {
    for (const bad of badSets(readings)) {
      const terms = readings.map((reading, k) => scaled[k](pieceSize(reading, sizes, bad.includes(k))));
      const { mean, root, log } = combined(start, terms);
      const coupons = readings.filter(({ kind }) => kind === 'coupon').length;
      const odds = bad.length * Math.log(BAD_SHARE) + (coupons - bad.length) * Math.log(1 - BAD_SHARE);
      cases.push({ log: log + odds, case: { mean, root, size: sizes.own, otherSize: sizes.other, bad } });
    }
  }
  return withProbability(cases);
};

const withProbability = (cases: readonly { log: number; case: Omit<Case, 'probability'> }[]): Case[] => {
  const most = Math.max(...cases.map(({ log }) => log));
  const kept = cases.filter(({ log }) => log - most > Math.log(LEAST_PROBABILITY));
  const total = kept.reduce((sum, { log }) => sum + Math.exp(log - most), 0);
  return kept.map(({ log, case: one }) => ({ ...one, probability: Math.exp(log - most) / total }));
};

export interface Sizes {
  readonly own: number;
  readonly other: number;
}

/** The one normal distribution that follows if the sizes of the scatter are these and no coupon is bad. */
export const weighAt = (
  readings: readonly Reading[],
  { plates, prior, sizes }: { plates: Plates; prior: PlatePrior; sizes: Sizes },
): { readonly mean: Float64Array; readonly root: Float64Array } => {
  const start = startOf(plates, prior);
  const n = start.mean.length;
  return combined(
    start,
    readings.map((reading) => termOf(reading, n, pieceSize(reading, sizes, false))),
  );
};

/** Scatter of the piece a reading was made on, as a multiple of the table of scatter within a plate. */
export const pieceSize = (reading: Reading, { own, other }: Sizes, bad: boolean): number => {
  // A certificate is one specimen of a plate that nobody else tests: the size of its scatter cannot be learnt.
  if (reading.kind === 'certificate') return 1;
  const size = reading.plate === 0 ? own : other;
  return size * (reading.piece === 'barrel' ? BARREL_SHARE : 1) * (bad ? BAD_TIMES : 1);
};

/** Sizes of one kind need going through only where a reading depends on them; the part's own size always counts. */
const sizesOf = (readings: readonly Reading[]): Sizes[] => {
  const foreign = readings.some(({ kind, plate }) => kind !== 'certificate' && plate !== 0);
  const others = foreign ? PLACE_SIZES : [1];
  return PLACE_SIZES.flatMap((own) => others.map((other) => ({ own, other })));
};

/** Every choice of none, one or two bad coupons. */
const badSets = (readings: readonly Reading[]): number[][] => {
  const coupons = readings.flatMap(({ kind }, k) => (kind === 'coupon' ? [k] : []));
  const pairs = coupons.flatMap((a, i) => coupons.slice(i + 1).map((b) => [a, b]));
  return [[], ...coupons.map((k) => [k]), ...pairs];
};

/** A normal distribution by its inverse covariance ("precision") and precision x mean ("pull"). */
interface Term {
  readonly precision: Float64Array;
  readonly pull: Float64Array;
  /** Logarithm of the density at pull = 0, without the powers of 2 pi. */
  readonly level: number;
}

interface Start extends Term {
  readonly mean: Float64Array;
  readonly logPrecision: number;
}

const startOf = ({ plates }: Plates, prior: PlatePrior): Start => {
  const many = FACTORS * plates.length;
  const n = many + SHARED_COUNT;
  const inverse = inverseOf(cholesky(plateCovariance(plates, prior.wider), many), many);
  const precision = new Float64Array(n * n);
  for (let i = 0; i < many; i++) for (let j = 0; j < many; j++) precision[n * i + j] = inverse[many * i + j];
  for (let i = many; i < n; i++) precision[n * i + i] = 1;
  const mean = new Float64Array(n);
  for (let i = 0; i < many; i++) mean[i] = prior.factors[i % FACTORS];
  const pull = times(precision, mean);
  const level = -0.5 * dot(mean, pull);
  return { mean, precision, pull, level, logPrecision: logDeterminant(cholesky(precision, n), n) };
};

const combined = (
  start: Start,
  terms: readonly Term[],
): { mean: Float64Array; root: Float64Array; log: number } => {
  const precision = Float64Array.from(start.precision);
  const pull = Float64Array.from(start.pull);
  let log = start.level + 0.5 * start.logPrecision;
  for (const term of terms) {
    for (let k = 0; k < precision.length; k++) precision[k] += term.precision[k];
    for (let k = 0; k < pull.length; k++) pull[k] += term.pull[k];
    log += term.level;
  }
  const n = pull.length;
  const root = cholesky(precision, n);
  const mean = solveCholesky(root, pull);
  return { mean, root, log: log + 0.5 * dot(mean, pull) - 0.5 * logDeterminant(root, n) };
};

/** The reading as a term over `n` unknowns, for a given size of the scatter of its piece; each size is worked out once. */
const scaledBy = (reading: Reading, n: number): ((size: number) => Term) => {
  const known = new Map<number, Term>();
  return (size) => {
    const before = known.get(size);
    if (before !== undefined) return before;
    const term = termOf(reading, n, size);
    known.set(size, term);
    return term;
  };
};

/** Covariance of a reading's figures about the straight line of its plate: errors of measurement and scatter of the piece. */
export const readingCovariance = (reading: Reading, size: number): Float64Array => {
  const { rows, design } = reading;
  const scatter = scatterOf('place', size);
  const covariance = Float64Array.from(reading.noise);
  for (let i = 0; i < rows; i++)
    for (let j = 0; j < rows; j++)
      for (let a = 0; a < FACTORS; a++)
        for (let b = 0; b < FACTORS; b++)
          covariance[rows * i + j] +=
            design[FACTORS * i + a] * scatter[FACTORS * a + b] * design[FACTORS * j + b];
  return covariance;
};

const termOf = (reading: Reading, n: number, size: number): Term => {
  const { rows } = reading;
  const root = cholesky(readingCovariance(reading, size), rows);
  const whitened = solveLower(root, Float64Array.from(reading.observed));
  const columns = columnsOf(reading, n).map(({ at, column }) => ({ at, column: solveLower(root, column) }));
  const precision = new Float64Array(n * n);
  const pull = new Float64Array(n);
  for (const a of columns) {
    pull[a.at] = dot(a.column, whitened);
    for (const b of columns) precision[n * a.at + b.at] = dot(a.column, b.column);
  }
  return { precision, pull, level: -0.5 * dot(whitened, whitened) - 0.5 * logDeterminant(root, rows) };
};

/** The unknowns a reading depends on, each with its column. */
const columnsOf = (reading: Reading, n: number): { at: number; column: Float64Array }[] => {
  const { rows, design, shared, plate } = reading;
  const column = (from: Float64Array, width: number, k: number): Float64Array =>
    Float64Array.from({ length: rows }, (_, i) => from[width * i + k]);
  const own = Array.from({ length: FACTORS }, (_, k) => ({
    at: FACTORS * plate + k,
    column: column(design, FACTORS, k),
  }));
  const common = Array.from({ length: SHARED_COUNT }, (_, k) => ({
    at: n - SHARED_COUNT + k,
    column: column(shared, SHARED_COUNT, k),
  }));
  return [...own, ...common];
};

const dot = (a: Float64Array, b: Float64Array): number => {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += a[k] * b[k];
  return sum;
};

const times = (matrix: Float64Array, vector: Float64Array): Float64Array => {
  const n = vector.length;
  return Float64Array.from({ length: n }, (_, i) => dot(matrix.subarray(n * i, n * i + n), vector));
};
