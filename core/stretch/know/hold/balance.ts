/**
 * The balance of water in a hold: what was drawn, less what the wall has made room for, less what the pressure has
 * squeezed in, and what warming pushes out; the rest is lost. Volumes mm³, rates mm³/s.
 */
import { mean } from '../../../stats/sample.ts';
import { normalQuantile } from '../../../stats/normal.ts';
import { STEEL_EXPANSION } from '../../water.ts';
import type { Answers } from './answers.ts';

export interface BalanceReading {
  readonly seconds: number;
  /** MPa. */
  readonly pressure: number;
  /** Growth of each girth, always in the same order; undefined where it was not read, or is not believed. */
  readonly growths: readonly (number | undefined)[];
  /** Drawn since the vent was shut; undefined where the valve is shut. */
  readonly drawn?: number;
  /** °C; undefined without a thermometer. */
  readonly water?: number;
}

export interface Doubts {
  /** Standard deviations of one reading. */
  readonly pressure: number;
  readonly growth: number;
  /** Readings of growth are rounded to more than their noise, as a tape is: their errors hang together. */
  readonly stairs: boolean;
  readonly drawn: number;
  readonly water: number;
  /** Of the rates at which a girth's instrument drifts, and the water's temperature does unseen, 1/s and K/s. */
  readonly growthDrift: number;
  readonly waterDrift: number;
}

export interface BalanceFound {
  /** Lost, with its 90 % range. */
  readonly loss: number;
  readonly low: number;
  readonly high: number;
  readonly verdict: 'seen' | 'not seen';
  /** Smallest loss that would be seen in nineteen of twenty such holds. */
  readonly smallest: number;
  /** What it is the balance of. */
  readonly creep: number;
  readonly warming: number;
  readonly drawn: number;
  /** Why it is as wide as it is: the largest of its doubts. */
  readonly because: Doubt;
}

export type Doubt =
  | 'girth noise'
  | 'girth drift'
  | 'supply'
  | 'pressure'
  | 'temperature'
  | 'no thermometer'
  | 'room per girth'
  | 'compression'
  | 'air dissolves';

/** Of the room and the compression per pressure; half as much again as the shell shows. Our estimate. */
const COMPLIANCE_SHARE = 0.07;
/** s in which still water takes up the trapped air, at the quickest; as a rate its spread. Our estimate. */
const DISSOLVES = 3600;
/** Standard deviations that a loss stands clear of nothing to be seen; holds that only creep stray by more than one. */
const CLEAR = 5;
const NINETY = normalQuantile(0.95);
/**
 * Standard deviation of a slope through stairs, in those of one rounded reading over the time: a single step of s anywhere in
 * the window makes a slope of 6 u (1 - u) s; with a chance of a half it strays by 0.59 s, and s is the root of 12 of them.
 */
const STAIRS = 0.59 * Math.sqrt(12);

/** Undefined where the window has fewer than two readings of the pressure, or of every girth. */
export function balanceOf(
  window: readonly BalanceReading[],
  answers: Answers,
  doubts: Doubts,
): BalanceFound | undefined {
  const rates = ratesOf(window, doubts.stairs);
  if (rates === undefined) return undefined;
  const warmed = rates.water?.slope ?? 0;
  const yielded =
    rates.growth.slope - STEEL_EXPANSION * warmed - answers.elastic.growth * rates.pressure.slope;
  const creep = answers.perGrowth * yielded;
  const squeezed = (answers.elastic.room + answers.compliance) * rates.pressure.slope;
  const warming = answers.surplus * warmed;
  const drawn = rates.drawn?.slope ?? 0;
  const loss = drawn - creep - squeezed + warming;
  const blurs = blursOf({ rates, answers, doubts, creep, squeezed });
  const spread = Math.hypot(...blurs.map(([, blur]) => blur));
  const [because] = [...blurs].sort((one, other) => Math.abs(other[1]) - Math.abs(one[1]));
  return {
    loss,
    low: loss - NINETY * spread,
    high: loss + NINETY * spread,
    verdict: loss > CLEAR * spread ? 'seen' : 'not seen',
    smallest: smallestOf(blurs, rates.drawn === undefined ? Math.abs(squeezed) : undefined),
    creep,
    warming,
    drawn,
    because: because[0],
  };
}

type Blur = readonly [Doubt, number];

interface BlurGivens {
  readonly rates: Rates;
  readonly answers: Answers;
  readonly doubts: Doubts;
  readonly creep: number;
  readonly squeezed: number;
}

/** What each doubt leaves open of the loss, mm³/s. */
function blursOf({ rates, answers, doubts, creep, squeezed }: BlurGivens): Blur[] {
  const { growth, girths, pressure, drawn, water } = rates;
  const { elastic, compliance, perGrowth, roomDoubt, surplus, air } = answers;
  const spring = elastic.room + compliance - perGrowth * elastic.growth;
  // Warming is taken off the growth, too.
  const warming = surplus + perGrowth * STEEL_EXPANSION;
  return [
    ['girth noise', perGrowth * doubts.growth * growth.blur],
    ['girth drift', (perGrowth * doubts.growthDrift) / Math.sqrt(girths)],
    ['supply', drawn === undefined ? 0 : doubts.drawn * drawn.blur],
    ['pressure', spring * doubts.pressure * pressure.blur],
    water === undefined
      ? ['no thermometer', warming * doubts.waterDrift]
      : ['temperature', warming * doubts.water * water.blur],
    ['room per girth', roomDoubt * creep],
    ['compression', COMPLIANCE_SHARE * squeezed],
    ['air dissolves', air / DISSOLVES],
  ];
}

/**
 * A loss that is just seen in nineteen of twenty holds: as large as its own spread, so many times. Where the valve is shut
 * (`squeezed`, mm³/s, without a loss) the pressure falls by all of it, and the doubt about compression grows with it.
 */
function smallestOf(blurs: readonly Blur[], squeezed: number | undefined): number {
  const times = CLEAR + NINETY;
  if (squeezed === undefined) return times * Math.hypot(...blurs.map(([, blur]) => blur));
  const others = Math.hypot(...blurs.flatMap(([doubt, blur]) => (doubt === 'compression' ? [] : [blur])));
  // L = times sqrt(others² + share² (squeezed + L)²)
  const share = times * COMPLIANCE_SHARE;
  const [a, b] = [1 - share ** 2, share ** 2 * squeezed];
  return (b + Math.sqrt(b * b + a * ((times * others) ** 2 + share ** 2 * squeezed ** 2))) / a;
}

/** Slope over the window by least squares, 1/s, and its standard deviation for readings with a noise of 1. */
interface Rate {
  readonly slope: number;
  readonly blur: number;
}

interface Rates {
  readonly pressure: Rate;
  /** Mean of those of the girths, and of how many. */
  readonly growth: Rate;
  readonly girths: number;
  readonly drawn?: Rate;
  readonly water?: Rate;
}

/** Each over its own readings: girths stand at growths of their own, so that one that is missing in a row must not count there. */
function ratesOf(window: readonly BalanceReading[], stairs: boolean): Rates | undefined {
  const rate = (read: (one: BalanceReading) => number | undefined) => rateOf(window, read);
  const pressure = rate((one) => one.pressure);
  const places = Array.from(
    { length: Math.max(0, ...window.map(({ growths }) => growths.length)) },
    (_, i) => i,
  );
  const girths = places.flatMap((i) => rateOf(window, ({ growths }) => growths[i], stairs) ?? []);
  const [drawn, water] = [rate((one) => one.drawn), rate((one) => one.water)];
  if (pressure === undefined || girths.length === 0) return undefined;
  const growth = {
    slope: mean(girths.map(({ slope }) => slope)),
    blur: Math.hypot(...girths.map(({ blur }) => blur)) / girths.length,
  };
  return {
    pressure,
    growth,
    girths: girths.length,
    ...(drawn === undefined ? {} : { drawn }),
    ...(water === undefined ? {} : { water }),
  };
}

/** Undefined for fewer than two readings, or all of one time. */
function rateOf(
  window: readonly BalanceReading[],
  read: (one: BalanceReading) => number | undefined,
  stairs = false,
): Rate | undefined {
  const points = window.flatMap((one) => {
    const value = read(one);
    return value === undefined ? [] : [{ time: one.seconds, value }];
  });
  if (points.length < 2) return undefined;
  const [first, last] = [points[0], points[points.length - 1]];
  const middle = mean(points.map(({ time }) => time));
  let [square, product] = [0, 0];
  for (const { time, value } of points) {
    square += (time - middle) ** 2;
    product += (time - middle) * (value - first.value);
  }
  if (!(square > 0)) return undefined;
  const blur = 1 / Math.sqrt(square);
  return { slope: product / square, blur: stairs ? Math.max(blur, STAIRS / (last.time - first.time)) : blur };
}
