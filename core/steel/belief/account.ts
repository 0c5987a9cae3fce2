/** What became of each piece of evidence: counted and for which plate, doubted, or left out with the reason. */
import { cholesky, solveLower } from '../../math/cholesky.ts';
import { chiSquareBelow } from '../../stats/student.ts';
import { seamBefore, wallBefore } from './aside.ts';
import type { Plates } from './plates.ts';
import { type Case, pieceSize, readingCovariance, type Sizes, weighAt } from './weigh.ts';
import type { Evidence, Origin } from '../evidence/evidence.ts';
import { type Reading, SHARED_COUNT } from '../evidence/reading.ts';
import { FACTORS } from '../prior/shape.ts';
import { BIAXIAL, type PlatePrior, RATE, ROLLING_SHARE, ROOM, WARMTH } from '../prior/prior.ts';

export type EvidenceKind = 'certificate' | 'coupon' | 'seam' | 'wall' | 'rolling' | 'trial';

export type Account =
  | Counted
  | { readonly kind: 'excluded'; readonly what: EvidenceKind; readonly name: string; readonly reason: string }
  /** Nothing was given, so this was taken. */
  | {
      readonly kind: 'assumed';
      readonly what: 'typical values' | 'biaxial' | 'rate' | 'temperature' | EvidenceKind;
      readonly reason: string;
    };

export interface Counted {
  readonly kind: 'counted';
  readonly what: EvidenceKind;
  readonly name: string;
  readonly of: 'this plate' | 'another plate of this heat' | 'another heat';
  /** Chance that the coupon does not speak for its plate (mixed up, bent, badly cut). */
  readonly doubt?: number;
  /** Chance of lying at least this far from what all the rest says; small: it contradicts the rest. */
  readonly agreement?: number;
}

export interface AccountInput {
  readonly evidence: Evidence;
  readonly plates: Plates;
  readonly readings: readonly Reading[];
  readonly cases: readonly Case[];
  readonly prior: PlatePrior;
}

export const accountOf = (input: AccountInput): Account[] => {
  const { evidence } = input;
  const pieces = (what: EvidenceKind, all: readonly Origin[]): Account[] =>
    all.map((piece) => pieceAccount(what, piece, input));
  return [
    ...pieces('certificate', evidence.certificates),
    ...pieces('coupon', evidence.coupons),
    ...pieces('trial', evidence.trials),
    ...pieces('seam', evidence.seams),
    ...pieces('wall', evidence.walls),
    ...pieces('rolling', evidence.rolling),
    ...assumptions(input),
  ];
};

const pieceAccount = (what: EvidenceKind, piece: Origin, input: AccountInput): Account => {
  const { name } = piece;
  if (piece.excluded !== undefined) return { kind: 'excluded', what, name, reason: piece.excluded };
  const number = input.readings.findIndex((reading) => reading.origin === piece);
  const curve = what === 'certificate' || what === 'coupon' || what === 'trial';
  if (curve && number < 0)
    return { kind: 'excluded', what, name, reason: 'it holds no figure that could be used' };
  const of = relationOf(input.plates.of.get(piece) ?? 0, input.plates);
  if (!curve) return { kind: 'counted', what, name, of };
  const agreement = agreementOf(number, input);
  if (what !== 'coupon') return { kind: 'counted', what, name, of, agreement };
  return { kind: 'counted', what, name, of, agreement, doubt: doubtOf(number, input.cases) };
};

const relationOf = (plate: number, { plates }: Plates): Counted['of'] => {
  if (plate === 0) return 'this plate';
  return plates[plate].heat === plates[0].heat ? 'another plate of this heat' : 'another heat';
};

const doubtOf = (number: number, cases: readonly Case[]): number =>
  cases.reduce((sum, one) => sum + (one.bad.includes(number) ? one.probability : 0), 0);

/** Chi-square of the reading's distance from what the others foresee of it, in the likeliest case. */
const agreementOf = (number: number, { readings, plates, prior, cases }: AccountInput): number => {
  const reading = readings[number];
  const best = cases.reduce((a, b) => (b.probability > a.probability ? b : a));
  const sizes: Sizes = { own: best.size, other: best.otherSize };
  const others = readings.filter((_, k) => k !== number && !best.bad.includes(k));
  const { mean, root } = weighAt(others, { plates, prior, sizes });
  const covariance = readingCovariance(reading, pieceSize(reading, sizes, false));
  const distance = Float64Array.from(reading.observed);
  const rows = Array.from({ length: reading.rows }, (_, i) => rowOf(reading, i, mean.length));
  rows.forEach((row, i) => row.forEach((share, k) => (distance[i] -= share * mean[k])));
  const spread = rows.map((row) => solveLower(root, Float64Array.from(row)));
  spread.forEach((a, i) =>
    spread.forEach(
      (b, j) => (covariance[reading.rows * i + j] += a.reduce((sum, x, k) => sum + x * b[k], 0)),
    ),
  );
  const white = solveLower(cholesky(covariance, reading.rows), distance);
  return (
    1 -
    chiSquareBelow(
      white.reduce((sum, x) => sum + x * x, 0),
      reading.rows,
    )
  );
};

/** One figure of a reading as a row over all unknowns. */
const rowOf = (reading: Reading, i: number, n: number): Float64Array => {
  const row = new Float64Array(n);
  for (let k = 0; k < FACTORS; k++) row[FACTORS * reading.plate + k] = reading.design[FACTORS * i + k];
  for (let k = 0; k < SHARED_COUNT; k++) row[n - SHARED_COUNT + k] = reading.shared[SHARED_COUNT * i + k];
  return row;
};

/** K; closer to the tests than this the correction is under a third of a percent and not told. */
const NEAR_ROOM = 2;

const warmerBy = ({ plate }: Evidence): number => (plate.temperature ?? ROOM) - ROOM;

function warmthReason(evidence: Evidence): string {
  const warmer = warmerBy(evidence);
  const [change, give] = [WARMTH.mean * warmer, WARMTH.deviation * warmer].map((part) =>
    Math.abs(100 * part).toFixed(1),
  );
  const [than, takes] = warmer > 0 ? ['warmer', 'takes off'] : ['colder', 'adds'];
  return `water ${Math.abs(warmer).toFixed(0)} K ${than} than the tests ${takes} ${change} % of the flow stress, give or take ${give} % (${WARMTH.reason})`;
}

const assumptions = ({ evidence, prior }: AccountInput): Account[] => {
  const missing = (all: readonly Origin[]): boolean => all.every(({ excluded }) => excluded !== undefined);
  const assumed = (what: Extract<Account, { kind: 'assumed' }>['what'], reason: string): Account => ({
    kind: 'assumed',
    what,
    reason,
  });
  return [
    assumed('typical values', prior.reason),
    ...(missing(evidence.trials) ? [assumed('biaxial', BIAXIAL.reason)] : []),
    assumed('rate', RATE.reason),
    ...(Math.abs(warmerBy(evidence)) < NEAR_ROOM ? [] : [assumed('temperature', warmthReason(evidence))]),
    ...(missing(evidence.walls) ? [assumed('wall', wallBefore(evidence.plate).reason)] : []),
    ...(missing(evidence.seams) ? [assumed('seam', seamBefore(evidence.plate).reason)] : []),
    ...(missing(evidence.rolling) && evidence.plate.radius !== undefined
      ? [assumed('rolling', ROLLING_SHARE.reason)]
      : []),
  ];
};
