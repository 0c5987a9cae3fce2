/** Why there is no plan: each reason with its figures, as a value; the sentence is made by `report`. */
import type { Forecast } from '@hoopwright/core/stretch';
import type { Duty, Tank } from '@hoopwright/core/tank';
import { toLitre, toPercent } from '@hoopwright/core/units';
import type { Foreseen } from './foresight/foresee.ts';
import { uptakeAt } from './part/limits.ts';
import { inBar, perMinute } from './inBar.ts';
import type { SetUp } from './setup/setUp.ts';

export type Refusal =
  | { readonly code: 'no duty' }
  | {
      readonly code: 'bursts before target';
      readonly target_bar: number;
      /** Undefined where the path found no maximum. */
      readonly end?: { readonly kind: string; readonly pressure_bar: number };
    }
  | {
      readonly code: 'over 99 of 100';
      readonly target_bar: number;
      readonly survive99_bar: number;
      readonly draws: number;
    }
  | {
      readonly code: 'beyond evidence';
      readonly plastic_percent: number;
      readonly evidence_percent: number;
      readonly pressure_bar: number;
    }
  | { readonly code: 'girth not drawn'; readonly girth: string; readonly drawn: readonly string[] }
  /** A reading that can only be taken at the tank is needed at a pressure at which nobody may be there. */
  | {
      readonly code: 'someone at the tank';
      readonly reads: 'pressure' | 'girth' | 'zero';
      readonly pressure_bar: number;
      readonly approach_bar: number;
    }
  | { readonly code: 'relief under stretch'; readonly opens_bar: number; readonly target_bar: number }
  | { readonly code: 'relief too small'; readonly flow_L_per_min: number; readonly pump_L_per_min: number }
  | {
      readonly code: 'gauge range';
      readonly name: string;
      readonly range_bar: number;
      readonly needs_bar: number;
    }
  | { readonly code: 'pump pressure'; readonly highest_bar: number; readonly target_bar: number }
  | {
      readonly code: 'pump too slow';
      readonly flow_mL_per_min: number;
      readonly needs_mL_per_min: number;
    }
  | { readonly code: 'air over limit'; readonly air_L: number; readonly limit_L: number };

/** What can be said before anything is forecast. */
export function refusedSetUp(tank: Tank, setUp: SetUp, target: number): Refusal[] {
  return [
    ...placeRefusals(tank, setUp, target),
    ...gaugeRefusals(setUp, target),
    ...reliefRefusals(setUp, target),
    ...pumpPressure(setUp, target),
  ];
}

function placeRefusals(tank: Tank, { readings, gauges, approach }: SetUp, target: number): Refusal[] {
  const drawn = tank.girths.map((g) => g.name);
  const unknown = readings
    .filter((r) => !drawn.includes(r.girth))
    .map((r): Refusal => ({ code: 'girth not drawn', girth: r.girth, drawn }));
  const someone = (reads: 'pressure' | 'girth' | 'zero', pressure: number): Refusal => ({
    code: 'someone at the tank',
    reads,
    pressure_bar: inBar(pressure),
    approach_bar: inBar(approach),
  });
  const behind = (list: readonly { readonly from: string }[]): boolean =>
    list.some((one) => one.from === 'behind the wall');
  return [
    ...unknown,
    ...(behind(readings) ? [] : [someone('girth', target)]),
    ...(behind(gauges) ? [] : [someone('pressure', target)]),
    // A tape needs its zero under some pressure; with an approach pressure of nothing nobody can take it.
    ...(approach <= 0 && readings.some((r) => r.from === 'at the tank') ? [someone('zero', 0)] : []),
  ];
}

/** Every gauge must reach the pressure at which the relief valve opens, or the target where none is stated. */
function gaugeRefusals({ gauges, relief }: SetUp, target: number): Refusal[] {
  const needs = Math.max(target, relief?.opens ?? 0);
  return gauges
    .filter((g) => g.range < needs)
    .map((g) => ({ code: 'gauge range', name: g.name, range_bar: inBar(g.range), needs_bar: inBar(needs) }));
}

function reliefRefusals({ relief, pump }: SetUp, target: number): Refusal[] {
  if (relief === undefined) return [];
  const under: Refusal[] =
    relief.opens <= target
      ? [{ code: 'relief under stretch', opens_bar: inBar(relief.opens), target_bar: inBar(target) }]
      : [];
  const small: Refusal[] =
    relief.flow !== undefined && pump.flow !== undefined && relief.flow < pump.flow
      ? [
          {
            code: 'relief too small',
            flow_L_per_min: perMinute(relief.flow),
            pump_L_per_min: perMinute(pump.flow),
          },
        ]
      : [];
  return [...under, ...small];
}

const pumpPressure = ({ pump }: SetUp, target: number): Refusal[] =>
  pump.highest !== undefined && pump.highest < target
    ? [{ code: 'pump pressure', highest_bar: inBar(pump.highest), target_bar: inBar(target) }]
    : [];

/** The pump at full flow shall grow the wall so many times faster than the rate that ends the hold: our choice, no source. */
const FASTER_THAN_REST = 10;

export interface ForeseenGivens {
  readonly tank: Tank;
  readonly duty: Duty;
  readonly setUp: SetUp;
  readonly foreseen: Foreseen;
  /** mm³ at filling. */
  readonly airLimit: number;
  readonly survive99?: { readonly pressure: number; readonly draws: number };
}

/** What the forecast itself says against the day. */
export function refusedForesight(givens: ForeseenGivens): Refusal[] {
  const { tank, setUp, foreseen, airLimit, survive99 } = givens;
  const { ladder, forecast, rule } = foreseen;
  const found: Refusal[] = [];
  const needs = FASTER_THAN_REST * uptakeAt(foreseen, rule.rate);
  if (setUp.pump.flow !== undefined && setUp.pump.flow < needs) {
    const mL = (flow: number): number => (60 * flow) / 1e3;
    found.push({ code: 'pump too slow', flow_mL_per_min: mL(setUp.pump.flow), needs_mL_per_min: mL(needs) });
  }
  if (tank.water.trappedAir > airLimit)
    found.push({ code: 'air over limit', air_L: toLitre(tank.water.trappedAir), limit_L: toLitre(airLimit) });
  if (survive99 !== undefined && ladder.target > survive99.pressure)
    found.push({
      code: 'over 99 of 100',
      target_bar: inBar(ladder.target),
      survive99_bar: inBar(survive99.pressure),
      draws: survive99.draws,
    });
  for (const remark of forecast.remarks) {
    if (remark.code === 'beyond evidence')
      found.push({
        code: 'beyond evidence',
        plastic_percent: toPercent(remark.plastic),
        evidence_percent: toPercent(remark.evidence),
        pressure_bar: inBar(remark.pressure),
      });
  }
  return found;
}

export function refusedBurst({ maximum }: Forecast, target: number): Refusal {
  return {
    code: 'bursts before target',
    target_bar: inBar(target),
    ...(maximum === undefined ? {} : { end: { kind: maximum.kind, pressure_bar: inBar(maximum.pressure) } }),
  };
}
