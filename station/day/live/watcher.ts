/** What the program itself writes of what it sees: limits of the plan that are crossed, channels that are not to be believed. */
import type { ChannelNow, Fold, Written } from '@hoopwright/wire/day';
import type { WatchedLimit } from '@hoopwright/wire/plan';
import {
  ailmentSentence,
  type Crossing,
  crossings,
  crossingSentence,
  judged,
  NO_MEMORY,
  SETS_ASIDE,
} from '@hoopwright/wire/reading';

/** Stands as the one who set a channel aside. */
const PROGRAM_ITSELF = 'the program';

/** Crossings of the newest row whose limit is not latched yet, as entries, the plan's first limit first. */
export function crossed({ state, inside }: Fold, latched: ReadonlySet<WatchedLimit>): Written[] {
  const { plan, phase } = state;
  if (plan === undefined || phase === 'ended') return [];
  const aside = new Set(state.channels.filter(isAside).map(({ channel }) => channel.name));
  const channels = state.channels.map(({ channel }) => channel);
  return crossings({ plan: plan.plan, rows: inside.rows, aside, channels })
    .filter(({ limit }) => !latched.has(limit) && !state.causes.some((cause) => cause.limit === limit))
    .map((one) => crossingEntry(one, inside.bled === true));
}

const isAside = ({ aside, unproved }: ChannelNow): boolean => aside !== undefined || unproved !== undefined;

function crossingEntry(crossing: Crossing, bled: boolean): Written {
  const { limit, value, allowed, channels, step } = crossing;
  const state = limit === 'trappedAir_L' && !bled ? 'bleed again' : 'stop and release';
  const says = crossingSentence(crossing);
  return { kind: 'advice', body: { state, limit, value, allowed, channels: [...channels], step, says } };
}

/** Channels by wire that are dead, stuck, out of range or jumping, as entries that set them aside. `now`: s of this run's clock. */
export function notBelieved({ state, inside }: Fold, now: number): Written[] {
  return state.channels.flatMap((one): Written[] => {
    const { channel, last } = one;
    if (isAside(one) || last === undefined || last.how === 'by hand' || last.how === 'typed in from paper')
      return [];
    // Nothing heard in this run: it is late or lost, and its source says so.
    const memory = inside.memory[channel.name] ?? NO_MEMORY;
    if (memory.last === undefined) return [];
    const ailed = judged(channel, memory, { now });
    if (ailed === undefined || !SETS_ASIDE.has(ailed.what)) return [];
    const why = ailmentSentence(channel, ailed);
    const body = { decision: 'set aside', channel: channel.name, why, by: PROGRAM_ITSELF };
    return [{ kind: 'decision', body: { ...body, step: state.step?.number ?? '' } }];
  });
}
