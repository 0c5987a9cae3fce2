/** What the pump does now: the last order, its target, and the strokes to it. */
import type { DayState } from '@hoopwright/wire/day';
import type { Ranged, Step } from '@hoopwright/wire/plan';
import { agedAt } from './aged.ts';
import type { DayOnScreen } from '../state/live.ts';

export type PumpWord =
  | 'wait'
  | 'pump'
  | 'keep'
  | 'shut'
  | 'let down'
  | 'release'
  | 'hold'
  | 'stop'
  | 'read'
  | 'ended';

export interface PumpOrder {
  readonly word: PumpWord;
  /** Why, where the word alone does not say it. */
  readonly because: 'step' | 'link' | 'broken off' | 'old' | 'cause' | 'stopping';
  readonly target_bar?: number;
  /** Strokes from here to the target; undefined where they cannot be said. */
  readonly strokes?: Ranged;
}

export function pumpOrder(state: DayState, now_ms: number, link: DayOnScreen['link']): PumpOrder {
  const { phase, causes, figures, step } = state;
  if (phase === 'ended') return { word: 'ended', because: 'step' };
  if (link === 'lost' || link === 'opening') return { word: 'hold', because: 'link' };
  if (phase === 'broken off') return { word: 'hold', because: 'broken off' };
  if (phase === 'stopping') return { word: 'release', because: 'stopping', target_bar: 0 };
  if (causes.length > 0 && phase === 'under way') return { word: 'stop', because: 'cause' };
  if (step === undefined || phase !== 'under way') return { word: 'wait', because: 'step' };
  const target = { target_bar: step.pressure_bar };
  const pumps = step.kind === 'seat' || step.kind === 'first step' || step.kind === 'rise';
  if (!pumps) return { word: wordOfStep(state), because: 'step', ...target };
  const { pressure } = figures;
  if (pressure !== undefined && agedAt(pressure, now_ms, link).old)
    return { word: 'hold', because: 'old', ...target };
  if (pressure !== undefined && pressure.value >= step.pressure_bar - 1e-9)
    return { word: 'read', because: 'step', ...target };
  return { word: 'pump', because: 'step', ...target, ...strokesTo(state) };
}

export const plannedStep = ({ plan }: DayState, number: string | undefined): Step | undefined =>
  plan?.plan.steps.find((step) => step.number === number);

function wordOfStep(state: DayState): PumpWord {
  switch (state.step?.kind) {
    case 'hold':
    case 'final hold':
      return plannedStep(state, state.step.number)?.hold?.valve === 'shut' ? 'shut' : 'keep';
    case 'approach':
      return 'let down';
    case 'release':
      return 'release';
    default:
      return 'wait';
  }
}

/** What is foreseen to be drawn at the end of the step, less what was drawn, in strokes. */
function strokesTo(state: DayState): { readonly strokes?: Ranged } {
  const stroke_mL = state.plan?.plan.water.stroke_mL;
  const drawn = state.figures.litres?.value ?? 0;
  const expected = plannedStep(state, state.step?.number)?.expected?.pumped_L;
  if (stroke_mL === undefined || expected === undefined) return {};
  const of = (litres: number): number => Math.max(0, Math.round((1000 * (litres - drawn)) / stroke_mL));
  const { value, low, high } = expected;
  return {
    strokes: {
      value: of(value),
      ...(low === undefined || high === undefined ? {} : { low: of(low), high: of(high) }),
    },
  };
}
