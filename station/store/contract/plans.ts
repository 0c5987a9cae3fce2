/** What every store promises about frozen plans. */
import assert from 'node:assert/strict';
import { type FrozenPlan, freeze, isWhole, type Plan } from '@hoopwright/wire/plan';
import { projectFileText, readProjectFile } from '@hoopwright/wire/project';
import { sha256 } from '../hash.ts';
import { projectFileOf, takeIn } from '../projectFile.ts';
import type { Store } from '../store.ts';
import { type Claim, must, tankText } from './claim.ts';

const home = (store: Store): string =>
  store.projects.create({ name: 'Dunlin', file: tankText(1.5) }).project.id;

/** Of a plan only what the store reads, and figures that a careless text would spoil. */
const frozen = (revision: string, target = 38.400000000000006): FrozenPlan => {
  const plan = {
    hoopwrightPlan: 1,
    tank: { name: 'Dunlin é', digest: 'a1'.repeat(32) },
    forecast: { program: '0.0.7', digest: 'b2'.repeat(32) },
    target: { pressure_bar: target, stretchFactor: 1 / 3 },
  };
  const seal = { name: 'Saturday', revision, date: '2026-10-03' };
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- a store looks at nothing else in a plan
  return freeze(plan as unknown as Plan, seal, sha256);
};

export const PLAN_CLAIMS: readonly Claim[] = [
  {
    says: 'a frozen plan comes back whole, under its digest, and only from its own project',
    holds: (store) => {
      const [project, other] = [home(store), home(store)];
      const plan = frozen('A');
      assert.equal(store.plans.keep(project, plan).kind, 'done');
      const back = must(store.plans.find(project, plan.frozen.digest), 'the plan');
      assert.deepEqual(back, plan);
      assert.ok(isWhole(back, sha256));
      assert.equal(store.plans.find(other, plan.frozen.digest), undefined);
      assert.deepEqual(store.plans.list(other), []);
    },
  },
  {
    says: 'frozen plans are listed newest first, each with what it was made from',
    holds: (store) => {
      const project = home(store);
      store.plans.keep(project, frozen('A'));
      store.projects.save(project, { basedOn: 1, file: tankText(2) });
      const second = frozen('B', 40);
      store.plans.keep(project, second, { by: 'left window' });
      const [top, next] = store.plans.list(project);
      assert.deepEqual([top.revision, next.revision], ['B', 'A']);
      assert.deepEqual([top.version, next.version], [2, 1]);
      const { name, date, digest, tank, program, by } = top;
      assert.deepEqual([name, date, digest], ['Saturday', '2026-10-03', second.frozen.digest]);
      assert.deepEqual([tank, program, by], ['a1'.repeat(32), '0.0.7', 'left window']);
      assert.ok(top.frozen_ms > next.frozen_ms);
    },
  },
  {
    says: 'a revision is given once; the same plan again is no other plan',
    holds: (store) => {
      const project = home(store);
      const before = store.plans.keep(project, frozen('A'));
      assert.deepEqual(store.plans.keep(project, frozen('A')), before);
      const other = store.plans.keep(project, frozen('A', 40));
      assert.equal(other.kind, 'taken');
      assert.equal(other.kind === 'taken' && other.line.digest, frozen('A').frozen.digest);
      assert.equal(store.plans.list(project).length, 1);
      assert.equal(store.plans.keep(home(store), frozen('A', 40)).kind, 'done');
    },
  },
  {
    says: 'a plan is frozen for a project that is there, and stays when the project is deleted',
    holds: (store) => {
      const project = home(store);
      const plan = frozen('A');
      store.plans.keep(project, plan);
      store.projects.remove(project);
      assert.equal(store.plans.keep(project, frozen('B')).kind, 'missing');
      assert.equal(store.plans.keep('nobody', frozen('B')).kind, 'missing');
      assert.deepEqual(store.plans.find(project, plan.frozen.digest), plan);
    },
  },
  {
    says: 'freezing is told to the other windows once',
    holds: (store) => {
      const project = home(store);
      const before = store.changes.last();
      store.plans.keep(project, frozen('A'), { by: 'left window' });
      store.plans.keep(project, frozen('A'), { by: 'left window' });
      store.plans.keep(project, frozen('A', 40));
      const told = store.changes.since(before).filter((change) => change.project === project);
      assert.deepEqual(
        told.map(({ kind, by }) => [kind, by]),
        [['frozen', 'left window']],
      );
    },
  },
  {
    says: 'a project file carries its frozen plans, and they come in as they were frozen',
    holds: (store) => {
      const project = home(store);
      store.plans.keep(project, frozen('A'), { by: 'left window' });
      store.projects.save(project, { basedOn: 1, file: tankText(2) });
      store.plans.keep(project, frozen('B', 40));
      const copy = takenIn(store, carried(store, project, 'all'));
      assert.deepEqual(store.plans.list(copy), store.plans.list(project));
      for (const { digest } of store.plans.list(project)) {
        const back = must(store.plans.find(copy, digest), 'the plan');
        assert.equal(JSON.stringify(back), JSON.stringify(store.plans.find(project, digest)));
        assert.ok(isWhole(back, sha256));
      }
      assert.equal(store.plans.keep(copy, frozen('A', 50)).kind, 'taken');
    },
  },
  {
    says: 'the standing version alone carries the plans that were frozen of it',
    holds: (store) => {
      const project = home(store);
      store.plans.keep(project, frozen('A'));
      store.projects.save(project, { basedOn: 1, file: tankText(2) });
      store.plans.keep(project, frozen('B', 40));
      const copy = takenIn(store, carried(store, project, 'current'));
      assert.deepEqual(
        store.plans.list(copy).map(({ revision, version }) => [revision, version]),
        [['B', 2]],
      );
    },
  },
  {
    says: 'a project file with a plan that was changed on the way is refused, and nothing is kept',
    holds: (store) => {
      const project = home(store);
      store.plans.keep(project, frozen('A'));
      const before = store.projects.list('kept').length;
      const text = carried(store, project, 'all').replace('38.400000000000006', '39.400000000000006');
      const read = readProjectFile(text);
      if (!read.ok) throw new Error(JSON.stringify(read.issues));
      const taken = takeIn(store, read.value);
      assert.equal(taken.kind === 'refused' && taken.issues[0].path, 'plans[0].frozen.frozen.digest');
      assert.equal(store.projects.list('kept').length, before);
    },
  },
];

const carried = (store: Store, project: string, which: 'all' | 'current'): string =>
  projectFileText(must(projectFileOf(store, project, which), 'the project file'));

function takenIn(store: Store, text: string): string {
  const read = readProjectFile(text);
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  const taken = takeIn(store, read.value);
  if (taken.kind !== 'done') throw new Error(JSON.stringify(taken.issues));
  return taken.opened.project.id;
}
