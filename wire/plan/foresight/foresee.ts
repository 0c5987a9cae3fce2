/** The forecast that a plan stands on: the very day, with its stops, its holds and its final hold until the growth rests. */
import {
  type Forecast,
  forecast,
  type ForecastOrders,
  type Moment,
  type Rest,
  restAfter,
  type RestRule,
  USUAL_REST,
} from '@hoopwright/core/stretch';
import type { Duty, Hold, Tank } from '@hoopwright/core/tank';
import { type Ladder, ladderFor } from './ladder.ts';

export interface Foreseen {
  readonly ladder: Ladder;
  /** Through all holds, the final one as long as the rule asks. */
  readonly forecast: Forecast;
  readonly rest: Rest;
  readonly rule: RestRule;
}

export type Foresight =
  | { readonly kind: 'foreseen'; readonly foreseen: Foreseen }
  /** The metal gives way before the target; the forecast says where. */
  | { readonly kind: 'bursts before'; readonly forecast: Forecast };

export interface ForesightOrders {
  readonly duty: Duty;
  readonly target: number;
  readonly approach: number;
  /** Rounds of forecasting done, 0..1; true gives up. */
  readonly progress?: (fraction: number) => boolean;
  readonly shell?: NonNullable<ForecastOrders['shell']>;
}

export function foresee(tank: Tank, orders: ForesightOrders): Foresight {
  const { duty, target } = orders;
  const rule = ruleFor(duty, target);
  const whole = runDay(tank, orders, { holds: [finalHold(target, rule.cap)], marks: [], round: 0 });
  if (givesWay(whole)) return { kind: 'bursts before', forecast: whole };
  const ladder = ladderFor(whole, { target, approach: orders.approach, holds: duty.holds });
  const long = runDay(tank, orders, dayOn(ladder, rule.cap, 1));
  if (givesWay(long)) return { kind: 'bursts before', forecast: long };
  const rest = restAfter(finalMoments(long), rule);
  const result = runDay(tank, orders, dayOn(ladder, rest.time, 2));
  return { kind: 'foreseen', foreseen: { ladder, forecast: result, rest, rule } };
}

/** A hold at the target in the duty is the least that the final hold lasts. */
function ruleFor({ holds }: Duty, target: number): RestRule {
  const asked = holds.filter((h) => h.pressure >= target * (1 - 1e-9)).map((h) => h.time);
  const atLeast = Math.max(USUAL_REST.atLeast, ...asked);
  return { ...USUAL_REST, atLeast, cap: Math.max(USUAL_REST.cap, atLeast) };
}

interface Day {
  readonly holds: readonly Hold[];
  /** Pressures that the path lands on besides. */
  readonly marks: readonly number[];
  /** 0, 1, 2: which of the three forecasts it is, for the progress. */
  readonly round: number;
}

const ROUNDS = 3;

const finalHold = (pressure: number, time: number): Hold => ({ pressure, time, valve: 'open' });

const dayOn = (ladder: Ladder, time: number, round: number): Day => ({
  holds: [...ladder.holds, finalHold(ladder.target, time)],
  marks: [...ladder.first, ...ladder.stops],
  round,
});

function runDay(tank: Tank, orders: ForesightOrders, day: Day): Forecast {
  const { duty, target, progress, shell } = orders;
  return forecast(
    tank,
    { ...duty, holds: day.holds },
    {
      target,
      marks: day.marks,
      ...(shell === undefined ? {} : { shell }),
      ...(progress === undefined ? {} : { progress: (f) => progress((day.round + f) / ROUNDS) }),
    },
  );
}

/** Bursts before the target, or cannot be released from it. */
const givesWay = (answer: Forecast): boolean =>
  answer.arrived === undefined ||
  answer.released === undefined ||
  answer.remarks.some((remark) => remark.code === 'bursts before target');

/** The arrival at the target and the hold there. */
export function finalMoments(answer: Forecast): Moment[] {
  const { arrived } = answer;
  if (arrived === undefined) throw new Error('a forecast that never arrives has no final hold');
  const from = answer.path.indexOf(arrived);
  const hold = answer.path.slice(from + 1);
  const end = hold.findIndex((m) => m.phase !== 'hold');
  return [arrived, ...hold.slice(0, end < 0 ? undefined : end)];
}
