/** Frozen plans in SQLite: kept as text, key by key as they were frozen; triggers in the base forbid anybody to touch them. */
import { type FrozenPlan, madeFrom, type PlanLine } from '@hoopwright/wire/plan';
import type { CarriedPlan } from '@hoopwright/wire/project';
import type { Base, Row } from '../../driver/base.ts';
import { whose } from '../by.ts';
import type { Plans } from '../store.ts';
import type { Journal } from './changes.ts';
import { figure, ifText, orNull, text } from './row.ts';
import type { ProjectRows } from './rows.ts';

interface Parts {
  readonly base: Base;
  readonly journal: Journal;
  readonly rows: ProjectRows;
  readonly clock: () => number;
}

export const openPlans = ({ base, journal, rows, clock }: Parts): Plans => {
  const one = (project: string, digest: string): Row | undefined =>
    base.one('SELECT * FROM plan WHERE project = ? AND digest = ?', project, digest);

  return {
    list: (project) =>
      base.all('SELECT * FROM plan WHERE project = ? ORDER BY rowid DESC', project).map(lineOf),
    find: (project, digest) => {
      const row = one(project, digest);
      return row && planOf(row);
    },
    keep: (project, plan, given = {}) =>
      journal.commit(() => {
        const owner = rows.find(project);
        if (!owner || owner.deleted_ms !== undefined) return { kind: 'missing' };
        const { digest, revision } = plan.frozen;
        const same = one(project, digest);
        if (same) return { kind: 'done', line: lineOf(same) };
        const taken = base.one('SELECT * FROM plan WHERE project = ? AND revision = ?', project, revision);
        if (taken) return { kind: 'taken', line: lineOf(taken) };
        const { current: version } = owner;
        layPlan(base, project, { version, frozen_ms: clock(), ...whose(given), frozen: plan });
        journal.note({ project, kind: 'frozen', current: owner.current, ...whose(given) });
        const kept = one(project, digest);
        if (!kept) throw new Error(`plan ${digest} is not in the base`);
        return { kind: 'done', line: lineOf(kept) };
      }),
  };
};

/** Within a commit of whoever calls. */
export const layPlan = (
  base: Base,
  project: string,
  { version, frozen_ms, by, frozen }: CarriedPlan,
): void => {
  const { digest, revision } = frozen.frozen;
  const values = [project, digest, revision, version, frozen_ms, orNull(by), JSON.stringify(frozen)];
  base.change('INSERT INTO plan VALUES (?, ?, ?, ?, ?, ?, ?)', ...values);
};

const planOf = (row: Row): FrozenPlan => JSON.parse(text(row.content));

const lineOf = (row: Row): PlanLine => {
  const { plan, frozen } = planOf(row);
  return {
    ...frozen,
    ...madeFrom(plan),
    version: figure(row.version),
    frozen_ms: figure(row.frozen_ms),
    ...ifText('by', row.frozen_by),
  };
};
