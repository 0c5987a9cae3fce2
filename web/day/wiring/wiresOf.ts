/** The whole typed set-up: what is sent with the beginning of the day, and what is still wrong. */
import type { Begin } from '@hoopwright/wire/day';
import { type Channel, channelsFrom } from '@hoopwright/wire/reading';
import { say } from '../../words/day/say.ts';
import { type ChannelRead, channelOf } from './channelOf.ts';
import { type SourceRead, sourceOf } from './sourceOf.ts';
import type { TypedChannel, TypedWires } from './typed.ts';

export interface WiresRead {
  readonly sources: readonly SourceRead[];
  /** By name of the channel. */
  readonly channels: ReadonlyMap<string, ChannelRead>;
  /** The first thing that is wrong. */
  readonly wrong?: string;
}

/** @param own channels of the plan */
export function readWires({ sources, channels }: TypedWires, own: readonly Channel[]): WiresRead {
  const added = channels.filter(({ name }) => !own.some((one) => one.name === name));
  const names = [...own, ...added].map(({ name }) => name);
  const read = sources.map((source, i) => {
    const others = sources.filter((_, j) => j < i).map(({ fields }) => (fields['name'] ?? '').trim());
    return sourceOf(source, names, others);
  });
  const channelsRead = new Map(
    channels
      .filter((one) => added.includes(one) || isChanged(one))
      .map((one) => [
        one.name,
        channelOf(
          one,
          own.find(({ name }) => name === one.name),
        ),
      ]),
  );
  const faults = [...read, ...channelsRead.values()].flatMap((one) =>
    one.ok ? [] : Object.values(one.faults),
  );
  const [wrong = twice(read)] = faults;
  return { sources: read, channels: channelsRead, ...(wrong === undefined ? {} : { wrong }) };
}

const isChanged = ({ fields }: TypedChannel): boolean =>
  Object.values(fields).some((text) => text.trim() !== '');

/** Each channel comes by one wire. */
function twice(read: readonly SourceRead[]): string | undefined {
  const seen = new Map<string, string>();
  for (const one of read) {
    if (!one.ok) continue;
    for (const channel of channelsFrom(one.source)) {
      const before = seen.get(channel);
      if (before !== undefined) return say('channelTwice', { channel, one: before });
      seen.set(channel, one.source.name);
    }
  }
  return undefined;
}

/** Where each channel comes from, by name. */
export const comesBy = ({ sources }: WiresRead): ReadonlyMap<string, string> =>
  new Map(
    sources.flatMap((one) =>
      one.ok ? channelsFrom(one.source).map((channel) => [channel, one.source.name] as const) : [],
    ),
  );

/** Nothing where all is read by hand, as the plan has it. */
export function begunWith({ sources, channels }: WiresRead): Pick<Begin, 'sources' | 'channels'> {
  const wires = sources.flatMap((one) => (one.ok ? [one.source] : []));
  const changed = [...channels.values()].flatMap((one) => (one.ok ? [one.channel] : []));
  return {
    ...(wires.length === 0 ? {} : { sources: wires }),
    ...(changed.length === 0 ? {} : { channels: changed }),
  };
}
