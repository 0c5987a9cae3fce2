/**
 * First steps of invented tanks with trapped air, read off the instruments of a rehearsal, and judged as on the day
 * (wire/reading/water.ts): three points far below yield, air by Boyle's law, wall by the closed thin cylinder.
 */
import { shown } from '../../core/gauge/instrument.ts';
import { readingSpread } from '../../core/gauge/noise.ts';
import { type Dice, diceOf } from '../../core/math/dice.ts';
import { firstFindings, type FirstFindings } from '../../core/stretch/day/firstStep.ts';
import { airSwallows, wallCompliance, waterCompression } from '../../core/stretch/water.ts';
import { fromBar, fromLitre, toLitre } from '../../core/units.ts';

export type Supply = 'strokes' | 'litres';

export interface AirTrial {
  /** L at filling. */
  readonly truth: number;
  readonly air: FirstFindings['air'];
  /** The 90 % range holds it. */
  readonly held: boolean;
}

/** L. */
const [LEAST, MOST] = [0.2, 3];
/** bar. */
const POINTS = [1.5, 4, 7];
/** MPa, mm: annealed 1.4307 (EN 10088-1: E 200 GPa), invented barrel, and what its wall is known to. */
const BARREL = { volume: fromLitre(350), radius: 300, wall: 1.5, young: 200_000, poisson: 0.3 } as const;
const WALL = 0.02;
const WATER = { planned: 14, deviation: 2 } as const;
/** As in a rehearsal (station/rig/instruments.ts). */
const GAUGE = { resolution: 0.1, noise: 0.05, gain: 0.005, zero: 0.025 } as const;
const PUMP = {
  strokes: { step: 0.02, gain: 0.01 },
  litres: { step: 0.01, gain: 0.003 },
} as const;
/** Standard deviation of what hose and pump take before the water does, L. */
const SLACK = 0.02;
/** What the day takes as known beforehand (wire/reading/water.ts). */
const KNOWN = { zero: fromBar(0.1), slack: fromLitre(0.02), stiffness: 0.05 } as const;

export function airTrial(seed: number, supply: Supply): AirTrial {
  const dice = diceOf(seed).named('air');
  const truth = LEAST + (MOST - LEAST) * dice.uniform();
  const drawn = drawnBy(truth, dice);
  const gauge = instrument(GAUGE, GAUGE.zero * dice.normal(), dice);
  const { step, gain } = PUMP[supply];
  const reads = { resolution: step, noise: step / 4 };
  const pump = instrument({ ...reads, gain }, 0, dice);
  const readings = POINTS.map((bar) => ({
    pressure: fromBar(shown(gauge, lookAt(bar, dice)) ?? NaN),
    drawn: fromLitre(shown(pump, lookAt(toLitre(drawn(fromBar(bar))), dice)) ?? NaN),
  }));
  const perPressure =
    wallCompliance(BARREL) + waterCompression(BARREL.volume, fromBar(1), WATER.planned) / fromBar(1);
  const { air } = firstFindings({
    readings,
    drawnWithoutAir: (pressure) => perPressure * pressure,
    spread: {
      pressure: fromBar(readingSpread(GAUGE)),
      drawn: fromLitre(readingSpread(reads)),
      ...KNOWN,
    },
  });
  return { truth, air, held: air.low <= fromLitre(truth) && fromLitre(truth) <= air.high };
}

/** mm³ that the tank has taken at a true pressure, MPa. */
function drawnBy(air: number, dice: Dice): (pressure: number) => number {
  const wall = wallCompliance({ ...BARREL, wall: BARREL.wall * Math.exp(WALL * dice.normal()) });
  const temperature = WATER.planned + WATER.deviation * dice.normal();
  const slack = fromLitre(SLACK) * dice.normal();
  return (pressure) =>
    wall * pressure +
    waterCompression(BARREL.volume, pressure, temperature) +
    airSwallows(fromLitre(air), pressure) +
    slack;
}

interface Kind {
  readonly resolution: number;
  readonly noise: number;
  readonly gain: number;
}

const instrument = ({ resolution, noise, gain }: Kind, offset: number, dice: Dice) => ({
  gain: 1 + gain * dice.normal(),
  offset,
  noise,
  resolution,
});

const lookAt = (truth: number, dice: Dice) => ({ truth, seconds: 0, dice: dice.normal() });

export interface AirCount {
  readonly trials: number;
  readonly held: number;
  /** L: median half width of the range. */
  readonly halfWidth: number;
}

export function airTrials(trials: number, seed: number, supply: Supply): AirCount {
  const all = Array.from({ length: trials }, (_, k) => airTrial(seed + k, supply));
  const widths = all.map(({ air }) => toLitre(0.5 * (air.high - air.low))).sort((a, b) => a - b);
  return { trials, held: all.filter(({ held }) => held).length, halfWidth: widths[trials >> 1] };
}
