/** Where the clocks part, and where the day ends. */
import { ENDS } from '../../reading/body.ts';
import type { Entry } from '../../record/entry.ts';
import type { Fold } from './inside.ts';
import { number, oneOf, text } from './read.ts';

/** No rate is fitted across it: rows count in parts, and a hold's window starts anew. */
export function onGap({ state, inside }: Fold, { seq, wall_ms, body }: Entry): Fold {
  const cause = text(body, 'cause') === 'restart' ? 'restart' : 'parted';
  const gap = { cause, parted_ms: number(body, 'parted_ms') ?? 0, seq, wall_ms } as const;
  const { hold } = state;
  const anew =
    hold === undefined || cause === 'restart'
      ? {}
      : { hold: { begun_ms: hold.begun_ms, windowFrom_ms: wall_ms } };
  return {
    state: { ...state, gaps: [...state.gaps, gap], ...anew },
    // A restart has been counted when the new run was seen.
    inside: cause === 'restart' ? inside : { ...inside, gaps: inside.gaps + 1 },
  };
}

export function onEnd({ state, inside }: Fold, { body }: Entry): Fold {
  const { hold: _, next: __, broken: ___, ...rest } = state;
  const end = {
    name: oneOf(ENDS, text(body, 'end')) ?? 'broken off',
    why: text(body, 'why') ?? '',
    step: text(body, 'step') ?? state.step?.number ?? '',
  };
  return { inside, state: { ...rest, phase: 'ended', end } };
}
