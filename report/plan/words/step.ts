/** What is done in each step, and what to do when a reading is not as foreseen. */
import type { Plan, Step, StepKind } from '@hoopwright/wire/plan';
import { type Figures, rangedText } from '../figures.ts';
import { catalogue } from './fill.ts';

const ENGLISH = {
  fill: 'Fill from below, vent open. Stand 15 min, top up, shut the vent.',
  seat: 'Pump to {pressure}. Set every girth to zero.',
  'first step': 'Pump to {pressure}. Read all.',
  'first step last':
    'Pump to {pressure}, read all, shut the valve for {minutes}, read again. Judge the first step before going on.',
  approach: 'Come down to {pressure}, hold 5 min. Only now read at the tank.',
  rise: 'Pump to {pressure}, stop, read all.',
  'rise to target': 'Pump to {pressure}, the stretch pressure. Read all.',
  'hold open': 'Hold {minutes}, valve open: keep the pressure. Read every minute.',
  'hold shut': 'Hold {minutes}, valve shut: keep the water. Read every minute.',
  'final hold': 'Hold until growth is under 0.1 %/h. Expected {minutes}.',
  'final hold long': 'Hold until growth is under 0.1 %/h, at most {minutes}: it is not expected to settle.',
  release: 'Release slowly to zero, from behind the wall. Read all.',
  drain: 'Open the top vent. Drain from below. Dry.',

  'name fill': 'fill',
  'name seat': 'seat',
  'name first step': 'first step',
  'name approach': 'come down',
  'name rise': 'pump',
  'name hold': 'hold',
  'name final hold': 'final hold',
  'name release': 'release',
  'name drain': 'drain',

  'outside first step':
    'First step: air over {air} or a loss over {leak}: down to zero, bleed, look for the leak at zero, again. A girth that moves less or more than 1.25 times what is foreseen: it is set wrongly; down, set it again.',
  'outside range':
    'A reading outside its range: stop pumping, keep the pressure, read again, compare the other girths, gauge and litres. One reading alone is wrong: go on without it, if one girth and one gauge are left. All of them differ: the steel is another; go on only as far as no stop limit is near.',
  'outside no range':
    'These figures come from one assumed steel and have no range: other girths at a pressure mean another steel, not a fault. Readings that disagree with one another are a fault: stop pumping, keep the pressure, find it.',
  'rule hold':
    'Final hold: at least {least}, then until the girth that grows most has grown by less than 0.05 % in the last 30 min (0.1 %/h).',
  'rule unsettled':
    'Not settled after {cap}: release. What is left is the result of the day; another stretch is a new plan.',
} as const;

const filled = catalogue(ENGLISH);

export const stepName = (kind: StepKind): string => filled(`name ${kind}`);

/** @param plan for what only the last point of a row or the target itself says */
export function stepText(step: Step, plan: Plan, f: Figures): string {
  const pressure = f.step(step.pressure_bar);
  switch (step.kind) {
    case 'fill':
    case 'release':
    case 'drain':
      return filled(step.kind);
    case 'seat':
    case 'approach':
      return filled(step.kind, { pressure });
    case 'first step':
      return isLastPoint(step, plan)
        ? filled('first step last', { pressure, minutes: f.minutes(FIRST_LEAK_MINUTES) })
        : filled('first step', { pressure });
    case 'rise':
      return filled(step.pressure_bar >= plan.target.pressure_bar ? 'rise to target' : 'rise', { pressure });
    case 'hold':
    case 'final hold':
      return holdText(step, f);
  }
}

/** Time for the first leak figure: common practice, no source. */
const FIRST_LEAK_MINUTES = 5;

const isLastPoint = (step: Step, plan: Plan): boolean =>
  plan.steps.filter((one) => one.kind === 'first step').at(-1) === step;

function holdText({ kind, hold }: Step, f: Figures): string {
  if (hold === undefined) throw new Error('a hold has a length');
  const minutes = rangedText(f.minutes, hold.minutes);
  if (kind === 'final hold')
    return filled(hold.settles === false ? 'final hold long' : 'final hold', { minutes });
  return filled(hold.valve === 'open' ? 'hold open' : 'hold shut', { minutes });
}

/** What to do when a reading is not as foreseen: the rules that stand on the card. */
export function outsideTexts(plan: Plan, f: Figures): string[] {
  const limit = (key: string): number => plan.limits.find((l) => l.limit === key)?.value ?? NaN;
  return [
    filled('outside first step', {
      air: f.litres(limit('trappedAir_L')),
      leak: f.leak(limit('leak_mL_per_min')),
    }),
    plan.forecast.range === undefined ? filled('outside no range') : filled('outside range'),
    filled('rule hold', { least: f.minutes(plan.rest.atLeast_min) }),
    filled('rule unsettled', { cap: f.minutes(plan.rest.cap_min) }),
  ];
}
