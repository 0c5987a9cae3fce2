/** What the rows of a hold say: its growth rate, and the balance of its water. */
import {
  answersOf,
  balanceOf,
  type BalanceReading,
  creepFound,
  type Doubts,
  type QuickPath,
  type QuickTank,
} from '@hoopwright/core/stretch';
import { fromBar, fromLitre } from '@hoopwright/core/units';
import type { Plan, Step } from '../../plan/plan.ts';
import type { Channel } from '../../reading/channel.ts';
import type { Row } from '../../reading/row.ts';
import { litres } from '../../reading/scene.ts';
import type { HoldFacts, LeakFacts } from '../facts.ts';
import { DRIFT, type Instruments, spreadOf } from '../instruments.ts';

/** A hold as it runs. */
export interface HoldGivens {
  readonly plan: Plan;
  readonly step: Step;
  readonly channels: readonly Channel[];
  readonly instruments: Instruments;
  /** Rows of this hold, the arrival first. */
  readonly rows: readonly Row[];
  /** As a fraction, of a girth that is believed. */
  readonly growthIn: (channel: Channel | undefined, row: Row) => number | undefined;
  /** s since the vent was shut. */
  readonly now: number;
}

const PER_HOUR = 100 * 3600;
/** s over which the rate of the final hold is stated (core/stretch/day/rest.ts), and of another one at the least. */
const WINDOW = 1800;
const SHORT_WINDOW = 60;

/** Of the girth that grows quickest. */
export function holdFacts(givens: HoldGivens): HoldFacts | undefined {
  const { instruments, rows, now, step, growthIn } = givens;
  const begun = rows[0]?.seconds;
  if (begun === undefined) return undefined;
  const found = instruments.girths
    .flatMap((channel, i) => {
      if (channel === undefined) return [];
      const readings = rows.flatMap((row) => {
        const growth = growthIn(channel, row);
        return growth === undefined ? [] : [{ time: row.seconds - begun, growth }];
      });
      const half = 0.5 * (readings.at(-1)?.time ?? 0);
      const length = instruments.lengths[i];
      const creep = creepFound({
        readings,
        blur: spreadOf(channel) / length,
        drift: driftOf(length),
        window: step.kind === 'final hold' ? WINDOW : Math.max(SHORT_WINDOW, half),
      });
      return creep === undefined ? [] : [creep];
    })
    .sort((a, b) => b.rate - a.rate)[0];
  const minutes = (now - begun) / 60;
  if (found === undefined) return { minutes };
  const { rate, low, high, verdict, settlesAt } = found;
  return {
    minutes,
    rate: { value: PER_HOUR * rate, low: PER_HOUR * low, high: PER_HOUR * high },
    verdict,
    ...(settlesAt === undefined ? {} : { settles_min: settlesAt / 60 }),
  };
}

/** Even between its ends: the standard deviation is the end over the root of three. */
const driftOf = (length: number): number => DRIFT.wire / length / DRIFT.time / Math.sqrt(3);

/** mm³/s to mL/min. */
const PER_MINUTE = 0.06;
/** s of a hold that the balance looks back, needs at the least, and leaves out after arrival. Our choice. */
const LOOKS_BACK = 900;
const NEEDS = 240;
const AFTER_ARRIVAL = 60;

export interface StretchedGivens {
  readonly quick: QuickTank;
  /** Of a likely steel: litres and girths hardly change from steel to steel. */
  readonly path: QuickPath;
}

export function leakFacts(givens: HoldGivens, { quick, path }: StretchedGivens): LeakFacts | undefined {
  const window = balanceWindow(givens);
  const last = window.at(-1);
  if (last === undefined || last.seconds - window[0].seconds < NEEDS) return undefined;
  const { tank, filled } = quick;
  const answers = answersOf({
    path,
    filled,
    growth: Math.max(path.growth[1], ...last.growths.flatMap((growth) => growth ?? [])),
    pressure: last.pressure,
    temperature: tank.water.temperature,
    air: tank.water.trappedAir,
  });
  const found = balanceOf(window, answers, doubtsOf(givens));
  if (found === undefined) return undefined;
  return {
    seen: found.verdict === 'seen',
    loss: PER_MINUTE * found.loss,
    low: PER_MINUTE * found.low,
    high: PER_MINUTE * found.high,
    smallest: PER_MINUTE * found.smallest,
    noThermometer: found.because === 'no thermometer',
  };
}

function balanceWindow({ rows, step, instruments, channels, plan, growthIn }: HoldGivens): BalanceReading[] {
  const [gauge] = instruments.gauges;
  if (gauge === undefined) return [];
  const from = Math.max((rows[0]?.seconds ?? 0) + AFTER_ARRIVAL, (rows.at(-1)?.seconds ?? 0) - LOOKS_BACK);
  const open = step.hold?.valve !== 'shut';
  const { thermometer } = instruments;
  return rows.flatMap((row) => {
    if (row.seconds < from || row.values[gauge.name] === undefined) return [];
    const growths = instruments.girths.map((channel) => growthIn(channel, row));
    const drawn = litres({ channels, plan }, row);
    if (growths.every((growth) => growth === undefined) || (open && drawn === undefined)) return [];
    const water = thermometer === undefined ? undefined : row.values[thermometer.name];
    return [
      {
        seconds: row.seconds,
        pressure: fromBar(row.values[gauge.name]),
        growths,
        ...(open && drawn !== undefined ? { drawn: fromLitre(drawn) } : {}),
        ...(water === undefined ? {} : { water }),
      },
    ];
  });
}

/** To more than its noise: a tape, or a wire of which no noise is known. */
const isRounded = ({ noise, resolution }: Channel): boolean => (noise ?? 0) < resolution / Math.sqrt(12);

function doubtsOf({ instruments, channels, plan }: HoldGivens): Doubts {
  const { gauges, girths, lengths, thermometer } = instruments;
  const blurs = girths.flatMap((channel, i) =>
    channel === undefined ? [] : [spreadOf(channel) / lengths[i]],
  );
  const supply = channels.find(({ reads }) => reads === 'litres' || reads === 'strokes');
  const step = supply?.reads === 'strokes' ? (plan.water.stroke_mL ?? 0) / 1e3 : 1;
  return {
    pressure: fromBar(spreadOf(gauges[0])),
    growth: Math.max(...blurs),
    stairs: girths.some((channel) => channel !== undefined && isRounded(channel)),
    drawn: supply === undefined ? 0 : fromLitre(step * spreadOf(supply)),
    water: thermometer === undefined ? 0 : spreadOf(thermometer),
    growthDrift: driftOf(lengths[0]),
    waterDrift: DRIFT.water / DRIFT.time / Math.sqrt(3),
  };
}
