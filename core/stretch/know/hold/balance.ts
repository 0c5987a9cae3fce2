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

/** Share of the window whose readings stand for its start, and for its end. */
const ENDS = 1 / 6;
/** Standard deviations of the answers of the tank, as fractions. Gain of the girths is in the first. Our estimate. */
const ROOM_SHARE = 0.035;
const COMPLIANCE_SHARE = 0.05;
/** s in which still water takes up the trapped air, at the quickest; as a rate its spread. Our estimate. */
const DISSOLVES = 3600;
/** Standard deviations that a loss stands clear of nothing to be seen: 1 in 30,000 holds without a leak. */
const CLEAR = 4;
const NINETY = normalQuantile(0.95);

/** Undefined where the window has fewer than two readings, or no girth. */
export function balanceOf(
  window: readonly BalanceReading[],
  answers: Answers,
  doubts: Doubts,
): BalanceFound | undefined {
  const [a, b] = [endOf(window, 'start'), endOf(window, 'end')];
  if (a === undefined || b === undefined || !(b.seconds > a.seconds)) return undefined;
  const time = b.seconds - a.seconds;
  const risen = b.pressure - a.pressure;
  const warmed = a.water === undefined || b.water === undefined ? undefined : b.water - a.water;
  const grown = b.growth - a.growth - STEEL_EXPANSION * (warmed ?? 0);
  const yielded = grown - answers.elastic.growth * risen;
  const creep = answers.perGrowth * yielded;
  const squeezed = (answers.elastic.room + answers.compliance) * risen;
  const warming = answers.surplus * (warmed ?? 0);
  const drawn = a.drawn === undefined || b.drawn === undefined ? 0 : b.drawn - a.drawn;
  const loss = (drawn - creep - squeezed + warming) / time;
  const both = (blur: number): number => blur * Math.hypot(1 / Math.sqrt(a.count), 1 / Math.sqrt(b.count));
  const girths = Math.sqrt(Math.max(1, window[0].growths.length));
  const spring = answers.elastic.room + answers.compliance - answers.perGrowth * answers.elastic.growth;
  const blurs: readonly (readonly [Doubt, number])[] = [
    ['girth noise', (answers.perGrowth * both(doubts.growth)) / girths / time],
    ['girth drift', (answers.perGrowth * doubts.growthDrift) / girths],
    ['supply', drawn === 0 && b.drawn === undefined ? 0 : both(doubts.drawn) / time],
    ['pressure', (spring * both(doubts.pressure)) / time],
    warmed === undefined
      ? ['no thermometer', answers.surplus * doubts.waterDrift]
      : ['temperature', (answers.surplus * both(doubts.water)) / time],
    ['room per girth', (ROOM_SHARE * creep) / time],
    ['compression', (COMPLIANCE_SHARE * squeezed) / time],
    ['air dissolves', answers.air / DISSOLVES],
  ];
  const spread = Math.hypot(...blurs.map(([, blur]) => blur));
  const [because] = [...blurs].sort((one, other) => Math.abs(other[1]) - Math.abs(one[1]));
  return {
    loss,
    low: loss - NINETY * spread,
    high: loss + NINETY * spread,
    verdict: loss > CLEAR * spread ? 'seen' : 'not seen',
    smallest: (CLEAR + NINETY) * spread,
    creep: creep / time,
    warming: warming / time,
    drawn: drawn / time,
    because: because[0],
  };
}

interface End {
  readonly seconds: number;
  readonly pressure: number;
  readonly growth: number;
  readonly drawn: number | undefined;
  readonly water: number | undefined;
  readonly count: number;
}

function endOf(window: readonly BalanceReading[], which: 'start' | 'end'): End | undefined {
  if (window.length < 2 || window[0].growths.length === 0) return undefined;
  const count = Math.max(1, Math.floor(ENDS * window.length));
  const part = which === 'start' ? window.slice(0, count) : window.slice(-count);
  const mean = (read: (one: BalanceReading) => number | undefined): number | undefined => {
    const values = part.flatMap((one) => read(one) ?? []);
    return values.length === 0 ? undefined : values.reduce((sum, x) => sum + x, 0) / values.length;
  };
  return {
    seconds: mean(({ seconds }) => seconds) ?? 0,
    pressure: mean(({ pressure }) => pressure) ?? 0,
    growth: mean(({ growths }) => growths.reduce((sum, x) => sum + x, 0) / growths.length) ?? 0,
    drawn: mean(({ drawn }) => drawn),
    water: mean(({ water }) => water),
    count,
  };
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

/** From the path of a likely steel: how the tank answers hardly changes from steel to steel. */
export function answersOf({ path, filled, growth, pressure, temperature, air }: AnswersGivens): Answers {
  const elastic = {
    growth: meanGirth(path, path.growth[0]) / path.pressure[0],
    room: path.volume[0] / path.pressure[0],
  };
  const [low, high] = [0.97 * growth, 1.03 * growth];
  const over = (read: (at: number) => number): number => read(high) - read(low);
  const risen = over((at) => valueAt(path.growth, path.pressure, at));
  const room = over((at) => valueAt(path.growth, path.volume, at)) - elastic.room * risen;
  const girth = over((at) => meanGirth(path, at)) - elastic.growth * risen;
  return {
    elastic,
    perGrowth: (path.creep.volume * room) / girth,
    compliance: waterCompliance(filled, pressure, temperature) + airCompliance(air, pressure),
    surplus: warmingSurplus(filled, temperature),
    air: (air * 0.1) / (0.1 + pressure),
  };
}

const meanGirth = (path: QuickPath, growth: number): number =>
  path.girths.reduce((sum, girth) => sum + valueAt(path.growth, girth, growth), 0) / path.girths.length;
