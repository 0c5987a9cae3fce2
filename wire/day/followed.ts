/**
 * A tank that an earlier day has stretched: its wall is elastic up to the highest pressure that it has seen. What a plan
 * of the tank as welded foresees is turned into what is foreseen of it now; growth stays that of the tank as welded, so
 * that the plan's limits hold for all of it.
 */
import type { Plan, Step } from '../plan/plan.ts';
import type { Fold } from './fold/inside.ts';
import type { Follows } from './state.ts';

/** Under this the tank counts as let down, bar; girths of the same minutes are what is left. Our choice, no source. */
const LET_DOWN_BAR = 0.5;
const SAME_MS = 120_000;

/** What the record of a day leaves to the next; undefined: no pressure was read. */
export function leftBy({ state, inside }: Fold): Follows | undefined {
  const { figures, follows, channels, about } = state;
  const highest_bar = Math.max(figures.highest_bar ?? 0, follows?.highest_bar ?? 0);
  if (!(highest_bar > LET_DOWN_BAR)) return undefined;
  const { pressure } = figures;
  if (pressure === undefined || pressure.value > LET_DOWN_BAR) return { record: about.record, highest_bar };
  const left = channels.flatMap(({ channel, last }) => {
    const zero = inside.zeros[channel.name];
    if (channel.reads !== 'girth' || last === undefined || zero === undefined) return [];
    if (last.wall_ms < pressure.wall_ms - SAME_MS) return [];
    return [[channel.name, (100 * (last.value - zero.value)) / zero.base + zero.grown] as const];
  });
  return {
    record: about.record,
    highest_bar,
    ...(left.length === 0 ? {} : { left_percent: Object.fromEntries(left) }),
  };
}

/** Going up to the target, in order: what is foreseen there of the tank as welded. */
const goesUp = ({ kind, expected }: Step): boolean =>
  expected !== undefined && kind !== 'release' && kind !== 'drain' && kind !== 'fill';

export function planAfter(plan: Plan, follows: Follows | undefined): Plan {
  const first = plan.steps.findLast(({ kind }) => kind === 'first step');
  if (follows === undefined || first?.expected === undefined) return plan;
  const { highest_bar, left_percent = {} } = follows;
  const up = plan.steps.filter(goesUp);
  const elastic = (name: string): number => growthOf(first, name) / first.pressure_bar;
  const litres = first.expected.pumped_L.value / first.pressure_bar;
  const seen = (of: (step: Step) => number): number => at(up, highest_bar, of);
  const left = (name: string): number =>
    left_percent[name] ?? Math.max(0, seen((step) => growthOf(step, name)) - elastic(name) * highest_bar);
  const spared = Math.max(0, seen((step) => step.expected?.pumped_L.value ?? 0) - litres * highest_bar);
  const steps = plan.steps.map((step): Step => {
    const { expected, pressure_bar } = step;
    if (expected === undefined || !goesUp(step)) return step;
    const again = pressure_bar <= highest_bar;
    const pumped_L = again
      ? { value: litres * pressure_bar }
      : { value: Math.max(litres * pressure_bar, expected.pumped_L.value - spared) };
    const share = expected.pumped_L.value > 0 ? pumped_L.value / expected.pumped_L.value : 1;
    const { strokes: counted } = expected;
    const strokes = counted === undefined ? {} : { strokes: { value: counted.value * share } };
    const girths = expected.girths.map((girth) => {
      const grown = left(girth.name) + elastic(girth.name) * pressure_bar;
      if (!again && girth.growth_percent.value >= grown) return girth;
      const welded = girth.girth_mm.value / (1 + girth.growth_percent.value / 100);
      return { ...girth, girth_mm: { value: welded * (1 + grown / 100) }, growth_percent: { value: grown } };
    });
    return { ...step, expected: { ...expected, ...strokes, pumped_L, girths } };
  });
  return {
    ...plan,
    steps: steps.map((step, i) => (goesUp(step) ? withSteps(step, steps.slice(0, i)) : step)),
  };
}

/** What is told against the seating and against the step before, from what is told of each step. */
function withSteps(step: Step, before: readonly Step[]): Step {
  const { expected } = step;
  if (expected === undefined) return step;
  const seat = [...before, step].find(goesUp)?.expected ?? expected;
  const drawn = before.findLast(goesUp)?.expected?.pumped_L.value ?? 0;
  const girths = expected.girths.map((girth) => {
    const zero = seat.girths.find(({ name }) => name === girth.name)?.girth_mm.value ?? girth.girth_mm.value;
    return { ...girth, change_mm: { value: girth.girth_mm.value - zero } };
  });
  return { ...step, expected: { ...expected, girths, more_L: Math.max(0, expected.pumped_L.value - drawn) } };
}

const growthOf = ({ expected }: Step, name: string): number =>
  expected?.girths.find((girth) => girth.name === name)?.growth_percent.value ?? 0;

/** On the straight line between two steps; beyond the last one as at it. */
function at(steps: readonly Step[], pressure_bar: number, of: (step: Step) => number): number {
  const below = steps.findLast((step) => step.pressure_bar <= pressure_bar);
  const above = steps.find((step) => step.pressure_bar > pressure_bar);
  if (below === undefined || above === undefined) return below === undefined ? 0 : of(below);
  const share = (pressure_bar - below.pressure_bar) / (above.pressure_bar - below.pressure_bar);
  return of(below) + share * (of(above) - of(below));
}
