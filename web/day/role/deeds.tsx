/** What the director can do now, each with what it will do. */
import { figuresFor } from '@hoopwright/report/plan';
import type { Manner } from '@hoopwright/report/figure';
import type { DayState, Order } from '@hoopwright/wire/day';
import { say } from '../../words/day/say.ts';
import type { Deed } from '../part/Keys.tsx';
import { reasonText } from '../said/reasons.ts';
import { stepLine, stepWords } from '../said/steps.ts';
import { give } from '../state/orders.ts';
import { plannedStep } from '../tells/pumpOrder.ts';
import type { Spoken } from '../tells/word.ts';

export interface DeedsOf {
  readonly state: DayState;
  readonly spoken: Spoken;
  readonly armed: boolean;
  readonly by: string;
  readonly manner: Manner;
}

const taken = async (order: Order): Promise<boolean> => (await give(order)) !== undefined;

export function deedsOf(given: DeedsOf): Deed[] {
  switch (given.state.phase) {
    case 'set up':
    case 'before':
      return [ventShut(given)];
    case 'under way':
      return [goOn(given), holdEnded(given), bleedAgain(given), stop(given)].filter(
        (deed) => deed !== undefined,
      );
    case 'stopping':
      return [goOn(given)].filter((deed) => deed !== undefined);
    default:
      return [];
  }
}

const ventShut = ({ armed, state, by }: DeedsOf): Deed => ({
  name: 'vent shut',
  label: say('ventShut'),
  will: say('ventShutWill'),
  ...(armed || state.soundArmed ? {} : { against: say('ventUnarmed') }),
  onDo: () => taken({ order: 'vent shut', by }),
});

function goOn({ state, spoken, by, manner }: DeedsOf): Deed | undefined {
  const next = plannedStep(state, state.next);
  if (next === undefined || state.plan === undefined || state.step === undefined) return undefined;
  const f = figuresFor(manner, state.plan.plan.unit_bar);
  const from = state.step.number;
  const loud =
    state.phase === 'under way' && state.causes.some(({ acknowledged }) => acknowledged === undefined);
  const quiet = spoken.word === 'nothing against going on' || state.phase === 'stopping';
  const [reason] = spoken.reasons;
  const against =
    quiet || reason === undefined
      ? undefined
      : reasonText(reason, state, manner, { now_ms: state.wall_ms, silence_s: 0 });
  return {
    name: 'go on',
    label: say('goOn', { step: stepLine(next, f) }),
    will: say('goOnWill', { from, to: next.number, what: stepWords(next, state.plan.plan, f) }),
    against,
    barred: loud ? say('goOnBarred') : undefined,
    onDo: () => taken({ order: 'go on', by, from }),
  };
}

function holdEnded({ state, by }: DeedsOf): Deed | undefined {
  if (state.hold === undefined || state.hold.over === true || state.step === undefined) return undefined;
  const from = state.step.number;
  return {
    name: 'hold ended',
    label: say('holdEnded'),
    will: say('holdEndedWill', { from }),
    why: say('holdEndedWhy'),
    onDo: (why) => taken({ order: 'hold ended', by, from, why }),
  };
}

function bleedAgain({ state, by }: DeedsOf): Deed | undefined {
  const wanted =
    state.causes.some((cause) => cause.state === 'bleed again') || state.step?.kind === 'first step';
  if (!wanted) return undefined;
  const seat = state.plan?.plan.steps.find(({ kind }) => kind === 'seat')?.number ?? '';
  return {
    name: 'bleed again',
    label: say('bleed'),
    will: say('bleedWill', { step: seat }),
    why: say('bleedWhy'),
    onDo: (why) => taken({ order: 'bleed again', by, why }),
  };
}

const stop = ({ state, by, manner }: DeedsOf): Deed => {
  const [first] = state.causes;
  return {
    name: 'stop and release',
    label: say('stop'),
    will: say('stopWill'),
    grave: true,
    why:
      first === undefined
        ? say('stopWhy')
        : reasonText({ kind: 'cause', cause: first }, state, manner, { now_ms: 0, silence_s: 0 }),
    onDo: (why) => taken({ order: 'stop and release', by, why }),
  };
};
