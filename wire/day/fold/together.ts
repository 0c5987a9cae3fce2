/** What the wires have read of late, put together: of a row, and of a batch between two rows. */
import type { Channel } from '../../reading/channel.ts';
import type { Row } from '../../reading/row.ts';
import type { ChannelNow, DayState } from '../state.ts';
import type { Fold, FoldedRow } from './inside.ts';

/** ms between two rows that come by wire. */
export const ROW_EVERY = 500;
/** ms within which readings of several wires belong to one row: each wire that reads once a second is in one. Our choice. */
const TOGETHER = 2 * ROW_EVERY;

export const isWired = (how: string): boolean => how === 'by wire' || how === 'rig';

/** A channel that is set aside or unproved is recorded and not believed. */
export const stands = ({ aside, unproved }: ChannelNow): boolean =>
  aside === undefined && unproved === undefined;

/** What wires have read of late, and how far apart in time the gauges were read. */
export function together({ channels }: DayState, wall_ms: number): Pick<FoldedRow, 'values' | 'gauges_s'> {
  const read: Record<string, number> = {};
  const gauges: number[] = [];
  for (const one of channels) {
    const { last, fresh_s, channel } = one;
    if (last === undefined || !stands(one) || !isWired(last.how)) continue;
    if (wall_ms - last.wall_ms > Math.min(1000 * fresh_s, TOGETHER)) continue;
    read[channel.name] = last.value;
    if (channel.reads === 'pressure') gauges.push(last.wall_ms);
  }
  const apart = (Math.max(...gauges) - Math.min(...gauges)) / 1000;
  return { values: read, ...(gauges.length > 1 && apart > 0 ? { gauges_s: apart } : {}) };
}

/** A row of what wires say between two rows, and the entry of the newest reading in it. */
export interface Batch {
  readonly row: Row;
  readonly seq: number;
}

/** Undefined before the vent is shut and where no gauge or girth is read by wire. As of the newest reading of those. */
export function batchNow({ state, inside }: Fold): Batch | undefined {
  if (inside.ventShut === undefined || state.step === undefined) return undefined;
  const { values } = together(state, state.wall_ms);
  const read = state.channels.flatMap(({ channel, last }) =>
    last !== undefined && values[channel.name] !== undefined && OF_THE_WALL.has(channel.reads) ? [last] : [],
  );
  const [newest] = read.sort((a, b) => b.seq - a.seq);
  if (newest === undefined) return undefined;
  const seconds = (inside.elapsed - inside.ventShut - (state.wall_ms - newest.wall_ms)) / 1000;
  return { row: { seconds, step: state.step.number, values }, seq: newest.seq };
}

/** What says something of the wall. */
const OF_THE_WALL: ReadonlySet<Channel['reads']> = new Set(['pressure', 'girth']);
