/** The instruments of the trials, each off by a gain of its own, and what they show of a lived day. */
import type { Dice } from '../../core/math/dice.ts';
import type { Shown } from '../../core/stretch/know/gather.ts';
import { type Truth, truthBetween } from '../../core/stretch/lived/truth.ts';
import type { LivedDay, Phase } from './day.ts';

const BAR = 0.1;
/** Gauge: 0.05 bar of noise, gain to 0.5 %, zero to 0.05 bar. MPa. */
export const GAUGE = { noise: 0.05 * BAR, gain: 0.005, zero: 0.05 * BAR } as const;
/** Draw-wire: 0.1 mm of noise once a second, gain to 0.5 %; tape: read to whole millimetres, gain to 0.05 %. */
export const WIRE = { noise: 0.1, gain: 0.005, zero: 0.02 } as const;
export const TAPE = { noise: 1 / Math.sqrt(12), gain: 0.0005, zero: 1 / Math.sqrt(12) } as const;

export interface Rig {
  readonly gauge: { readonly gain: number; readonly zero: number };
  readonly girths: readonly number[];
  /** What stands on the tape at the first reading of each girth beyond the whole millimetre, or how far a wire's zero is off, mm. */
  readonly zeros: readonly number[];
  readonly by: 'wire' | 'tape';
  readonly noise: Dice;
}

export const rigOf = (dice: Dice, by: Rig['by'], girths: number): Rig => ({
  gauge: {
    gain: 1 + GAUGE.gain * dice.named('gauge').normal(),
    zero: GAUGE.zero * dice.named('zero').normal(),
  },
  girths: Array.from(
    { length: girths },
    (_, i) => 1 + (by === 'wire' ? WIRE : TAPE).gain * dice.named(`girth ${i}`).normal(),
  ),
  zeros: Array.from({ length: girths }, (_, i) => {
    const zero = dice.named(`zero of girth ${i}`);
    return by === 'wire' ? WIRE.zero * zero.normal() : zero.uniform();
  }),
  by,
  noise: dice.named('noise'),
});

/** True pressure at which the gauge shows this. */
export const realPressure = ({ gauge }: Rig, shows: number): number => (shows - gauge.zero) / gauge.gain;

export const gaugeShows = (rig: Rig, truth: Truth): number =>
  rig.gauge.gain * truth.pressure + rig.gauge.zero + GAUGE.noise * rig.noise.normal();

/** `zero`: the girths as filled. */
export function shownOf(rig: Rig, zero: LivedDay['zero'], truth: Truth, phase: Phase): Shown {
  const growths = truth.girths.map((girth, i) => girthShown(rig, i, girth - zero[i]) / zero[i]);
  return { seconds: truth.seconds, pressure: gaugeShows(rig, truth), girths: growths, phase };
}

/** Growth as it is read, mm: both readings of a tape are of whole millimetres. */
function girthShown({ by, girths, zeros, noise }: Rig, i: number, grown: number): number {
  const moved = girths[i] * grown;
  if (by === 'wire') return moved + zeros[i] + WIRE.noise * noise.normal();
  return Math.round(moved + zeros[i]) - Math.round(zeros[i]);
}

/** Once a second, from one truth to the next. */
export function* everySecond(day: LivedDay, k: number): Generator<Truth> {
  const [a, b] = [day.truths[k - 1], day.truths[k]];
  for (let s = Math.ceil(a.seconds + 1e-9); s <= b.seconds; s++) yield truthBetween(a, b, s);
}

/** Shares of the stretch pressure, and s into a hold, at which the crew by hand takes a row: fifteen in all. */
const RISE_ROWS = [0.3, 0.5, 0.65, 0.75, 0.8];
const SECOND_ROWS = [0.25, 0.5, 0.75];
const HOLD_ROWS = [0, 60, 300, 600];
const FINAL_ROWS = [0, 300, 1800];

/** Places in the truths at which there is a row, in order. */
export function handRows({ truths, phases }: LivedDay, target: number): number[] {
  const arrived = phases.indexOf('hold');
  const rises = RISE_ROWS.flatMap((share) => firstWhere(truths, (t) => t.pressure >= share * target));
  const second = phases.indexOf('second rise');
  const low = truths[Math.max(second, 0)].pressure;
  const seconds = SECOND_ROWS.flatMap((f) =>
    firstWhere(truths, (t, k) => k > second && t.pressure >= low + f * (target - low)),
  );
  const from = (start: number, offsets: readonly number[]): number[] =>
    start < 1
      ? []
      : offsets.flatMap((s) =>
          firstWhere(truths, (t, k) => k >= start - 1 && t.seconds >= truths[start - 1].seconds + s - 1e-6),
        );
  const all = [
    ...rises,
    ...from(arrived, HOLD_ROWS),
    ...seconds,
    ...from(phases.indexOf('final hold'), FINAL_ROWS),
  ];
  return [...new Set(all)].sort((a, b) => a - b);
}

function firstWhere(truths: readonly Truth[], test: (truth: Truth, k: number) => boolean): number[] {
  const k = truths.findIndex(test);
  return k < 0 ? [] : [k];
}
