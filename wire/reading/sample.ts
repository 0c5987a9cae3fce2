/** A plan for tests: an invented tank of the Tern Hill rocketry workshop, planned on a coarse mesh. */
import { parseTankFile } from '../tank/parseTankFile.ts';
import type { Plan } from '../plan/plan.ts';
import { planFor } from '../plan/planFor.ts';

const FILE = {
  hoopwright: 1,
  name: 'INVENTED: Dunlin test tank',
  barrel: { insideDiameter_mm: 400, length_mm: 700, wall_mm: 1.5 },
  heads: { top: { shape: 'semi-ellipsoidal' }, bottom: { shape: 'semi-ellipsoidal' } },
  girths: [
    { name: 'low', at_mm: 200 },
    { name: 'high', at_mm: 520 },
  ],
  steel: {
    flow: { law: 'swift', K_MPa: 1330, n: 0.43, e0: 0.021 },
    flowRate_per_s: 1e-4,
    rate: { on: 'yield', perEfold_MPa: 2.6 },
  },
  duty: { workingPressure_bar: 20, stretchFactor: 1.5, pump_L_per_min: 0.9 },
  day: {
    gauges: [
      { name: 'gauge A', range_bar: 40, resolution_bar: 0.1, error_percent: 0.6 },
      { name: 'gauge B', range_bar: 60, resolution_bar: 0.2, error_percent: 1 },
    ],
    readings: [
      { girth: 'low', by: 'draw-wire', resolution_mm: 0.05 },
      { girth: 'high', by: 'taped scale and camera', resolution_mm: 0.5 },
    ],
    supply: { by: 'weighing', resolution_mL: 5 },
    roles: { director: 'A. Invented', noteTaker: 'B. Invented' },
  },
};

export const sampleTank = () => {
  const parsed = parseTankFile(JSON.stringify(FILE));
  if (!parsed.ok) throw new Error(`the sample tank has issues: ${JSON.stringify(parsed.issues)}`);
  return parsed;
};

let made: Plan | undefined;

/** Worked out once. */
export function samplePlan(hash: (text: string) => string): Plan {
  if (made !== undefined) return made;
  const answer = planFor({ ...sampleTank(), program: 'test', hash, shell: { elements: 40, layers: 3 } });
  if (answer.kind !== 'plan')
    throw new Error(`the sample tank has no plan: ${JSON.stringify(answer.reasons)}`);
  made = answer.plan;
  return made;
}
