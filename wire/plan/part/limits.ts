/** Limits of the day: what the program would set, and what the team has set instead, with name and reason. */
import { trappedAirEnergy } from '@hoopwright/core/stretch';
import { fromBar, fromPercent, toBar, toPercent } from '@hoopwright/core/units';
import type { Foreseen } from '../foresight/foresee.ts';
import { volumePerGrowth } from './instruments.ts';
import { allowedBy, type LeakSeen, type Limit, type LimitKey } from '../plan.ts';
import { arrivalKey, marksOf } from '../foresight/range.ts';
import { inBar } from '../inBar.ts';
import type { SetUp } from '../setup/setUp.ts';

export interface LimitGivens {
  readonly foreseen: Foreseen;
  readonly setUp: SetUp;
  readonly leak: LeakSeen;
  /** Elastic energy of wall and water at the stretch pressure, N mm. */
  readonly elasticEnergy: number;
}

/** Published practice: up to 7 % on diameter is left (ICMR2015_242 and the standards it names). */
const GROWTH_LEFT = 7;
/** Air may add a tenth to the energy of wall and water: our choice, no source. */
const AIR_ENERGY_SHARE = 0.1;
/** The slope of pressure over litres may fall to half of the least one foreseen: our choice, no source. */
const SLOPE_SHARE = 0.5;
/** Girths may part by what is foreseen and a quarter of the growth: our choice, no source. */
const PARTING = 0.25;
/**
 * Strain across the long seam: coupons of weld procedures are stretched by 9 % before they are pulled to the end
 * (Zheng et al., J. Pressure Vessel Technol. 2012, doi 10.1115/1.4007039). More than that nobody has tried beforehand.
 */
const SEAM_STRAIN = 9;
/** More than readings blur and than creep gives in a minute: our choice, no source. */
const WITHOUT_PRESSURE = 0.2;
/** Lowest pressure that nineteen of twenty such tanks bear, over the pressure at hand: our choice, no source. */
const MARGIN = 1.08;
/** Two gauges of no stated class: 1.6 % of the range each (EN 837-1 class 1.6, from memory). */
const CLASS = 0.016;

export function limitsOf(givens: LimitGivens): Limit[] {
  const { setUp, foreseen, leak } = givens;
  const set = setUp.limits;
  const limit = (
    key: LimitKey,
    usual: number,
    own?: { readonly value: number; readonly by: string; readonly why: string },
  ): Limit =>
    own === undefined
      ? { limit: key, value: usual, usual }
      : { limit: key, value: own.value, usual, set: { by: own.by, why: own.why } };
  const left = limit('growthLeft_percent', GROWTH_LEFT, set.growthLeft_percent);
  return [
    limit('pressure_bar', inBar(foreseen.ladder.target)),
    limit('trappedAir_L', airLimit(givens), set.trappedAir_L),
    limit('leak_mL_per_min', Math.max(leak.shut_mL_per_min, leak.uptake_mL_per_min), set.leak_mL_per_min),
    left,
    limit('growthUnderPressure_percent', underPressure(foreseen, left.value)),
    limit('girthsApart_percent', parting(foreseen), set.girthsApart_percent),
    limit('gaugesApart_bar', gaugesApart(setUp), set.gaugesApart_bar),
    limit('slopeShare', leastSlopeShare(foreseen), set.slopeShare),
    ...(hasSeam(givens) ? [limit('seamStrain_percent', SEAM_STRAIN, set.seamStrain_percent)] : []),
    limit('growthWithoutPressure_percent', WITHOUT_PRESSURE, set.growthWithoutPressure_percent),
    limit('marginToMaximum', MARGIN, set.marginToMaximum),
  ];
}

/** Of a plan that was frozen before it had them, the usual ones count. */
export const ADVISED_USUALLY: Readonly<Partial<Record<LimitKey, number>>> = {
  growthWithoutPressure_percent: WITHOUT_PRESSURE,
  marginToMaximum: MARGIN,
};

/** Stated without a seam it is kept, and printed, as everything that somebody has set. */
const hasSeam = ({ foreseen, setUp }: LimitGivens): boolean =>
  foreseen.forecast.seam !== undefined || setUp.limits.seamStrain_percent !== undefined;

export const limitValue = (limits: readonly Limit[], key: LimitKey): number => {
  const found = allowedBy(limits, key);
  if (found === undefined) throw new Error(`the plan has no limit ${key}`);
  return found;
};

/** L of air at filling whose energy is the stated share of that of wall and water. */
const airLimit = ({ foreseen, elasticEnergy }: LimitGivens): number =>
  (AIR_ENERGY_SHARE * elasticEnergy) / trappedAirEnergy(1e6, foreseen.ladder.target);

/** What is left and what springs back, percent: the largest girth under pressure at which the ceiling is reached. */
function underPressure({ forecast }: Foreseen, leftPercent: number): number {
  const held = forecast.held ?? forecast.arrived;
  const left = forecast.released?.left;
  if (held === undefined || left === undefined) throw new Error('a plan needs a released tank');
  const spring = (1 + held.largest.growth) / (1 + left.largest.growth);
  return toPercent((1 + fromPercent(leftPercent)) * spring - 1);
}

/** Largest difference of two girths that is foreseen anywhere on the day, and a part of the growth. */
function parting(foreseen: Foreseen): number {
  const gaps = [...marksOf(foreseen).values()].map(
    ({ growths }) => Math.max(...growths) - Math.min(...growths),
  );
  const held = foreseen.forecast.held ?? foreseen.forecast.arrived;
  return toPercent(Math.max(...gaps) + PARTING * (held?.largest.growth ?? 0));
}

function gaugesApart({ gauges }: SetUp): number {
  const errors = gauges.map((g) => (g.error ?? CLASS) * g.range + g.resolution);
  const [first, second] = errors;
  return toBar(Math.hypot(first ?? fromBar(0.5), second ?? first ?? fromBar(0.5)));
}

/** Slope of pressure over litres just before arrival, over the elastic one of the first step, and half of that. */
function leastSlopeShare(foreseen: Foreseen): number {
  const { forecast, ladder } = foreseen;
  const marks = marksOf(foreseen);
  const [low, , high] = ladder.first.map((p) => marks.get(arrivalKey(p)));
  const climb = forecast.path.filter(
    (m) => m.phase === 'stretch' && m.pressure <= ladder.target * (1 + 1e-9),
  );
  const [before, arrived] = climb.slice(-2);
  if (low === undefined || high === undefined || before === undefined || arrived === undefined)
    throw new Error('the path has no first step or no arrival');
  const elastic = (high.pressure - low.pressure) / (high.pumped.all - low.pumped.all);
  const last = (arrived.pressure - before.pressure) / (arrived.pumped.all - before.pumped.all);
  return SLOPE_SHARE * Math.min(1, last / elastic);
}

/** mm³/s of water that the wall takes up for a growth of girth per second (fraction). */
export const uptakeAt = (foreseen: Foreseen, rate: number): number => volumePerGrowth(foreseen) * rate;
