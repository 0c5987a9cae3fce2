/**
 * From evidence to a range of steels: equally likely draws, each a steel the shell can be run with, and what became of
 * every piece of evidence. Seeded and repeatable.
 *
 * Method: on logarithms of stress every reading is a straight line in the unknowns, so each case of the mixture in
 * weigh.ts is a normal distribution known in closed form. Draws are spread over it (Latin hypercube). What is not
 * quite straight (Rm of a certificate, the least Rp0.2 of a standard) is put right by weights, whose Pareto tail says
 * whether that was enough.
 */
import { diceOf, type Dice } from '../../math/dice.ts';
import { cholesky, solveLower, solveUpper } from '../../math/cholesky.ts';
import { paretoSmoothed, resampled, type Weighted } from '../../stats/pareto.ts';
import { normalHypercube } from '../../stats/spread.ts';
import { drawOf, type SteelDraw } from './draw.ts';
import { platesOf, type Plates } from './plates.ts';
import { type Aside, asideOf } from './aside.ts';
import { accountOf, type Account } from './account.ts';
import { type Case, pieceSize, readingCovariance, weigh } from './weigh.ts';
import { certificateReading } from '../evidence/certificate.ts';
import { couponReading } from '../evidence/coupon.ts';
import { BIAXIAL_AT, type Reading, RATE_AT, SHARED_COUNT, WARMTH_AT } from '../evidence/reading.ts';
import { trialReading } from '../evidence/trial.ts';
import type { Evidence } from '../evidence/evidence.ts';
import { logProof, PROOF02_PLASTIC } from '../prior/figures.ts';
import { FACTORS } from '../prior/shape.ts';
import { BIAXIAL, platePrior, type PlatePrior, RATE, ROOM, WARMTH } from '../prior/prior.ts';
import { BARREL_SHARE, scatterOf } from '../prior/scatter.ts';

export interface BeliefOptions {
  readonly seed: number;
  /** Number of equally likely steels. */
  readonly draws: number;
  /** What the draws stand for: the barrel made of the plate (default), or the next coupon cut from it. */
  readonly of?: 'barrel' | 'coupon';
}

export interface Belief {
  readonly evidence: Evidence;
  readonly draws: readonly SteelDraw[];
  /** What became of each piece of evidence, and what was assumed for want of it. */
  readonly account: readonly Account[];
  /** Pareto tail of the correcting weights (under 0.5 good, over 0.7 not to be trusted) and draws they are worth. */
  readonly tail: number;
  readonly effective: number;
}

/** Candidates weighed for each draw that is kept, where weights are needed. */
const CANDIDATES = 4;

export const believe = (evidence: Evidence, { seed, draws, of = 'barrel' }: BeliefOptions): Belief => {
  const dice = diceOf(seed).named('steel');
  const plates = platesOf(evidence);
  const prior = platePrior(evidence.plate);
  const readings = readingsOf(evidence, plates, prior);
  const cases = weigh(readings, plates, prior);
  const least = evidence.certificates.some(({ excluded }) => excluded === undefined)
    ? undefined
    : prior.least;
  const bent = readings.filter(({ exact }) => exact !== undefined);
  const weighted = bent.length > 0 || least !== undefined;
  const count = weighted ? CANDIDATES * draws : draws;
  const candidates = drawn(cases, count, { plates, dice, share: of === 'barrel' ? BARREL_SHARE : 1 });
  const weights = weighted ? weightsOf(candidates, { bent, readings, least }) : EQUAL;
  const kept = weighted ? resampled(weights.weights, draws, dice.named('kept')) : candidates.map((_, k) => k);
  const aside = asideOf(evidence);
  return {
    evidence,
    draws: kept.map((k) => steelOf(candidates[k], evidence, aside)),
    account: accountOf({ evidence, plates, readings, cases, prior }),
    tail: weights.tail,
    effective: weighted ? weights.effective : draws,
  };
};

const EQUAL: Weighted = { weights: new Float64Array(), tail: -Infinity, effective: 0 };

/** Every piece of evidence that counts, as straight lines about the prior's factors. */
const readingsOf = (evidence: Evidence, { of }: Plates, prior: PlatePrior): Reading[] => {
  const found = [
    ...evidence.certificates.map((piece) =>
      readIf(of.get(piece), (k) => certificateReading(piece, k, prior.factors)),
    ),
    ...evidence.coupons.map((piece) => readIf(of.get(piece), (k) => couponReading(piece, k))),
    ...evidence.trials.map((piece) => readIf(of.get(piece), (k) => trialReading(piece, k, prior.factors))),
  ];
  return found.filter((reading) => reading !== undefined);
};

const readIf = (
  plate: number | undefined,
  read: (plate: number) => Reading | undefined,
): Reading | undefined => (plate === undefined ? undefined : read(plate));

interface Candidate {
  readonly case: Case;
  readonly unknowns: Float64Array;
  /** Departure of the piece (barrel or coupon) from its plate. */
  readonly piece: Float64Array;
  /** Standard normal numbers for what is not tied to the curve: wall, rolling, seam. */
  readonly aside: Float64Array;
}

const ASIDE = 3;

const drawn = (
  cases: readonly Case[],
  count: number,
  { plates, dice, share }: { plates: Plates; dice: Dice; share: number },
): Candidate[] => {
  const n = FACTORS * plates.plates.length + SHARED_COUNT;
  const points = normalHypercube(count, n + FACTORS + ASIDE, dice.named('points'));
  const order = resampled(
    Float64Array.from(cases, (one) => one.probability),
    count,
    dice.named('cases'),
  );
  const scatter = new Map<number, Float64Array>();
  return points.map((point, k) => {
    const one = cases[order[k]];
    const size = one.size * share;
    const root = scatter.get(size) ?? cholesky(scatterOf('place', size), FACTORS);
    scatter.set(size, root);
    const unknowns = solveUpper(one.root, point.slice(0, n));
    for (let i = 0; i < n; i++) unknowns[i] += one.mean[i];
    return {
      case: one,
      unknowns,
      piece: lowerTimes(root, point.subarray(n, n + FACTORS)),
      aside: point.slice(n + FACTORS),
    };
  });
};

const lowerTimes = (L: Float64Array, x: Float64Array): Float64Array => {
  const n = x.length;
  return x.map((_, i) => {
    let sum = 0;
    for (let k = 0; k <= i; k++) sum += L[n * i + k] * x[k];
    return sum;
  });
};

const weightsOf = (
  candidates: readonly Candidate[],
  {
    bent,
    readings,
    least,
  }: { bent: readonly Reading[]; readings: readonly Reading[]; least: number | undefined },
): Weighted => {
  const corrections = bent.map((reading) => correctionOf(reading, readings.indexOf(reading)));
  const log = Float64Array.from(candidates, (candidate) => {
    if (least !== undefined && logProof(candidate.unknowns, PROOF02_PLASTIC) < Math.log(least))
      return -Infinity;
    return corrections.reduce((sum, correction) => sum + correction(candidate), 0);
  });
  return paretoSmoothed(log);
};

/** ln of the density of a reading as it is over that of its straight line. */
const correctionOf = (reading: Reading, number: number): ((candidate: Candidate) => number) => {
  const roots = new Map<number, Float64Array>();
  const { rows, plate, observed, exact } = reading;
  const square = (root: Float64Array, predicted: Float64Array): number =>
    solveLower(
      root,
      predicted.map((value, k) => observed[k] - value),
    ).reduce((sum, x) => sum + x * x, 0);
  return ({ case: one, unknowns }) => {
    const size = pieceSize(reading, { own: one.size, other: one.otherSize }, one.bad.includes(number));
    const root = roots.get(size) ?? cholesky(readingCovariance(reading, size), rows);
    roots.set(size, root);
    const factors = unknowns.subarray(FACTORS * plate, FACTORS * plate + FACTORS);
    const shared = unknowns.subarray(unknowns.length - SHARED_COUNT);
    if (exact === undefined) return 0;
    return 0.5 * (square(root, straight(reading, factors, shared)) - square(root, exact(factors, shared)));
  };
};

const straight = (reading: Reading, factors: Float64Array, shared: Float64Array): Float64Array =>
  Float64Array.from({ length: reading.rows }, (_, i) => {
    let sum = 0;
    for (let k = 0; k < FACTORS; k++) sum += reading.design[FACTORS * i + k] * factors[k];
    for (let k = 0; k < SHARED_COUNT; k++) sum += reading.shared[SHARED_COUNT * i + k] * shared[k];
    return sum;
  });

const steelOf = ({ unknowns, piece, aside: z }: Candidate, evidence: Evidence, aside: Aside): SteelDraw => {
  const shared = unknowns.subarray(unknowns.length - SHARED_COUNT);
  const warmer = (evidence.plate.temperature ?? ROOM) - ROOM;
  const warmth = (WARMTH.mean + WARMTH.deviation * shared[WARMTH_AT]) * warmer;
  const factors = Array.from(piece, (departure, k) => unknowns[k] + departure + warmth);
  return drawOf([
    ...factors,
    Math.log(BIAXIAL.mean) + (BIAXIAL.deviation / BIAXIAL.mean) * shared[BIAXIAL_AT],
    Math.log(RATE.mean) + RATE.deviation * shared[RATE_AT],
    aside.wall(z[0]),
    aside.rolling(z[1]),
    aside.seam(z[2]),
  ]);
};
