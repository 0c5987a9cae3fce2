/** The one word of the state, and why. A quiet word never stands over stale readings. */
import type { AdviceState, Cause, DayState } from '@hoopwright/wire/day';
import { agedAt } from './aged.ts';
import type { DayOnScreen } from '../state/live.ts';

export type Word = AdviceState | 'bleed again' | 'broken off' | 'before pressure' | 'released' | 'ended';

/** Why, as a code with its figures: the sentences are made where they are shown. */
export type Reason =
  | { readonly kind: 'said'; readonly says: string }
  | { readonly kind: 'cause'; readonly cause: Cause }
  | { readonly kind: 'link lost' }
  | { readonly kind: 'no pressure' }
  | {
      readonly kind: 'old';
      readonly what: 'pressure' | 'growth';
      readonly age_s: number;
      readonly fresh_s: number;
    }
  | { readonly kind: 'broken off'; readonly since_ms: number; readonly pressure_bar?: number }
  | { readonly kind: 'hold' }
  | { readonly kind: 'nothing' | 'stopping' | 'set up' | 'after' };

export interface Spoken {
  readonly word: Word;
  readonly reasons: readonly Reason[];
}

export function wordOf(state: DayState, now_ms: number, link: DayOnScreen['link']): Spoken {
  const causes = state.causes.map((cause): Reason => ({ kind: 'cause', cause }));
  if (state.phase === 'ended')
    return {
      word: 'ended',
      reasons: state.end === undefined ? causes : [{ kind: 'said', says: state.end.why }, ...causes],
    };
  if (link === 'lost' || link === 'opening')
    return { word: 'cannot judge', reasons: [{ kind: 'link lost' }, ...causes] };
  if (state.phase === 'broken off') {
    const { since_ms = state.wall_ms, lastPressure_bar } = state.broken ?? {};
    const pressure = lastPressure_bar === undefined ? {} : { pressure_bar: lastPressure_bar };
    return { word: 'broken off', reasons: [{ kind: 'broken off', since_ms, ...pressure }, ...causes] };
  }
  const [first] = state.causes;
  if (first !== undefined && state.phase !== 'after') return { word: stopOf(state.causes), reasons: causes };
  if (state.phase === 'stopping') return { word: 'stop and release', reasons: [{ kind: 'stopping' }] };
  if (state.phase === 'after') return { word: 'released', reasons: [{ kind: 'after' }, ...causes] };
  if (state.phase === 'set up' || state.phase === 'before')
    return { word: 'before pressure', reasons: [{ kind: 'set up' }] };
  return underWay(state, now_ms, link);
}

/** The first cause decides the word, unless a later one is graver. */
const stopOf = (causes: readonly Cause[]): Word =>
  causes.some(({ state }) => state === 'stop and release') ? 'stop and release' : 'bleed again';

function underWay(state: DayState, now_ms: number, link: DayOnScreen['link']): Spoken {
  const told = state.advice?.reasons.map((says): Reason => ({ kind: 'said', says })) ?? [];
  if (state.advice?.state === 'stop and release') return { word: 'stop and release', reasons: told };
  const blind = blindness(state, now_ms, link);
  if (blind !== undefined) return { word: 'cannot judge', reasons: [blind, ...told] };
  if (state.advice !== undefined && !isOfStepBefore(state))
    return { word: state.advice.state, reasons: told.length > 0 ? told : [{ kind: 'nothing' }] };
  return state.hold === undefined || state.hold.over === true
    ? { word: 'nothing against going on', reasons: [{ kind: 'nothing' }] }
    : { word: 'hold', reasons: [{ kind: 'hold' }] };
}

/** Quiet words about the step before say nothing of this one; a warning stands until it is taken back. */
const isOfStepBefore = ({ advice, step }: DayState): boolean =>
  advice?.state === 'nothing against going on' && advice.wall_ms < (step?.begun_ms ?? 0);

/** What is missing or too old to judge by. */
function blindness({ figures }: DayState, now_ms: number, link: DayOnScreen['link']): Reason | undefined {
  if (figures.pressure === undefined) return { kind: 'no pressure' };
  for (const what of ['pressure', 'growth'] as const) {
    const figure = figures[what];
    if (figure === undefined) continue;
    const { age_s, old } = agedAt(figure, now_ms, link);
    if (old) return { kind: 'old', what, age_s, fresh_s: figure.fresh_s };
  }
  return undefined;
}
