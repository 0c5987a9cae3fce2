/** What the readings of this tank ask of their instruments, where each is taken, and what the set can see of a leak. */
import { DETECTION, NINETY, readingSpread, slopeSpread } from '@hoopwright/core/gauge';
import {
  airCompliance,
  type Blur,
  smallestLeak,
  waterCompliance,
  warmingSurplus,
} from '@hoopwright/core/stretch';
import { fromPercent, toBar } from '@hoopwright/core/units';
import type { Foreseen } from '../foresight/foresee.ts';
import type { LeakSeen, Need, Place } from '../plan.ts';
import { arrivalKey, heldKey, marksOf } from '../foresight/range.ts';
import { inBar } from '../inBar.ts';
import type { GirthReading, SetUp } from '../setup/setUp.ts';

export function placesOf(setUp: SetUp, target: number): Place[] {
  const upTo = (from: Place['from']): number => inBar(from === 'at the tank' ? setUp.approach : target);
  return [
    ...setUp.gauges.map(
      ({ name, from }): Place => ({ name, reads: 'pressure', by: 'gauge', from, upTo_bar: upTo(from) }),
    ),
    ...setUp.readings.map(
      ({ girth, by, from }): Place => ({ name: girth, reads: 'girth', by, from, upTo_bar: upTo(from) }),
    ),
    {
      name: setUp.supply.by,
      reads: 'litres',
      by: setUp.supply.by,
      from: 'behind the wall',
      upTo_bar: inBar(target),
    },
    ...(setUp.thermometer === undefined
      ? []
      : [
          {
            name: 'thermometer',
            reads: 'temperature',
            by: 'thermometer',
            from: 'behind the wall',
            upTo_bar: inBar(target),
          } as const,
        ]),
  ];
}

/** A step of the gauge may move the growth by so much at the stretch pressure: our choice, no source. */
const GROWTH_PER_GAUGE_STEP = 0.001;
/** The growth rate at the end of the final hold shall be known to half of the rate that ends it: our choice, no source. */
const RATE_SHARE = 0.5;
/** The supply shall show a tenth of the air that is allowed, the thermometer a fifth of the loss that is: our choice. */
const AIR_SHARE = 0.1;
const WARMING_SHARE = 0.2;
/** Time over which a leak is looked for, s. */
const LEAK_WINDOW = 600;
/** Warming of the water that nobody sees without a thermometer: 0.2 K in 5 min, in sun or wind. Our choice, no source. */
const UNSEEN_WARMING = 0.2 / 300;

export interface InstrumentGivens {
  readonly foreseen: Foreseen;
  readonly setUp: SetUp;
  /** mm³ of air at filling, and mm³/s. */
  readonly airLimit: number;
  readonly leakLimit: number;
  /** Largest growth of girth that the plan lets happen under pressure, as a fraction. */
  readonly growthLimit: number;
}

export function needsOf(givens: InstrumentGivens): Need[] {
  const { foreseen, setUp, airLimit, leakLimit, growthLimit } = givens;
  const { forecast, ladder } = foreseen;
  const top = Math.max(ladder.target, setUp.relief?.opens ?? 0);
  const gaugeStep = Math.min(GROWTH_PER_GAUGE_STEP * slopeAtTarget(foreseen), ladder.first[2] / 10);
  const surplus = Math.abs(
    warmingSurplus(forecast.datum.volume, forecast.datum.solver.shell.tank.water.temperature),
  );
  return [
    ...setUp.gauges.map((gauge): Need => {
      const need = { range: toBar(top), resolution: toBar(gaugeStep) };
      const has = { range: toBar(gauge.range), resolution: toBar(gauge.resolution) };
      return { name: gauge.name, unit: 'bar', ...need, has, enough: fits(need, has) };
    }),
    ...setUp.readings.map((reading): Need => {
      const girth = girthOf(foreseen, reading);
      const need = { range: growthLimit * girth, resolution: resolutionFor(girth, foreseen.rule.window) };
      const has = {
        ...(reading.range === undefined ? {} : { range: reading.range }),
        resolution: reading.resolution,
      };
      return { name: reading.girth, unit: 'mm', ...need, has, enough: fits(need, has) };
    }),
    need('mL', setUp.supply.by, (AIR_SHARE * airLimit) / 1e3, setUp.supply.resolution / 1e3),
    ...(surplus < 1
      ? []
      : [need('K', 'thermometer', (WARMING_SHARE * leakLimit * LEAK_WINDOW) / surplus, setUp.thermometer)]),
  ];
}

const need = (unit: Need['unit'], name: string, resolution: number, has: number | undefined): Need => ({
  name,
  unit,
  resolution,
  has: has === undefined ? {} : { resolution: has },
  enough: has !== undefined && has <= resolution,
});

const fits = (
  wanted: { readonly range: number; readonly resolution: number },
  has: { readonly range?: number; readonly resolution: number },
): boolean => (has.range ?? Infinity) >= wanted.range && has.resolution <= wanted.resolution;

/** MPa per unit of growth of the largest girth on arrival at the target: the steel's own slope. */
export function slopeAtTarget({ forecast, ladder }: Foreseen): number {
  const climb = forecast.path.filter(
    (m) => m.phase === 'stretch' && m.pressure <= ladder.target * (1 + 1e-9),
  );
  const [a, b] = climb.slice(-2);
  if (a === undefined || b === undefined) return Infinity;
  return (b.pressure - a.pressure) / (b.largest.growth - a.largest.growth);
}

/** mm: two readings a window apart, each on its step, give the rate to the wanted share (90 %). */
function resolutionFor(girth: number, window: number): number {
  const rate = (RATE_SHARE * (fromPercent(0.1) * girth)) / 3600;
  return (rate * window * Math.sqrt(12)) / (NINETY * Math.SQRT2);
}

function girthOf({ forecast }: Foreseen, reading: GirthReading): number {
  const { girths } = forecast.datum.solver.shell.tank;
  const place = girths.findIndex((g) => g.name === reading.girth);
  return forecast.datum.girths[Math.max(place, 0)];
}

/** Litres that the wall takes up per growth of girth while it creeps: mm³ per unit of mean growth. */
export function volumePerGrowth(foreseen: Foreseen): number {
  const marks = marksOf(foreseen);
  const from = marks.get(arrivalKey(foreseen.ladder.target));
  const to = marks.get(heldKey(foreseen.ladder.target));
  const mean = (growths: readonly number[]): number =>
    growths.reduce((sum, g) => sum + g, 0) / growths.length;
  if (from === undefined || to === undefined) throw new Error('the final hold has no end');
  const grown = mean(to.growths) - mean(from.growths);
  // Nothing crept: a barrel in plane strain, twice the growth of girth.
  if (grown < 1e-6) return 2 * foreseen.forecast.datum.volume;
  return (to.growth - from.growth) / grown;
}

export function leakSeen({ foreseen, setUp }: Pick<InstrumentGivens, 'foreseen' | 'setUp'>): LeakSeen {
  const behind = setUp.readings.filter((r) => r.from === 'behind the wall');
  const perGrowth = volumePerGrowth(foreseen);
  const blurs = blursOf(foreseen, setUp, perGrowth);
  const shut = smallestLeak(
    blurs.filter((b) => b.of !== 'litres'),
    DETECTION,
  );
  const open = smallestLeak(blurs, DETECTION);
  const rates = behind.map(
    (r) => (3600 * slopeSpread(r, r.every, foreseen.rule.window)) / girthOf(foreseen, r),
  );
  const best = rates.length === 0 ? 0 : Math.min(...rates);
  return {
    minutes: LEAK_WINDOW / 60,
    open_mL_per_min: perMinute(open.rate),
    shut_mL_per_min: perMinute(shut.rate),
    blurredBy: shut.blurs[0]?.of ?? 'pressure',
    rate_percent_per_h: 100 * NINETY * best,
    uptake_mL_per_min: perMinute(perGrowth * foreseen.rule.rate),
  };
}

/** mm³/s to mL/min. */
const perMinute = (rate: number): number => (60 * rate) / 1e3;

function blursOf(foreseen: Foreseen, setUp: SetUp, perGrowth: number): Blur[] {
  const { forecast, ladder } = foreseen;
  const { temperature, trappedAir } = forecast.datum.solver.shell.tank.water;
  const behind = setUp.readings.filter((r) => r.from === 'behind the wall');
  const growth = behind.map((r) => slopeSpread(r, r.every, LEAK_WINDOW) / girthOf(foreseen, r));
  const gauges = setUp.gauges.filter((g) => g.from === 'behind the wall');
  const pressure = Math.min(...gauges.map((g) => readingSpread(g)), ladder.target);
  const stiffness =
    waterCompliance(forecast.datum.volume, ladder.target, temperature) +
    airCompliance(trappedAir, ladder.target);
  const surplus = Math.abs(warmingSurplus(forecast.datum.volume, temperature));
  const warming =
    setUp.thermometer === undefined
      ? UNSEEN_WARMING
      : ((setUp.thermometer / Math.sqrt(12)) * Math.SQRT2) / LEAK_WINDOW;
  const twice = Math.SQRT2 / LEAK_WINDOW;
  return [
    { of: 'litres', rate: (setUp.supply.resolution / Math.sqrt(12)) * twice },
    { of: 'girth', rate: (perGrowth * Math.hypot(...growth)) / Math.max(growth.length, 1) },
    { of: 'pressure', rate: stiffness * pressure * twice },
    { of: 'temperature', rate: surplus * warming },
  ];
}
