/** What the day is for, and the water it takes. */
import { airCompliance, type Forecast, waterCompliance } from '@hoopwright/core/stretch';
import type { Duty, Tank } from '@hoopwright/core/tank';
import { toBar, toLitre, toPercent } from '@hoopwright/core/units';
import type { Foreseen } from '../foresight/foresee.ts';
import type { Model, PlanWater, Shares, Target } from '../plan.ts';
import {
  arrivalKey,
  heldKey,
  LEFT_KEY,
  marksOf,
  type PlanRange,
  pumpingTime,
  ranged,
} from '../foresight/range.ts';
import { inBar, perMinute } from '../inBar.ts';
import type { SetUp } from '../setup/setUp.ts';

export interface TargetGivens {
  readonly tank: Tank;
  readonly duty: Duty;
  readonly foreseen: Foreseen;
  readonly range?: PlanRange;
}

/**
 * Stretch pressure over design pressure of the published methods: EN 13530-2 1.33, EN 13458-2 Annex C 1.5, ASME VIII-1
 * Appendix 44 1.5 to 1.6 (paper ICMR2015_242, type 304).
 */
const MODELS: readonly { readonly model: Model; readonly from: number; readonly to: number }[] = [
  { model: 'EN 13530-2', from: 1.32, to: 1.34 },
  { model: 'EN 13458-2', from: 1.495, to: 1.505 },
  { model: 'ASME VIII-1 Appendix 44', from: 1.5, to: 1.6 },
];

export function targetOf({ tank, duty, foreseen, range }: TargetGivens): Target {
  const { forecast, ladder } = foreseen;
  const draws = range?.draws ?? [];
  const marks = marksOf(foreseen);
  const growth = (key: string) =>
    ranged(
      toPercent(marks.get(key)?.largest ?? NaN),
      draws.map((d) => toPercent(d.marks[key].largest)),
    );
  const wall = Math.min(...tank.courses.map((c) => c.wall));
  const survives = range?.survive99;
  const { stretchFactor } = duty;
  return {
    workingPressure_bar: inBar(duty.workingPressure),
    stretchFactor,
    pressure_bar: inBar(ladder.target),
    model: MODELS.find((m) => stretchFactor >= m.from && stretchFactor <= m.to)?.model ?? 'none',
    hoopStress_MPa: (ladder.target * (tank.insideDiameter + wall)) / 2 / wall,
    thinnestWall_mm: wall,
    ...(forecast.firstYield === undefined ? {} : { firstYield_bar: toBar(forecast.firstYield.pressure) }),
    ...(forecast.barrelYield === undefined ? {} : { barrelYield_bar: toBar(forecast.barrelYield) }),
    growth_percent: {
      arrived: growth(arrivalKey(ladder.target)),
      held: growth(heldKey(ladder.target)),
      left: growth(LEFT_KEY),
    },
    ...maximumOf(forecast, range),
    ...(survives === undefined ? {} : { survive99_bar: toBar(survives.value) }),
    ...(survives?.assured === undefined ? {} : { assured99_bar: toBar(survives.assured) }),
  };
}

function maximumOf({ maximum }: Forecast, range: PlanRange | undefined): Pick<Target, 'maximum'> {
  if (maximum === undefined) return {};
  const [low, high] = range?.maximum ?? [];
  const span = low === undefined || high === undefined ? {} : { low: toBar(low), high: toBar(high) };
  return {
    maximum: {
      kind: maximum.kind,
      pressure_bar: { value: toBar(maximum.pressure), ...span },
      growth_percent: toPercent(maximum.growth),
      extrapolated: maximum.extrapolated,
    },
  };
}

/** Which litres go where. */
export function waterOf({ tank, foreseen, range }: TargetGivens, setUp: SetUp): PlanWater {
  const { forecast, ladder } = foreseen;
  const end = marksOf(foreseen).get(heldKey(ladder.target));
  if (end === undefined) throw new Error('the final hold has no end');
  const draws = range?.draws ?? [];
  const key = heldKey(ladder.target);
  const litres = (d: (typeof draws)[number]): number => toLitre(d.marks[key].pumped.all);
  const pump = ranged(toLitre(end.pumped.all), draws.map(litres));
  const { stroke, flow } = setUp.pump;
  return {
    fill_L: toLitre(forecast.datum.volume - tank.water.trappedAir),
    pump_L: pump,
    shares_L: {
      growth: toLitre(end.pumped.wall),
      compression: toLitre(end.pumped.water),
      trappedAir: toLitre(end.pumped.air),
    },
    perBar_mL: perBar(foreseen),
    ...(stroke === undefined
      ? {}
      : {
          stroke_mL: stroke / 1e3,
          strokes: ranged(
            (toLitre(end.pumped.all) * 1e6) / stroke,
            draws.map((d) => (litres(d) * 1e6) / stroke),
          ),
        }),
    ...(flow === undefined
      ? {}
      : {
          flow_L_per_min: perMinute(flow),
          pumping_min: ranged(
            pumpingTime(forecast) / 60,
            draws.map((d) => d.pumping / 60),
          ),
        }),
    temperature_C: tank.water.temperature,
    trappedAir_L: toLitre(tank.water.trappedAir),
    ...(setUp.chloride === undefined ? {} : { chloride_ppm: setUp.chloride }),
  };
}

/** At the top of the first step, where everything is elastic: wall as this tank has it, water and air by their laws. */
function perBar(foreseen: Foreseen): Shares {
  const { forecast, ladder } = foreseen;
  const marks = marksOf(foreseen);
  const [low, , high] = ladder.first.map((p) => marks.get(arrivalKey(p)));
  if (low === undefined || high === undefined) throw new Error('the first step has no points');
  const { temperature, trappedAir } = forecast.datum.solver.shell.tank.water;
  // mm³/MPa to mL/bar.
  const one = 1e-4;
  return {
    growth: (one * (high.growth - low.growth)) / (high.pressure - low.pressure),
    compression: one * waterCompliance(forecast.datum.volume, high.pressure, temperature),
    trappedAir: one * airCompliance(trappedAir, high.pressure),
  };
}
