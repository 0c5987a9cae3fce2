/** What the wires have read of late, put together: of a row, and of a batch between two rows. */
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

/** All that the wires say as of the last entry, between two rows; undefined before the vent is shut and without wires. */
export function batchNow({ state, inside }: Fold): Row | undefined {
  if (inside.ventShut === undefined || state.step === undefined) return undefined;
  const { values } = together(state, state.wall_ms);
  if (Object.keys(values).length === 0) return undefined;
  return { seconds: (inside.elapsed - inside.ventShut) / 1000, step: state.step.number, values };
}
