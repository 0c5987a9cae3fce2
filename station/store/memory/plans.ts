/** Frozen plans in memory. */
import { madeFrom, type PlanLine } from '@hoopwright/wire/plan';
import type { CarriedPlan } from '@hoopwright/wire/project';
import { whose } from '../by.ts';
import type { Plans } from '../store.ts';
import type { Log } from './changes.ts';

interface Parts {
  readonly log: Log;
  /** Number of the version that stands, for a project that is kept. */
  readonly standing: (project: string) => number | undefined;
  readonly clock: () => number;
}

interface Held {
  readonly line: PlanLine;
  /** As text, so that nobody holds a plan that stands in the store. */
  readonly text: string;
}

export interface MemoryPlans {
  readonly plans: Plans;
  lay(project: string, plan: CarriedPlan): PlanLine;
}

export const memoryPlans = ({ log, standing, clock }: Parts): MemoryPlans => {
  const shelf = new Map<string, Held[]>();
  const of = (project: string): Held[] => shelf.get(project) ?? [];
  const lay = (project: string, { frozen, ...known }: CarriedPlan): PlanLine => {
    const line: PlanLine = { ...frozen.frozen, ...madeFrom(frozen.plan), ...known };
    shelf.set(project, [...of(project), { line, text: JSON.stringify(frozen) }]);
    return line;
  };
  const plans: Plans = {
    list: (project) =>
      of(project)
        .map(({ line }) => line)
        .toReversed(),
    find: (project, digest) => {
      const held = of(project).find(({ line }) => line.digest === digest);
      return held && JSON.parse(held.text);
    },
    keep: (project, given, by = {}) => {
      const version = standing(project);
      if (version === undefined) return { kind: 'missing' };
      const { frozen } = given;
      const same = of(project).find(({ line }) => line.digest === frozen.digest);
      if (same) return { kind: 'done', line: same.line };
      const taken = of(project).find(({ line }) => line.revision === frozen.revision);
      if (taken) return { kind: 'taken', line: taken.line };
      const line = lay(project, { version, frozen_ms: clock(), ...whose(by), frozen: given });
      log.tell({ project, kind: 'frozen', current: version, ...whose(by) });
      return { kind: 'done', line };
    },
  };
  return { plans, lay };
};
