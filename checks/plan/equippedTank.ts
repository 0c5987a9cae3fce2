/** The tank of the sums by hand with pump, relief valve and hose stated, and what its plan says. */
import type { Danger } from '../../wire/plan/danger.ts';
import type { LimitKey, Need, Plan, Step } from '../../wire/plan/plan.ts';
import { planFor } from '../../wire/plan/planFor.ts';
import { parseTankFile } from '../../wire/tank/parseTankFile.ts';
import type { Check, Tolerance } from '../check.ts';
import { handTank } from './handTank.ts';

/** The tank of the other sums, and a pump of 25 mL a stroke at 20 strokes a minute; valve at 12.9 bar; hose of 8 mm. */
const file = () => {
  const tank = handTank('later');
  const pump = { mL_per_stroke: 25, strokes_per_min: 20 };
  const relief = { opens_bar: 12.9, flow_L_per_min: 6 };
  return { ...tank, day: { ...tank.day, pump, relief, hose: { insideDiameter_mm: 8 } } };
};

let kept: Plan | undefined;

export function planned(): Plan {
  if (kept !== undefined) return kept;
  const parsed = parseTankFile(file());
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues));
  const answer = planFor({ ...parsed, program: 'checks', hash: () => '' });
  if (answer.kind === 'refused') throw new Error(JSON.stringify(answer.reasons));
  kept = answer.plan;
  return kept;
}

export function danger<K extends Danger['kind']>(kind: K): Extract<Danger, { kind: K }> {
  const found = planned().dangers.find((d): d is Extract<Danger, { kind: K }> => d.kind === kind);
  if (found === undefined) throw new Error(`the plan has no danger "${kind}"`);
  return found;
}

export const air = () => {
  const found = planned().dangers.flatMap((d) => (d.kind === 'energy' && d.of === 'air' ? [d] : []))[0];
  if (found === undefined) throw new Error('the plan has no air');
  return found;
};

/** The step at this pressure on the way up. */
export function stepAt(bar: number): NonNullable<Step['expected']> {
  const found = planned().steps.find((s) => s.pressure_bar === bar && s.expected !== undefined)?.expected;
  if (found === undefined) throw new Error(`the plan has no step at ${bar} bar`);
  return found;
}

export const limit = (key: LimitKey): number =>
  planned().limits.find((l) => l.limit === key)?.value ?? Number.NaN;

export function need(name: string): Need {
  const found = planned().instruments.find((n) => n.name === name);
  if (found === undefined) throw new Error(`the plan asks for no ${name}`);
  return found;
}

export const MEMBRANE = 'membranes on the mid-surface, as for the litres per bar';
export const DIGITS = 'printed digits of the sum';

/** Given to every check as: id, what, ours, theirs, unit, tolerance, reason. */
export type Row = readonly [string, string, () => number, number, string, Tolerance, string];

export const checksOf = (rows: readonly Row[]): Check[] =>
  rows.map(([id, what, ours, theirs, unit, tolerance, reason]) => ({
    id: `plan-equipped/${id}`,
    what,
    ours,
    theirs,
    unit,
    tolerance,
    reason,
    standing: 'computed from published',
  }));
