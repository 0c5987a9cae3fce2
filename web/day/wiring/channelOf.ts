/** A channel as the set-up has it: the plan's with what was typed over it, or one that was added. */
import { type Channel, CHANNEL_READS } from '@hoopwright/wire/reading';
import { say } from '../../words/day/say.ts';
import { type Faults, FieldReader } from './reading.ts';
import type { TypedChannel } from './typed.ts';

export type ChannelRead =
  | { readonly ok: true; readonly channel: Channel }
  | { readonly ok: false; readonly faults: Faults };

/** @param base the plan's own; undefined for one that was added */
export function channelOf({ name, reads, fields }: TypedChannel, base: Channel | undefined): ChannelRead {
  const read = new FieldReader(fields);
  const positive = (value: number): boolean => value > 0;
  const some = (value: number): boolean => value >= 0;
  const resolution = read.number('resolution', say('wantedSome'), some);
  const noise = read.number('noise', say('wantedSome'), some);
  const [from, to] = (['from', 'to'] as const).map((end) => read.number(end, say('wantedNumber')));
  const gain = read.number('gain', say('wantedGain'), (value) => value !== 0);
  const offset = read.number('offset', say('wantedNumber'));
  const fresh_s = read.number('fresh_s', say('wantedPositive'), positive);
  if ((from === undefined) !== (to === undefined))
    read.fault(from === undefined ? 'from' : 'to', say('rangeHalf'));
  if (from !== undefined && to !== undefined && from >= to)
    read.fault('to', say('rangeTurned', { from, to }));
  if (Object.keys(read.faults).length > 0) return { ok: false, faults: read.faults };
  const by = (fields['by'] ?? '').trim();
  const own: Channel = base ?? {
    name,
    reads: CHANNEL_READS.find((one) => one === reads) ?? 'temperature',
    by: by === '' ? say('channelBy') : by,
    from: 'behind the wall',
    upTo_bar: EVER,
    resolution: 0,
  };
  const channel: Channel = {
    ...own,
    ...(by === '' ? {} : { by }),
    ...(resolution === undefined ? {} : { resolution }),
    ...(noise === undefined ? {} : { noise }),
    ...(from === undefined || to === undefined ? {} : { range: { from, to } }),
    ...(gain === undefined && offset === undefined
      ? {}
      : { calibration: { gain: gain ?? 1, offset: offset ?? 0 } }),
    ...(fresh_s === undefined ? {} : { fresh_s }),
  };
  return { ok: true, channel };
}

/** A channel that comes by wire may be read at any pressure, bar. */
const EVER = 1000;
