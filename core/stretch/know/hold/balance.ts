/**
 * The balance of water in a hold: what was drawn, less what the wall has made room for, less what the pressure has
 * squeezed in, and what warming pushes out; the rest is lost. Volumes mm³, rates mm³/s.
 */
import { normalQuantile } from '../../../stats/normal.ts';
import { valueAt, type QuickPath } from '../../quick/path.ts';
import { airCompliance, STEEL_EXPANSION, warmingSurplus, waterCompliance } from '../../water.ts';

export interface BalanceReading {
  readonly seconds: number;
  /** MPa. */
  readonly pressure: number;
  /** Growth of each girth that is believed. */
  readonly growths: readonly number[];
  /** Drawn since the vent was shut; undefined where the valve is shut. */
  readonly drawn?: number;
  /** °C; undefined without a thermometer. */
  readonly water?: number;
}

/** How the tank answers, at the growth it has now. */
export interface Answers {
  /** Growth of girth and of the room per pressure while nothing yields, 1/MPa and mm³/MPa. */
  readonly elastic: { readonly growth: number; readonly room: number };
  /** Room per growth of girth while it yields, mm³. */
  readonly perGrowth: number;
  /** Standard deviation of it, as a fraction. Gain of the girths is in it. */
  readonly roomDoubt: number;
  /** Of water and air together, mm³/MPa. */
  readonly compliance: number;
  /** mm³/K that warmed water pushes out of the warmed steel. */
  readonly surplus: number;
  /** Trapped air at this pressure, mm³. */
  readonly air: number;
}

export interface Doubts {
  /** Standard deviations of one reading. */
  readonly pressure: number;
  readonly growth: number;
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

/**
 * Room per girth in a hold, lived over quick: 0.987 +/- 0.017 on 40 lived holds of seeds 410000 and up (another steel of the
 * range was gone by; by the true one +/- 0.011).
 */
const LIVED_ROOM = { mean: 0.987, deviation: 0.02 } as const;
/** Of the room and the compression per pressure; half as much again as the shell shows. Our estimate. */
const COMPLIANCE_SHARE = 0.07;
/** s in which still water takes up the trapped air, at the quickest; as a rate its spread. Our estimate. */
const DISSOLVES = 3600;
/** Growth under which little of the wall yields: room per girth is off by this share there, and by less as its square. */
const NEAR_YIELD = { growth: 0.006, deviation: 0.12 } as const;
/** Room per pressure of shut holds, lived over that of the tank as welded, on lived holds of the same seeds. */
const LIVED_SPRING = 0.95;
/** Standard deviations that a loss stands clear of nothing to be seen; holds that only creep stray by more than one. */
const CLEAR = 5;
const NINETY = normalQuantile(0.95);

/** Undefined where the window has fewer than two readings, or no girth. */
export function balanceOf(
  window: readonly BalanceReading[],
  answers: Answers,
  doubts: Doubts,
): BalanceFound | undefined {
  const rates = ratesOf(window);
  if (rates === undefined) return undefined;
  const warmed = rates.water?.slope;
  const yielded =
    rates.growth.slope - STEEL_EXPANSION * (warmed ?? 0) - answers.elastic.growth * rates.pressure.slope;
  const creep = answers.perGrowth * yielded;
  const squeezed = (answers.elastic.room + answers.compliance) * rates.pressure.slope;
  const warming = answers.surplus * (warmed ?? 0);
  const drawn = rates.drawn?.slope ?? 0;
  const loss = drawn - creep - squeezed + warming;
  const blurs = blursOf({ rates, girths: window[0].growths.length, answers, doubts, creep, squeezed });
  const spread = Math.hypot(...blurs.map(([, blur]) => blur));
  const [because] = [...blurs].sort((one, other) => Math.abs(other[1]) - Math.abs(one[1]));
  return {
    loss,
    low: loss - NINETY * spread,
    high: loss + NINETY * spread,
    verdict: loss > CLEAR * spread ? 'seen' : 'not seen',
    smallest: smallestOf(blurs, window[0].drawn === undefined ? Math.abs(squeezed) : undefined),
    creep,
    warming,
    drawn,
    because: because[0],
  };
}

interface BlurGivens {
  readonly rates: Rates;
  readonly girths: number;
  readonly answers: Answers;
  readonly doubts: Doubts;
  readonly creep: number;
  readonly squeezed: number;
}

/** What each doubt leaves open of the loss, mm³/s. */
function blursOf({ rates, girths, answers, doubts, creep, squeezed }: BlurGivens) {
  const { growth, pressure, drawn, water } = rates;
  const { elastic, compliance, perGrowth, surplus, air } = answers;
  const mean = Math.sqrt(girths);
  const spring = elastic.room + compliance - perGrowth * elastic.growth;
  const temperature: readonly [Doubt, number] =
    water === undefined
      ? ['no thermometer', surplus * doubts.waterDrift]
      : ['temperature', surplus * doubts.water * water.blur];
  const blurs: (readonly [Doubt, number])[] = [
    ['girth noise', (perGrowth * doubts.growth * growth.blur) / mean],
    ['girth drift', (perGrowth * doubts.growthDrift) / mean],
    ['supply', drawn === undefined ? 0 : doubts.drawn * drawn.blur],
    ['pressure', spring * doubts.pressure * pressure.blur],
    temperature,
    ['room per girth', answers.roomDoubt * creep],
    ['compression', COMPLIANCE_SHARE * squeezed],
    ['air dissolves', air / DISSOLVES],
  ];
  return blurs;
}

/**
 * A loss that is just seen in nineteen of twenty holds: as large as its own spread, so many times. Where the valve is shut
 * (`squeezed`, mm³/s, without a loss) the pressure falls by all of it, and the doubt about compression grows with it.
 */
function smallestOf(blurs: readonly (readonly [Doubt, number])[], squeezed: number | undefined): number {
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
  readonly growth: Rate;
  readonly drawn?: Rate;
  readonly water?: Rate;
}

/** Creep slows down, and what is drawn with it: over the same readings the slopes differ by the loss alone. */
function ratesOf(window: readonly BalanceReading[]): Rates | undefined {
  const rate = (read: (one: BalanceReading) => number | undefined) => rateOf(window, read);
  const pressure = rate((one) => one.pressure);
  const growth = rate(({ growths }) => (growths.length === 0 ? undefined : meanOf(growths)));
  const [drawn, water] = [rate((one) => one.drawn), rate((one) => one.water)];
  if (pressure === undefined || growth === undefined) return undefined;
  return {
    pressure,
    growth,
    ...(drawn === undefined ? {} : { drawn }),
    ...(water === undefined ? {} : { water }),
  };
}

/** Undefined for fewer than two readings, or all of one time. */
function rateOf(
  window: readonly BalanceReading[],
  read: (one: BalanceReading) => number | undefined,
): Rate | undefined {
  const points = window.flatMap((one) => {
    const value = read(one);
    return value === undefined ? [] : [{ time: one.seconds, value }];
  });
  if (points.length < 2) return undefined;
  const middle = meanOf(points.map(({ time }) => time));
  let [square, product] = [0, 0];
  for (const { time, value } of points) {
    square += (time - middle) ** 2;
    product += (time - middle) * (value - points[0].value);
  }
  return square > 0 ? { slope: product / square, blur: 1 / Math.sqrt(square) } : undefined;
}

export interface AnswersGivens {
  readonly path: QuickPath;
  /** mm³ before the stretch. */
  readonly filled: number;
  readonly growth: number;
  readonly pressure: number;
  /** °C, and air at filling, mm³. */
  readonly temperature: number;
  readonly air: number;
}

/**
 * From the path of a likely steel: how the tank answers hardly changes from steel to steel. A wall that has grown is wider
 * and thinner: its elastic girth per pressure has risen by twice the growth. The room per pressure has not: on the shell it
 * stands 7 % under to 2 % over that of the tank as welded (ten let down from 2 to 6 % of growth): the heads have stiffened.
 */
export function answersOf({ path, filled, growth, pressure, temperature, air }: AnswersGivens): Answers {
  const elastic = {
    growth: ((1 + 2 * growth) * meanOf(path.girths.map((girth) => girth[0]))) / path.pressure[0],
    room: (LIVED_SPRING * path.volume[0]) / path.pressure[0],
  };
  const [low, high] = [0.97 * growth, 1.03 * growth];
  const over = (y: Float64Array): number => valueAt(path.growth, y, high) - valueAt(path.growth, y, low);
  const risen = over(path.pressure);
  const room = over(path.volume) - elastic.room * risen;
  const girths = path.girths.map((girth, i) => path.creep.girths[i] * (over(girth) - elastic.growth * risen));
  const content = filled + valueAt(path.growth, path.volume, growth);
  return {
    elastic,
    perGrowth: (LIVED_ROOM.mean * path.creep.volume * room) / meanOf(girths),
    roomDoubt: Math.hypot(LIVED_ROOM.deviation, NEAR_YIELD.deviation * (NEAR_YIELD.growth / growth) ** 2),
    compliance: waterCompliance(content, pressure, temperature) + airCompliance(air, pressure),
    surplus: warmingSurplus(content, temperature),
    air: (air * 0.1) / (0.1 + pressure),
  };
}

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
