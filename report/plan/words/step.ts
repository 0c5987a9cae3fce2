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
  'final hold': 'Hold until growth is under {rate} %/h. Expected {minutes}.',
  'final hold long':
    'Hold until growth is under {rate} %/h, at most {minutes}: it is not expected to settle.',
  release: 'Release slowly to zero, from behind the wall. Read all.',
  drain: 'Open the top vent. Drain from below. Dry.',

  'brief fill': 'from below, vent open; stand 15 min, top up, shut the vent',
  'brief seat': 'every girth to zero',
  'brief first step': 'read all',
  'brief first step last': 'read all; valve shut {minutes}, read again; judge the first step',
  'brief approach': 'hold 5 min; only now read at the tank',
  'brief rise': 'stop, read all',
  'brief rise to target': 'the stretch pressure: read all',
  'brief hold open': '{minutes}, valve open: keep the pressure',
  'brief hold shut': '{minutes}, valve shut: keep the water',
  'brief final hold': 'until under {rate} %/h; expected {minutes}',
  'brief final hold long': 'until under {rate} %/h, at most {minutes}: not expected to settle',
  'brief release': 'slowly, from behind the wall; read all',
  'brief drain': 'TOP VENT FIRST; then drain from below, dry',

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
    'First step: air over {air} or a loss over {leak}: down to zero, bleed, look for the leak at zero, again. A girth that moves less or more than {share} times what is foreseen: it is set wrongly; down, set it again.',
  'outside range':
    'A reading outside its range: stop pumping, keep the pressure, read again, compare the other girths, gauge and litres. One reading alone is wrong: go on without it, if one girth and one gauge are left. All of them differ: the steel is another; go on only as far as no stop limit is near.',
  'outside no range':
    'These figures come from one assumed steel and have no range: other girths at a pressure mean another steel, not a fault. Readings that disagree with one another are a fault: stop pumping, keep the pressure, find it.',
  'rule hold':
    'Final hold: at least {least}, then until the girth that grows most has grown by less than {small} % in the last 30 min ({rate} %/h).',
  'rule unsettled':
    'Not settled after {cap}: release. What is left is the result of the day; another stretch is a new plan.',
} as const;

const filled = catalogue(ENGLISH);

export const stepName = (kind: StepKind): string => filled(`name ${kind}`);

/** What is done, in a sentence. */
export const stepText = (step: Step, plan: Plan, f: Figures): string =>
  filled(manyOf(step, plan), {
    pressure: f.step(step.pressure_bar),
    minutes: minutesOf(step, f),
    rate: restRate(f),
  });

/** The same for the card, where the pressure stands in its own column. */
export const stepBrief = (step: Step, plan: Plan, f: Figures): string =>
  filled(`brief ${manyOf(step, plan)}`, { minutes: minutesOf(step, f), rate: restRate(f) });

/** %/h at which a hold has come to rest (core, SETTLED_RATE), and what that is over half an hour. */
export const restRate = (f: Figures): string => f.plain(0.1, 1);

/** Which sentence of its kind a step has. */
function manyOf(step: Step, plan: Plan) {
  const { kind, hold } = step;
  switch (kind) {
    case 'first step':
      return isLastPoint(step, plan) ? 'first step last' : kind;
    case 'rise':
      return step.pressure_bar >= plan.target.pressure_bar ? 'rise to target' : kind;
    case 'hold':
      return hold?.valve === 'shut' ? 'hold shut' : 'hold open';
    case 'final hold':
      return hold?.settles === false ? 'final hold long' : kind;
    default:
      return kind;
  }
}

const minutesOf = (step: Step, f: Figures): string =>
  step.hold === undefined ? f.minutes(FIRST_LEAK_MINUTES) : rangedText(f.minutes, step.hold.minutes);

/** Time for the first leak figure: common practice, no source. */
const FIRST_LEAK_MINUTES = 5;

const isLastPoint = (step: Step, plan: Plan): boolean =>
  plan.steps.filter((one) => one.kind === 'first step').at(-1)?.number === step.number;

/** What to do when a reading is not as foreseen: the rules that stand on the card. */
export function outsideTexts(plan: Plan, f: Figures): string[] {
  const limit = (key: string): number => plan.limits.find((l) => l.limit === key)?.value ?? NaN;
  return [
    filled('outside first step', {
      share: f.plain(1.25, 2),
      air: f.litres(limit('trappedAir_L')),
      leak: f.leak(limit('leak_mL_per_min')),
    }),
    plan.forecast.range === undefined ? filled('outside no range') : filled('outside range'),
    filled('rule hold', {
      least: f.minutes(plan.rest.atLeast_min),
      small: f.plain(0.05, 2),
      rate: restRate(f),
    }),
    filled('rule unsettled', { cap: f.minutes(plan.rest.cap_min) }),
  ];
}
