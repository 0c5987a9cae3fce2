/** A plan as people read it, once for screen, terminal and paper: the card, the log sheet, and the sections behind them. */
import type { FrozenPlan, Outdated, Plan, Step } from '@hoopwright/wire/plan';
import { headGroups } from '@hoopwright/wire/record';
import type { Manner } from '../figure/manner.ts';
import { bare, type Figures, figuresFor, rangedText, unitOf } from './figures.ts';
import { type Section, sectionsOf } from './sections.ts';
import { type Caution, cautionsIn, cautionsOf } from './words/caution.ts';
import { catalogue } from './words/fill.ts';
import { stopTexts } from './words/limit.ts';
import { outsideTexts, stepBrief, stepName, stepText } from './words/step.ts';

/** One row of card and log sheet. Empty texts where nothing is foreseen. */
export interface StepRow {
  readonly number: string;
  readonly name: string;
  readonly does: string;
  /** For the card, where the pressure has its own column. */
  readonly brief: string;
  readonly pressure: string;
  /** Change of every girth against its zero, in the order of `PlanSheet.girths`. */
  readonly changes: readonly string[];
  readonly litres: string;
  readonly strokes: string;
  readonly hold: string;
  /** Places in `PlanSheet.girths` of those that must not be read in this step. */
  readonly forbidden: readonly number[];
}

export interface PlanSheet {
  readonly tank: string;
  readonly serial: string;
  /** "Revision B, Dunlin first stretch, 2026-10-03", or that it is a draft. */
  readonly revision: string;
  /** Eight groups, as on the log sheet; empty in a draft. */
  readonly digest: string;
  readonly forecast: string;
  /** Why it is out of date; undefined while it is current. */
  readonly outOfDate?: string;
  readonly roles: Plan['roles'];
  readonly girths: readonly string[];
  /** Place in `girths` of the one that grows most and is read from behind the wall. */
  readonly main: number;
  /** Gauges that are read from behind the wall. */
  readonly gauges: readonly string[];
  readonly units: { readonly pressure: string; readonly girth: string; readonly litres: string };
  readonly counts: 'strokes' | 'litres';
  readonly steps: readonly StepRow[];
  /** Rule of the final hold, and each hold by its name. */
  readonly holdRule: string;
  readonly holds: readonly string[];
  readonly card: {
    readonly title: string;
    readonly stops: readonly string[];
    readonly ifs: readonly string[];
    readonly cautions: readonly Caution[];
  };
  readonly log: { readonly title: string; readonly cautions: readonly Caution[] };
  readonly sections: readonly Section[];
}

const ENGLISH = {
  card: 'Director’s card',
  log: 'Log sheet',
  hold: 'hold {number}, {pressure}',
  draft: 'DRAFT, not frozen: not for test day',
  frozen: 'Revision {revision} “{name}”, frozen {date}',
  'tank changed': 'OUT OF DATE: the tank file has changed since this plan was made',
  'evidence changed': 'OUT OF DATE: a coupon file has changed since this plan was made',
  'program changed': 'OUT OF DATE: made by another version of the program',
  forecast: 'Forecast {digest}, program {program}; {range}',
  'forecast range': '{draws} tanks of varied steel, 90 % ranges',
  'forecast one': 'one assumed steel, no ranges',
} as const;

const filled = catalogue(ENGLISH);

export interface SheetOrders {
  readonly manner: Manner;
  readonly outdated?: Outdated;
}

export function planSheet(given: Plan | FrozenPlan, { manner, outdated }: SheetOrders): PlanSheet {
  const frozen = 'frozen' in given ? given.frozen : undefined;
  const plan = 'frozen' in given ? given.plan : given;
  const f = figuresFor(manner, plan.unit_bar);
  const cautions = cautionsOf(plan, f);
  const girths = plan.steps.find((s) => s.expected !== undefined)?.expected?.girths.map((g) => g.name) ?? [];
  return {
    tank: plan.tank.name,
    serial: plan.tank.serial ?? '',
    revision: frozen === undefined ? filled('draft') : filled('frozen', frozen),
    digest: frozen === undefined ? '' : headGroups(frozen.digest),
    forecast: forecastLine(plan),
    ...(outdated === undefined ? {} : { outOfDate: filled(outdated) }),
    roles: plan.roles,
    girths,
    main: mainGirth(plan, girths),
    gauges: plan.places
      .filter((p) => p.reads === 'pressure' && p.from === 'behind the wall')
      .map((p) => p.name),
    units: {
      pressure: unitOf(f.pressure(1)),
      girth: unitOf(f.girth(1)),
      litres: unitOf(f.litres(1)),
    },
    counts: plan.water.stroke_mL === undefined ? 'litres' : 'strokes',
    steps: plan.steps.map((step) => stepRow(step, plan, f)),
    holdRule: outsideTexts(plan, f)[2],
    holds: plan.steps
      .filter((s) => s.hold !== undefined)
      .map((s) => filled('hold', { number: s.number, pressure: f.step(s.pressure_bar) })),
    card: {
      title: filled('card'),
      stops: stopTexts(plan, f),
      ifs: outsideTexts(plan, f),
      cautions: cautionsIn('card', cautions),
    },
    log: { title: filled('log'), cautions: cautionsIn('log', cautions) },
    sections: sectionsOf(plan, f, cautions),
  };
}

const forecastLine = ({ forecast }: Plan): string =>
  filled('forecast', {
    digest: forecast.digest.slice(0, 12),
    program: forecast.program,
    range:
      forecast.range === undefined
        ? filled('forecast one')
        : filled('forecast range', { draws: String(forecast.range.draws) }),
  });

/** Girths read at the tank do not steer the day: the largest of those read from behind the wall does. */
function mainGirth(plan: Plan, girths: readonly string[]): number {
  const far = plan.places
    .filter((p) => p.reads === 'girth' && p.from === 'behind the wall')
    .map((p) => p.name);
  const held = plan.steps.find((s) => s.kind === 'final hold')?.expected?.girths ?? [];
  const best = held
    .filter((g) => far.includes(g.name))
    .reduce<(typeof held)[number] | undefined>(
      (a, b) => (a === undefined || b.growth_percent.value > a.growth_percent.value ? b : a),
      undefined,
    );
  return Math.max(0, girths.indexOf(best?.name ?? ''));
}

function stepRow(step: Step, plan: Plan, f: Figures): StepRow {
  const { expected, hold } = step;
  return {
    number: step.number,
    name: stepName(step.kind),
    does: stepText(step, plan, f),
    brief: stepBrief(step, plan, f),
    pressure: bare(f.step(step.pressure_bar)),
    changes:
      expected?.girths.map((g) => (step.reads.includes(g.name) ? bareRange(f.girth, g.change_mm) : '')) ?? [],
    litres: expected === undefined ? '' : bareRange(f.litres, expected.pumped_L),
    strokes: expected?.strokes === undefined ? '' : rangedText(f.count, expected.strokes),
    hold: hold === undefined ? '' : rangedText(f.minutes, hold.minutes),
    forbidden: expected?.girths.flatMap((g, i) => (step.reads.includes(g.name) ? [] : [i])) ?? [],
  };
}

const bareRange = (write: (value: number) => string, range: Parameters<typeof rangedText>[1]): string => {
  const text = rangedText(write, range);
  const unit = unitOf(write(range.value));
  return unit === '' ? text : text.slice(0, -unit.length).trimEnd();
};
