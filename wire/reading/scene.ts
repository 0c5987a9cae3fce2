/** What a limit is judged on: the plan, the rows so far, and what can be read off them. */
import type { Plan, Step } from '../plan/plan.ts';
import type { Channel } from './channel.ts';
import type { Row } from './row.ts';

/** What a limit is held against. */
export interface Seen {
  readonly value: number;
  readonly channels: readonly string[];
  /** What the instruments may fake. */
  readonly grace?: number;
}

export interface Scene {
  readonly plan: Plan;
  readonly rows: readonly Row[];
  readonly now: Row;
  readonly channels: readonly Channel[];
  readonly step: Step | undefined;
}

export const stepAt = (plan: Plan, number: string): Step | undefined =>
  plan.steps.find((step) => step.number === number);

export const isFirst = (plan: Plan, { step }: Row): boolean => {
  const kind = stepAt(plan, step)?.kind;
  return kind === 'first step' || kind === 'seat';
};

export const growthOf = ({ plan, rows }: Scene, name: string, row: Row): number | undefined =>
  growthAt(plan, rows, { name, row });

/** Percent of growth of a girth at a row, against its first reading and what was foreseen up to there. */
export function growthAt(
  plan: Plan,
  rows: readonly Row[],
  { name, row }: { readonly name: string; readonly row: Row },
): number | undefined {
  const zero = rows.find((one) => one.values[name] !== undefined);
  if (zero === undefined || row.values[name] === undefined) return undefined;
  const expected = (number: string) =>
    stepAt(plan, number)?.expected?.girths.find((girth) => girth.name === name);
  const at = expected(zero.step);
  const base = at === undefined ? zero.values[name] : at.girth_mm.value / (1 + at.growth_percent.value / 100);
  return (100 * (row.values[name] - zero.values[name])) / base + (at?.growth_percent.value ?? 0);
}

/** Litres drawn at a row, by whatever counts them. */
export function litres(
  { channels, plan }: Pick<Scene, 'channels' | 'plan'>,
  { values }: Row,
): number | undefined {
  for (const { name, reads } of channels) {
    if (values[name] === undefined) continue;
    if (reads === 'litres') return values[name];
    if (reads === 'strokes' && plan.water.stroke_mL !== undefined)
      return (values[name] * plan.water.stroke_mL) / 1e3;
  }
  return undefined;
}
