/** A channel: one thing that is read, by one instrument, at one place, in one unit. */
import * as z from 'zod';
import type { Plan } from '../plan/plan.ts';

export const CHANNEL_READS = [
  'pressure',
  'girth',
  'litres',
  'weight',
  'strokes',
  'temperature',
  'rise',
  'wall',
  'strain',
] as const;
export type ChannelReads = (typeof CHANNEL_READS)[number];

/** The one unit in which each is recorded. Litres and strokes count what the pump has drawn since the vent was shut. */
export const CHANNEL_UNIT = {
  pressure: 'bar',
  girth: 'mm',
  litres: 'L',
  weight: 'kg',
  strokes: 'strokes',
  temperature: '°C',
  rise: 'mm',
  wall: 'mm',
  strain: 'µm/m',
} as const satisfies Readonly<Record<ChannelReads, string>>;

const number = z.number();
const positive = z.number().positive();

export const channelShape = z.strictObject({
  name: z.string().min(1).max(60),
  reads: z.enum(CHANNEL_READS),
  /** Instrument, e.g. "draw-wire", "gauge". */
  by: z.string().min(1).max(60),
  from: z.enum(['behind the wall', 'at the tank']),
  /** Highest pressure at which it may be read, bar. */
  upTo_bar: z.number().min(0),
  resolution: z.number().min(0),
  /** Standard deviation of one reading, in its unit. */
  noise: z.number().min(0).exactOptional(),
  range: z.strictObject({ from: number, to: number }).exactOptional(),
  /** Reading = (raw - offset) / gain. */
  calibration: z.strictObject({ gain: z.number(), offset: number }).exactOptional(),
  /** s after which a reading is too old to go by. */
  fresh_s: positive.exactOptional(),
  /** Another channel that reads the same thing. */
  twin: z.string().exactOptional(),
});
export type Channel = z.infer<typeof channelShape>;

/** Standard deviation of one reading beside its step: a quarter of that where none is told. Common practice, no source. */
export const noiseOf = ({ noise, resolution }: Pick<Channel, 'noise' | 'resolution'>): number =>
  noise ?? resolution / 4;

/** s after which a reading is old: by wire a few beats, by hand the time between two rows of the log sheet. Our choice. */
export const FRESH_BY_WIRE = 5;
export const FRESH_BY_HAND = 300;

export const freshFor = (channel: Channel): number => channel.fresh_s ?? FRESH_BY_HAND;

/** Channels that a plan reads, with the instruments it states. */
export function channelsOf(plan: Plan): Channel[] {
  const gauges = plan.places.filter((place) => place.reads === 'pressure');
  return plan.places.map((place): Channel => {
    const has = plan.instruments.find((need) => need.name === place.name)?.has;
    const inUnit = place.reads === 'litres' && place.by !== 'strokes' ? 1e-3 : 1;
    const twin = place.reads === 'pressure' ? gauges.find((one) => one.name !== place.name) : undefined;
    return {
      name: place.name,
      reads: place.by === 'strokes' ? 'strokes' : place.reads,
      by: place.by,
      from: place.from,
      upTo_bar: place.upTo_bar,
      resolution: place.by === 'strokes' ? 1 : tidy((has?.resolution ?? 0) * inUnit),
      ...(has?.range === undefined || place.reads !== 'pressure'
        ? {}
        : { range: { from: 0, to: has.range } }),
      ...(twin === undefined ? {} : { twin: twin.name }),
    };
  });
}

/** 0.1 is 0.1, not 0.10000000000000002. */
const tidy = (value: number): number => Number(value.toPrecision(10));
