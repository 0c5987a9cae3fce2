/** For tests: a day rehearsed on an invented tank of the Tern Hill workshop, as drafts of a record. */
import { diceOf } from '@hoopwright/core/gauge';
import { variedTank } from '@hoopwright/core/stretch';
import { type Plan, planFor } from '@hoopwright/wire/plan';
import type { About, Draft } from '@hoopwright/wire/record';
import { TEST_TANK } from '@hoopwright/wire/sample';
import { parseTankFile } from '@hoopwright/wire/tank';
import { readFault } from '../rig/fault.ts';
import { rehearsal } from '../rig/rehearsal.ts';
import { sha256 } from '../store/hash.ts';

export { TEST_TANK };

export const MESH = { elements: 24, layers: 3 };

export const testTank = () => tankFrom(TEST_TANK);

/** The same with other parts. */
export function tankFrom(file: object) {
  const parsed = parseTankFile(JSON.stringify(file));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues));
  return parsed;
}

let made: Plan | undefined;

/** Worked out once. */
export function testPlan(): Plan {
  made ??= planFrom(TEST_TANK);
  return made;
}

export function planFrom(file: object): Plan {
  const answer = planFor({
    ...tankFrom(file),
    program: 'test',
    hash: sha256,
    shell: { elements: 40, layers: 3 },
  });
  if (answer.kind !== 'plan') throw new Error(JSON.stringify(answer.reasons));
  return answer.plan;
}

export function rehearsed(seed: number, ...texts: readonly string[]): { about: About; drafts: Draft[] } {
  const faults = texts.map((text) => {
    const read = readFault(text);
    if (!read.ok) throw new Error(read.why);
    return read.fault;
  });
  const tank = variedTank(testTank().tank, diceOf(seed));
  const given = { tank, plan: testPlan(), seed, faults, hash: sha256, program: 'test', mesh: MESH };
  const { about, happenings } = rehearsal(given);
  return { about, drafts: [...happenings].map(({ draft }) => draft) };
}
