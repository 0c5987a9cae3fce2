/** The tank of the sums by hand: its formulas can be written down. And what its plan says. */
import { parseTankFile } from '../../wire/tank/parseTankFile.ts';
import type { Danger } from '../../wire/plan/danger.ts';
import type { LimitKey, Plan } from '../../wire/plan/plan.ts';
import { planFor } from '../../wire/plan/planFor.ts';
import type { Check, Tolerance } from '../check.ts';

/**
 * 600 mm inside, 2 mm, 1000 mm between two hemispheres, E 200 GPa, nu 0.3; 12 bar, which it bears elastically; water at
 * 15 °C with 0.2 L of air at filling; gauge to 0.1 bar, one scale to 0.5 mm, thermometer to 0.1 K, supply to 50 g.
 */
export const handTank = (edition: '2008' | 'later') => ({
  hoopwright: 1,
  barrel: { insideDiameter_mm: 600, length_mm: 1000, wall_mm: 2 },
  heads: { top: { shape: 'hemispherical' }, bottom: { shape: 'hemispherical' } },
  girths: [{ name: 'middle', at_mm: 500 }],
  steel: {
    young_MPa: 200000,
    poisson: 0.3,
    density_kg_per_m3: 7900,
    flow: { law: 'ludwik', yield_MPa: 300, K_MPa: 1200, n: 0.7 },
  },
  water: { temperature_C: 15, trappedAir_L: 0.2 },
  duty: { workingPressure_bar: 8, stretchFactor: 1.5 },
  day: {
    standOffEdition: edition,
    gauges: [{ name: 'gauge', range_bar: 25, resolution_bar: 0.1 }],
    readings: [{ girth: 'middle', by: 'taped scale and camera', resolution_mm: 0.5 }],
    supply: { by: 'weighing', resolution_mL: 50 },
    thermometer: { resolution_K: 0.1 },
    plugs: [{ name: 'plug', diameter_mm: 60 }],
  },
});

const plans = new Map<string, Plan>();

export function planned(edition: '2008' | 'later' = 'later'): Plan {
  const kept = plans.get(edition);
  if (kept !== undefined) return kept;
  const parsed = parseTankFile(handTank(edition));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues));
  const answer = planFor({ ...parsed, program: 'checks', hash: () => '' });
  if (answer.kind === 'refused') throw new Error(JSON.stringify(answer.reasons));
  plans.set(edition, answer.plan);
  return answer.plan;
}

export function danger<K extends Danger['kind']>(
  kind: K,
  edition: '2008' | 'later' = 'later',
): Extract<Danger, { kind: K }> {
  const found = planned(edition).dangers.find((d): d is Extract<Danger, { kind: K }> => d.kind === kind);
  if (found === undefined) throw new Error(`the plan has no danger "${kind}"`);
  return found;
}

export const energy = (of: 'wall' | 'water' | 'air'): number =>
  planned().dangers.flatMap((d) => (d.kind === 'energy' && d.of === of ? [d.energy_J] : []))[0] ?? NaN;

export const limit = (key: LimitKey): number => planned().limits.find((l) => l.limit === key)?.value ?? NaN;

export const one = (
  id: string,
  what: string,
  ours: () => number,
  theirs: number,
  unit: string,
  tolerance: Tolerance,
  reason: string,
): Check => ({
  id: `plan-by-hand/${id}`,
  what,
  ours,
  theirs,
  unit,
  tolerance,
  reason,
  standing: 'computed from published',
});
