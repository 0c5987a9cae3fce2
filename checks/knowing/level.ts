/** Healthy tanks on the quick tank's own paths, with strays and instruments: how many tests say the alarm of their level. */
import { diceOf } from '../../core/math/dice.ts';
import { rising } from '../../core/stretch/know/likeness.ts';
import { levelNow } from '../../core/stretch/know/odd/level.ts';
import type { Seen } from '../../core/stretch/know/seen.ts';
import { straysOf } from '../../core/stretch/know/strays.ts';
import { straysOn, type Unknowns, unknownsOf } from '../../core/stretch/know/unknowns.ts';
import { pressureAt, valueAt } from '../../core/stretch/quick/path.ts';
import { quickPath, type QuickTank } from '../../core/stretch/quick/quick.ts';
import { GAUGE, WIRE } from './instruments.ts';
import { GIRTH, TANK } from './tank.ts';
import { worldOf } from './world.ts';

/** Growths at which the level is looked at, and growth rate of the ramp, 1/s. */
const LOOKS = Array.from({ length: 20 }, (_, k) => 0.0021 * 1.15 ** k);
const RATE = 2e-5;

export interface LevelTrials {
  readonly quick: QuickTank;
  readonly seed: number;
  readonly tests: number;
  /** Pressure that the tank carries over that of its steel. 1: a healthy one. */
  readonly times?: number;
}

export interface LevelCount {
  readonly tests: number;
  /** Tests with at least one look that says so. */
  readonly quiet: number;
  readonly alarm: number;
}

export function levelTrials({ quick, seed, tests, times = 1 }: LevelTrials): LevelCount {
  let [quiet, alarm] = [0, 0];
  for (let k = 0; k < tests; k++) {
    const { draws, truth } = worldOf(seed + k, 0, 100);
    const girths = TANK.girths.map(() => ({ gain: WIRE.gain, zero: WIRE.zero / GIRTH }));
    const unknowns = unknownsOf(draws, { gauge: GAUGE, girths }, straysOf(quick.error));
    const before = draws.map((draw) => ({ draw, path: rising(quickPath(quick, draw)) }));
    const says = shownTo(quick, unknowns, { truth, seed: seed + k, times }).map(
      (_, i, all) => levelNow({ before, unknowns, seen: all.slice(0, i + 1) })?.says,
    );
    quiet += says.includes('quiet') ? 1 : 0;
    alarm += says.includes('alarm') ? 1 : 0;
  }
  return { tests, quiet, alarm };
}

interface Shown {
  readonly truth: Parameters<typeof quickPath>[1];
  readonly seed: number;
  readonly times: number;
}

function shownTo(quick: QuickTank, unknowns: Unknowns, { truth, seed, times }: Shown): Seen[] {
  const dice = diceOf(seed).named('level');
  const path = rising(quickPath(quick, truth));
  const z = Float64Array.from({ length: unknowns.size }, () => dice.normal());
  const stray = straysOn(unknowns, z, path.growth, 1);
  const gauge = { gain: 1 + GAUGE.gain * dice.normal(), zero: GAUGE.zero * dice.normal() };
  const gains = TANK.girths.map(() => 1 + WIRE.gain * dice.normal());
  return LOOKS.map((growth): Seen => {
    const strayed = Math.exp(valueAt(path.growth, stray, growth));
    const pressure = times * strayed * pressureAt(path, truth, growth, RATE);
    return {
      seconds: growth / RATE,
      pressure: gauge.gain * pressure + gauge.zero + GAUGE.noise * dice.normal(),
      blur: GAUGE.noise,
      girths: gains.map((gain, i) => ({
        growth: gain * valueAt(path.growth, path.girths[i], growth) + (WIRE.noise / GIRTH) * dice.normal(),
        blur: WIRE.noise / GIRTH,
      })),
      turned: false,
    };
  });
}
