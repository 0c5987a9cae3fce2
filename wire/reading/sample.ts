/** A plan for tests: an invented tank of the Tern Hill rocketry workshop, planned on a coarse mesh. */
import { parseTankFile } from '../tank/parseTankFile.ts';
import type { Plan } from '../plan/plan.ts';
import { planFor } from '../plan/planFor.ts';
import { TEST_TANK } from '../sample/tank.ts';

const roles = { director: 'A. Invented', noteTaker: 'B. Invented' };
const FILE = { ...TEST_TANK, day: { ...TEST_TANK.day, roles } };

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
