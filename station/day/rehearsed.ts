/** For tests: a day rehearsed on an invented tank of the Tern Hill workshop, as drafts of a record. */
import { diceOf } from '@hoopwright/core/gauge';
import { variedTank } from '@hoopwright/core/stretch';
import { type Plan, planFor } from '@hoopwright/wire/plan';
import type { About, Draft } from '@hoopwright/wire/record';
import { parseTankFile } from '@hoopwright/wire/tank';
import { readFault } from '../rig/fault.ts';
import { rehearsal } from '../rig/rehearsal.ts';
import { sha256 } from '../store/hash.ts';

export const TEST_TANK = {
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
  },
};

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
