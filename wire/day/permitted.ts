/** What the plan lets be read now: no screen asks for more. */
import type { Channel } from '../reading/channel.ts';
import type { DayState } from './state.ts';

export interface Permission {
  readonly channel: Channel;
  /** The step asks for it. */
  readonly asked: boolean;
}

/**
 * Channels that may be read at the present pressure, in the order of the log sheet. At the tank: only up to the pressure
 * that the plan states for it; where the pressure is not known or older than its limit, the step's or the highest read
 * counts, whichever is more.
 */
export function permitted(state: DayState, now_ms: number): Permission[] {
  const pressure = pressureToGoBy(state, now_ms);
  const step = state.plan?.plan.steps.find(({ number }) => number === state.step?.number);
  return state.channels
    .filter(({ channel }) => channel.from === 'behind the wall' || pressure <= channel.upTo_bar)
    .map(({ channel }) => ({ channel, asked: step?.reads.includes(channel.name) ?? false }));
}

/**
 * bar: the highest that any gauge shows that is fresh and believed. The finest one may stick or drift low, and somebody
 * walks to the tank on it.
 */
export function pressureToGoBy({ channels, figures, step, ventShut_ms }: DayState, now_ms: number): number {
  if (ventShut_ms === undefined) return 0;
  const shown = channels.flatMap(({ channel, last, fresh_s, aside, unproved }) => {
    const isGauge = channel.reads === 'pressure' && aside === undefined && unproved === undefined;
    return isGauge && last !== undefined && now_ms - last.wall_ms <= 1000 * fresh_s ? [last.value] : [];
  });
  if (shown.length > 0) return Math.max(...shown);
  return Math.max(figures.highest_bar ?? 0, step?.pressure_bar ?? 0);
}

/** Why a reading is refused; undefined: it may be taken. */
export function forbidden(state: DayState, channel: string, now_ms: number): string | undefined {
  const one = state.channels.find((each) => each.channel.name === channel)?.channel;
  if (one === undefined || one.from === 'behind the wall') return undefined;
  const pressure = pressureToGoBy(state, now_ms);
  if (pressure <= one.upTo_bar) return undefined;
  return `${channel} is read at the tank, up to ${one.upTo_bar} bar; there are ${pressure} bar`;
}
