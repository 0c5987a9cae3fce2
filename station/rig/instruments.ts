/** The instruments of a rehearsal: each a little wrong in its own way, and what befalls them. */
import { type Ailment, type Dice, type Instrument, shown, truthFor } from '@hoopwright/core/gauge';
import type { Truth } from '@hoopwright/core/stretch';
import { toBar, toLitre } from '@hoopwright/core/units';
import { type Channel, noiseOf } from '@hoopwright/wire/reading';

export interface RigChannel {
  readonly channel: Channel;
  readonly instrument: Instrument;
  readonly ailments: readonly Ailment[];
}

export interface RigWorld {
  /** Names of the tank's girths, in the order of the truth. */
  readonly girths: readonly string[];
  /** mL. */
  readonly stroke: number;
}

/** Standard deviation of the gain of an instrument, as a fraction: class 0.5 to 1. Our choice for rehearsals. */
const GAIN: Readonly<Partial<Record<Channel['reads'], number>>> = {
  pressure: 0.005,
  girth: 0.0002,
  litres: 0.003,
  strokes: 0.01,
};

export function rigChannel(channel: Channel, dice: Dice): RigChannel {
  const own = dice.named(channel.name);
  const gain = 1 + (GAIN[channel.reads] ?? 0) * own.named('gain').normal();
  const noise = noiseOf(channel);
  const offset = channel.reads === 'pressure' ? 0.25 * channel.resolution * own.named('zero').normal() : 0;
  return {
    channel,
    ailments: [],
    instrument: {
      gain,
      offset,
      noise,
      resolution: channel.resolution,
      ...(channel.range === undefined ? {} : { range: channel.range }),
    },
  };
}

/** What there is to read, in the unit of the channel. Undefined: nothing here reads that. */
export function truthIn(channel: Channel, truth: Truth, { girths, stroke }: RigWorld): number | undefined {
  switch (channel.reads) {
    case 'pressure':
      return toBar(truth.pressure);
    case 'girth':
      return truth.girths[girths.indexOf(channel.name)];
    case 'litres':
      return toLitre(truth.drawn);
    case 'strokes':
      return truth.drawn / 1e3 / stroke;
    case 'weight':
      return toLitre(truth.drawn);
    case 'temperature':
      return truth.water;
    case 'rise':
      return truth.rise;
    case 'wall':
      return truth.thinnest;
    case 'strain':
      return undefined;
  }
}

export function reads(
  rig: RigChannel,
  truth: Truth,
  { world, dice }: { world: RigWorld; dice: Dice },
): number | undefined {
  const value = truthIn(rig.channel, truth, world);
  if (value === undefined) return undefined;
  const look = { truth: value, seconds: truth.seconds, dice: dice.normal() };
  return shown(rig.instrument, look, rig.ailments);
}

/** Pressure in the tank (bar) at which the gauge shows `wanted`: Infinity where it will never get there. */
export function pressureFor(gauge: RigChannel, wanted: number, seconds: number): number {
  const found = truthFor(gauge.instrument, wanted, seconds, gauge.ailments);
  if (found !== undefined) return found;
  const stuck = gauge.ailments.find((one) => one.kind === 'stuck');
  return stuck !== undefined && stuck.at >= wanted - 0.5 * gauge.instrument.resolution ? 0 : Infinity;
}
