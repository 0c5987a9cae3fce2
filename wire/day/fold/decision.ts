/** What the director decided. Only such an entry moves the plan on. */
import { DECISIONS } from '../../reading/body.ts';
import type { Entry } from '../../record/entry.ts';
import type { Fold } from './inside.ts';
import type { ChannelNow } from '../state.ts';
import { given, number, oneOf, text } from './read.ts';

export function onDecision(now: Fold, entry: Entry): Fold {
  const decision = oneOf(DECISIONS, text(entry.body, 'decision'));
  const { state, inside } = now;
  switch (decision) {
    case 'vent shut':
      return {
        state: { ...state, phase: 'under way', ventShut_ms: entry.wall_ms },
        inside: { ...inside, ventShut: inside.elapsed },
      };
    case 'hold ended':
      return state.hold === undefined
        ? now
        : { inside, state: { ...state, hold: { ...state.hold, over: true } } };
    case 'bleed again':
      return bledAgain(now, entry);
    case 'stop and release':
      return stopped(now);
    case 'confirm step':
      return confirmed(now, entry);
    case 'acknowledge':
      return acknowledged(now, entry);
    case 'set aside':
    case 'take back':
      return asideOrBack(now, entry, decision);
    case 'accept source':
      return accepted(now, entry);
    case 'sound armed':
      return { inside, state: { ...state, soundArmed: true } };
    case 'hand over':
      return handedOver(now, entry);
    case 'go on':
    case 'new revision':
    case 'end':
    case undefined:
      return now;
  }
}

/** Litres and girths count anew; the crossings that asked for it are dealt with. */
function bledAgain({ state, inside }: Fold, _entry: Entry): Fold {
  const seat = state.plan?.plan.steps.find(({ kind }) => kind === 'seat')?.number;
  const { growth: _, litres: __, ...figures } = state.figures;
  return {
    state: {
      ...state,
      figures,
      causes: state.causes.filter((cause) => cause.state !== 'bleed again'),
      ...given('next', seat ?? state.next),
    },
    inside: { ...inside, rows: [], zeros: {}, bled: true },
  };
}

function stopped({ state, inside }: Fold): Fold {
  const { broken: _, ...rest } = state;
  return { inside, state: { ...rest, phase: 'stopping' } };
}

function confirmed({ state, inside }: Fold, { wall_ms }: Entry): Fold {
  const { broken: _, ...rest } = state;
  const hold = state.hold === undefined ? {} : { hold: { ...state.hold, windowFrom_ms: wall_ms } };
  const { before, ...within } = inside;
  const phase = state.phase === 'broken off' ? (before ?? 'under way') : state.phase;
  return { inside: within, state: { ...rest, phase, ...hold } };
}

function acknowledged({ state, inside }: Fold, { seq, body }: Entry): Fold {
  const cause = number(body, 'cause');
  const causes = state.causes.map((one) => (one.seq === cause ? { ...one, acknowledged: seq } : one));
  return { inside, state: { ...state, causes } };
}

function asideOrBack({ state, inside }: Fold, { body }: Entry, decision: 'set aside' | 'take back'): Fold {
  const name = text(body, 'channel');
  const change = (one: ChannelNow): ChannelNow => {
    if (one.channel.name !== name) return one;
    const { aside: _, ails: __, ...rest } = one;
    if (decision === 'take back') return rest;
    return { ...one, aside: { why: text(body, 'why') ?? '', by: text(body, 'by') ?? '' } };
  };
  const { [name ?? '']: ___, ...memory } = inside.memory;
  return { inside: { ...inside, memory }, state: { ...state, channels: state.channels.map(change) } };
}

function accepted({ state, inside }: Fold, { body }: Entry): Fold {
  const source = text(body, 'source');
  const channels = state.channels.map((one) => {
    const { unproved, ...rest } = one;
    return unproved === source ? rest : one;
  });
  const troubles = state.troubles.filter((one) => source === undefined || one.source !== source);
  return { inside, state: { ...state, channels, troubles } };
}

function handedOver({ state, inside }: Fold, { body }: Entry): Fold {
  const held = text(body, 'link') ?? state.crew.held;
  return {
    inside,
    state: { ...state, crew: { ...state.crew, ...given('director', text(body, 'to')), held } },
  };
}
