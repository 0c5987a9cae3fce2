/** What ails a channel, as a sentence. */
import { type Channel, CHANNEL_UNIT } from '../channel.ts';
import type { Ailed } from './judge.ts';

export function ailmentSentence(channel: Channel, { what, figure, allowed }: Ailed): string {
  const unit = CHANNEL_UNIT[channel.reads];
  const { name } = channel;
  switch (what) {
    case 'dead':
      return `${name} has said nothing for ${figure.toFixed(0)} s.`;
    case 'late':
      return `${name} is ${figure.toFixed(0)} s old; it may be ${allowed.toFixed(0)} s old.`;
    case 'stuck':
      return `${name} has stood still for ${figure.toFixed(0)} s, where its noise would move it.`;
    case 'out of range':
      return `${name} reads ${figure} ${unit}; its range ends at ${allowed} ${unit}.`;
    case 'jumping':
      return `${name} jumped by ${figure.toPrecision(3)} ${unit} between two readings.`;
    case 'drifting':
      return `${name} and ${channel.twin ?? 'its twin'} are ${Math.abs(figure).toPrecision(2)} ${unit} apart; ${allowed.toPrecision(2)} ${unit} is allowed.`;
  }
}
