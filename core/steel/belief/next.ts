/**
 * What to measure next: for each thing a team could still do, how much narrower the range of growth would be afterwards,
 * on average over what the reading might turn out to be.
 *
 * Each draw is taken for the truth in turn and the reading it would give is thrown; how well those readings foretell the
 * growth (as normal scores, by linear regression) is how much of the range they would take away. No new draws are needed.
 */
import { type Dice, diceOf } from '../../math/dice.ts';
import { cholesky } from '../../math/cholesky.ts';
import { explainedShare } from '../../stats/shares.ts';
import { COUPON_ERROR } from '../evidence/coupon.ts';
import { TRIAL_ERROR } from '../evidence/trial.ts';
import { FACTORS } from '../prior/shape.ts';
import { BARREL_SHARE, scatterOf } from '../prior/scatter.ts';
import { sharesAt } from '../prior/figures.ts';
import { type SteelDraw } from './draw.ts';

export type Measure =
  | 'wall at four points'
  | 'two plate coupons'
  | 'four plate coupons'
  | 'small test tank'
  | 'rolling noted';

export interface NextMeasure {
  readonly measure: Measure;
  /** Expected width of the range of growth over its width now, 0 to 1. */
  readonly width: number;
}

/** Gauge of the wall, relative to the wall, and scatter between its points. */
const GAUGE = 0.005;
const POINT = 0.006;
/** Plastic strains at which a reading of a curve is summed up: those of a stretch. */
const CURVE_AT = [0.01, 0.045, 0.15] as const;
/** Pressure gauge and wall of a test tank, each 1 %. */
const TRIAL_GAUGE = 0.014;
/** A computed rolling strain against the true one, relative. */
const ROLLING_ERROR = 0.2;

/** Measures, the one that narrows most first. `growth` in the order of the draws; Infinity where the tank burst. */
export const nextMeasures = (
  draws: readonly SteelDraw[],
  growth: readonly number[],
  seed: number,
): readonly NextMeasure[] => {
  const dice = diceOf(seed).named('next');
  // Two coupons and four are thrown alike, so that four never seem to say less.
  const readings: Record<Measure, (draw: SteelDraw) => readonly number[]> = {
    'wall at four points': wallReading(dice.named('wall')),
    'two plate coupons': couponReading(2, dice.named('coupons')),
    'four plate coupons': couponReading(4, dice.named('coupons')),
    'small test tank': trialReading(dice.named('trial')),
    'rolling noted': ({ coldWork }) => [coldWork * (1 + ROLLING_ERROR * dice.normal())],
  };
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- the keys of the record are its measures
  return (Object.keys(readings) as Measure[])
    .map((measure) => ({ measure, width: widthAfter(growth, draws.map(readings[measure])) }))
    .sort((a, b) => a.width - b.width);
};

const widthAfter = (growth: readonly number[], rows: readonly (readonly number[])[]): number => {
  const columns = rows[0].map((_, k) => rows.map((row) => row[k]));
  return Math.sqrt(Math.max(0, 1 - explainedShare(growth, columns)));
};

const wallReading =
  (dice: Dice) =>
  ({ wallFactor }: SteelDraw): number[] => [
    Math.log(wallFactor) + Math.hypot(GAUGE, POINT / 2) * dice.normal(),
  ];

/** Mean curve of `count` coupons at the strains of a stretch. */
const couponReading = (count: number, dice: Dice): ((draw: SteelDraw) => number[]) => {
  const scatter = cholesky(scatterOf('place', Math.hypot(1, BARREL_SHARE) / Math.sqrt(count)), FACTORS);
  return (draw) => {
    const factors = strayed(draw.factors, scatter, dice);
    const section = (COUPON_ERROR.section / Math.sqrt(count)) * dice.normal();
    return CURVE_AT.map((ep) => logFactor(factors, ep) + section + COUPON_ERROR.bends * dice.normal());
  };
};

/** Flow stress of a test tank, biaxial factor and all. */
const trialReading = (dice: Dice): ((draw: SteelDraw) => number[]) => {
  const scatter = cholesky(scatterOf('place', BARREL_SHARE * Math.SQRT2), FACTORS);
  return (draw) => {
    const factors = strayed(draw.factors, scatter, dice);
    const whole = Math.hypot(TRIAL_GAUGE, TRIAL_ERROR.ends) * dice.normal() + Math.log(draw.biaxialFactor);
    return CURVE_AT.map((ep) => logFactor(factors, ep) + whole + TRIAL_ERROR.point * dice.normal());
  };
};

const strayed = (factors: readonly number[], scatter: Float64Array, dice: Dice): number[] => {
  const z = factors.map(() => dice.normal());
  return factors.map((factor, i) =>
    z.reduce((sum, x, k) => sum + (k <= i ? scatter[FACTORS * i + k] * x : 0), factor),
  );
};

const logFactor = (factors: readonly number[], ep: number): number =>
  sharesAt(ep).reduce((sum, share, k) => sum + share * factors[k], 0);
