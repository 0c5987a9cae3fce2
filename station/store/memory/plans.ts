/** Frozen plans in memory. */
import type { PlanLine } from '@hoopwright/wire/plan';
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

export const memoryPlans = ({ log, standing, clock }: Parts): Plans => {
  const shelf = new Map<string, Held[]>();
  const of = (project: string): Held[] => shelf.get(project) ?? [];
  return {
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
      const { frozen, plan } = given;
      const same = of(project).find(({ line }) => line.digest === frozen.digest);
      if (same) return { kind: 'done', line: same.line };
      const taken = of(project).find(({ line }) => line.revision === frozen.revision);
      if (taken) return { kind: 'taken', line: taken.line };
      const line: PlanLine = {
        ...frozen,
        tank: plan.tank.digest,
        program: plan.forecast.program,
        version,
        frozen_ms: clock(),
        ...whose(by),
      };
      shelf.set(project, [...of(project), { line, text: JSON.stringify(given) }]);
      log.tell({ project, kind: 'frozen', current: version, ...whose(by) });
      return { kind: 'done', line };
    },
  };
};
