/** Does the range hold the truth as often as it says? Many invented plates, each planned, tested and stretched. */
import { diceOf } from '../../core/math/dice.ts';
import { believe } from '../../core/steel/belief/belief.ts';
import { middleDraw } from '../../core/steel/belief/curve.ts';
import type { Account } from '../../core/steel/belief/account.ts';
import type { Evidence } from '../../core/steel/evidence/evidence.ts';
import { rangeOf, rankAmong } from '../../core/stats/range.ts';
import { quantile } from '../../core/stats/sample.ts';
import { chiSquareOfCells, kolmogorov } from '../../core/stats/uniformity.ts';
import { finalGrowth, type QuickTank } from './growth.ts';
import {
  inventedCertificate,
  inventedCoupons,
  inventedTruth,
  PLATE,
  quickSteel,
  type Truth,
  wallPoints,
} from './plates.ts';
import { outsider, type Outsider } from './outsiders.ts';

export const TANK: QuickTank = { radius: 301, wall: 2, young: 195_000, poisson: 0.3 };

/** The team plans for this growth on what its certificate says. */
const PLANNED = 0.04;

export interface Trial {
  readonly growth: number;
  readonly inWide: boolean;
  readonly inHalf: boolean;
  readonly rank: number;
  /** Width of the 90 % range. */
  readonly width: number;
  readonly tail: number;
  /** What a user would be warned of: doubted coupons, evidence that contradicts the rest. */
  readonly warnings: readonly string[];
}

export interface TrialOptions {
  readonly seed: number;
  readonly coupons: number;
  readonly draws: number;
  readonly outsider?: Outsider;
}

/** One invented tank from evidence to the end of its final hold. */
export const trialOf = ({ seed, coupons, draws, outsider: kind }: TrialOptions): Trial => {
  const dice = diceOf(seed);
  const truth = kind === undefined ? inventedTruth(dice.named('truth')) : outsider(kind, dice.named('truth'));
  const first: Evidence = {
    plate: PLATE,
    certificates: [inventedCertificate(truth, dice.named('certificate'))],
    coupons: [],
    seams: [],
    walls: wallPoints(truth, dice.named('wall')),
    rolling: [],
    trials: [],
  };
  const planned = believe(first, { seed, draws });
  const pressure = plannedPressure(quickSteel(middleDraw(planned.draws)));
  const tested = { ...first, coupons: inventedCoupons(truth, coupons, dice.named('coupons')) };
  const belief = coupons === 0 ? planned : believe(tested, { seed, draws });
  const growths = belief.draws.map((draw) => finalGrowth(TANK, quickSteel(draw), pressure));
  const trial = judged(finalGrowth(TANK, truth.steel, pressure), growths, dice.uniform());
  return { ...trial, tail: belief.tail, warnings: belief.account.flatMap(warningOf) };
};

/** Bursts count as above the range. */
const judged = (growth: number, growths: readonly number[], u: number): Omit<Trial, 'tail' | 'warnings'> => {
  const { half, wide } = rangeOf(growths);
  const within = ([low, high]: readonly [number, number]): boolean =>
    growth >= low && growth <= high && growth < Infinity;
  return {
    growth,
    inWide: within(wide),
    inHalf: within(half),
    rank: rankAmong(growth, growths, u),
    width: wide[1] - wide[0],
  };
};

const plannedPressure = (steel: Truth['steel']): number => {
  let [low, high] = [0.5, 6];
  while (high - low > 1e-4) {
    const middle = (low + high) / 2;
    if (finalGrowth(TANK, steel, middle) < PLANNED) low = middle;
    else high = middle;
  }
  return low;
};

const warningOf = (piece: Account): string[] => {
  if (piece.kind !== 'counted') return [];
  const { name, doubt = 0, agreement = 1 } = piece;
  if (doubt > 0.5) return [`${name} does not speak for its plate (chance ${doubt.toFixed(2)})`];
  return agreement < 0.01 ? [`${name} contradicts the rest (chance ${agreement.toFixed(4)})`] : [];
};

export interface Coverage {
  readonly tanks: number;
  readonly wide: number;
  readonly half: number;
  readonly medianWidth: number;
  readonly bursts: number;
  /** Chance of ranks this uneven if they are uniform: Kolmogorov-Smirnov. */
  readonly uniform: number;
  /** The same by chi-square in 20 cells, where there are 100 tanks or more. */
  readonly uniformCells?: number;
  /** Draw sets whose weights are not to be trusted (Pareto tail over 0.7). */
  readonly untrusted: number;
  readonly warnings: readonly string[];
}

export const coverageOf = (trials: readonly Trial[]): Coverage => {
  const share = (test: (trial: Trial) => boolean): number => trials.filter(test).length / trials.length;
  const ranks = trials.map(({ rank }) => rank);
  return {
    tanks: trials.length,
    wide: share(({ inWide }) => inWide),
    half: share(({ inHalf }) => inHalf),
    medianWidth: quantile(
      trials.map(({ width }) => width),
      0.5,
    ),
    bursts: trials.filter(({ growth }) => growth === Infinity).length,
    uniform: kolmogorov(ranks).chance,
    ...(trials.length >= 100 ? { uniformCells: chiSquareOfCells(ranks, 20).chance } : {}),
    untrusted: trials.filter(({ tail }) => tail > 0.7).length,
    warnings: trials.flatMap(({ warnings }) => warnings),
  };
};
