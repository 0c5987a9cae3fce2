/** Which readings are asked for now. What the plan forbids at the present pressure is never asked (wire/day decides it). */
import { type ChannelNow, type DayState, permitted } from '@hoopwright/wire/day';

export interface Asked {
  readonly now: readonly ChannelNow[];
  /** Belongs to this step, but nobody may be at the tank. */
  readonly barred: readonly ChannelNow[];
}

export function askedNow(state: DayState, now_ms: number): Asked {
  const may = new Set(permitted(state, now_ms).map(({ channel }) => channel.name));
  const wanted = state.channels.filter((one) => one.aside === undefined && belongs(state, one.channel.name));
  return {
    now: wanted.filter(({ channel }) => may.has(channel.name)),
    barred: wanted.filter(({ channel }) => !may.has(channel.name)),
  };
}

/** Before a step runs everything may be read; after that what the step reads, or all where it names nothing. */
function belongs({ plan, step, phase }: DayState, name: string): boolean {
  if (phase === 'ended') return false;
  const planned = plan?.plan.steps.find(({ number }) => number === step?.number);
  return planned === undefined || planned.reads.length === 0 || planned.reads.includes(name);
}
