/** An instrument as it is: truth, through its calibration, its noise, the steps of its scale, and what ails it. */

export interface Instrument {
  /** It reads gain x truth + offset. */
  readonly gain: number;
  readonly offset: number;
  /** Standard deviation of one reading. */
  readonly noise: number;
  /** Steps of the scale; 0: none. */
  readonly resolution: number;
  /** Ends of the scale, in its own readings: beyond them it stands at the end. */
  readonly range?: { readonly from: number; readonly to: number };
}

/** What can befall an instrument. Times in s, of the same clock as the reading's. */
export type Ailment =
  /** Stands at what it read then. */
  | { readonly kind: 'stuck'; readonly from: number; readonly at: number }
  /** Goes off at a steady rate, per s. */
  | { readonly kind: 'drifts'; readonly from: number; readonly rate: number }
  /** A wire slipped, a tape was moved: it reads by so much more ever after. */
  | { readonly kind: 'slipped'; readonly from: number; readonly by: number }
  /** Says nothing. */
  | { readonly kind: 'dead'; readonly from: number };

export interface Look {
  /** What there is to read, in the unit of the instrument. */
  readonly truth: number;
  /** s */
  readonly seconds: number;
  /** A throw of the standard normal. */
  readonly dice: number;
}

/** What it shows; undefined where it says nothing. */
export function shown(
  instrument: Instrument,
  look: Look,
  ailments: readonly Ailment[] = [],
): number | undefined {
  const now = ailments.filter(({ from }) => from <= look.seconds);
  if (now.some(({ kind }) => kind === 'dead')) return undefined;
  const stuck = now.find((one) => one.kind === 'stuck');
  if (stuck !== undefined) return onScale(instrument, stuck.at);
  const clean = instrument.gain * look.truth + instrument.offset + off(now, look.seconds);
  return onScale(instrument, clean + instrument.noise * look.dice);
}

/** Truth at which the instrument, without noise, would show `wanted`; undefined where it is stuck or dead. */
export function truthFor(
  instrument: Instrument,
  wanted: number,
  seconds: number,
  ailments: readonly Ailment[] = [],
): number | undefined {
  const now = ailments.filter(({ from }) => from <= seconds);
  if (now.some(({ kind }) => kind === 'dead' || kind === 'stuck')) return undefined;
  return (wanted - instrument.offset - off(now, seconds)) / instrument.gain;
}

function off(ailments: readonly Ailment[], seconds: number): number {
  let sum = 0;
  for (const one of ailments) {
    if (one.kind === 'drifts') sum += one.rate * (seconds - one.from);
    if (one.kind === 'slipped') sum += one.by;
  }
  return sum;
}

function onScale({ resolution, range }: Instrument, value: number): number {
  const stepped = resolution > 0 ? tidy(Math.round(value / resolution) * resolution) : value;
  return range === undefined ? stepped : Math.min(Math.max(stepped, range.from), range.to);
}

/** 5.2 steps of 0.1 are 5.2, not 5.2000000000000002. */
const tidy = (value: number): number => Number(value.toPrecision(12));
