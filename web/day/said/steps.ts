/** A step of the plan in words: the same as on the papers. */
import { type Figures, stepName, stepText } from '@hoopwright/report/plan';
import type { Plan, Step } from '@hoopwright/wire/plan';
import { say } from '../../words/day/say.ts';

/** "7  hold, 24.0 bar". */
export const stepLine = ({ number, kind, pressure_bar }: Step, f: Figures): string =>
  pressure_bar > 0
    ? say('stepTitleAt', { number, name: stepName(kind), pressure: f.step(pressure_bar) })
    : say('stepTitle', { number, name: stepName(kind) });

export const stepWords = (step: Step, plan: Plan, f: Figures): string => stepText(step, plan, f);
