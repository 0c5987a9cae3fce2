/** What every store promises about projects and their versions. */
import assert from 'node:assert/strict';
import type { Opened } from '@hoopwright/wire/project';
import type { Edit, Store } from '../store.ts';
import { type Claim, must, tankText } from './claim.ts';

const start = (store: Store): Opened => store.projects.create({ name: 'Dunlin', file: tankText(1.5) });

const done = (edit: Edit): Opened => {
  if (edit.kind === 'done') return edit.opened;
  throw new Error(`the edit was not done, it is ${edit.kind}`);
};

/** A project with versions 1, 2 and 3, of which 3 stands. */
const grown = (store: Store): string => {
  const { id } = start(store).project;
  done(store.projects.save(id, { basedOn: 1, file: tankText(2), by: 'left window' }));
  done(store.projects.save(id, { basedOn: 2, file: tankText(2.5), note: 'for the plate we have' }));
  return id;
};

const LIFE: readonly Claim[] = [
  {
    says: 'a project gives its tank file back character for character',
    holds: (store) => {
      const { project } = start(store);
      const opened = must(store.projects.open(project.id), 'the project');
      assert.equal(opened.version.file, tankText(1.5));
      assert.equal(opened.project.name, 'Dunlin');
      assert.deepEqual(
        [opened.project.current, opened.project.undo, opened.project.redo],
        [1, undefined, undefined],
      );
    },
  },
  {
    says: 'the newest project is listed first',
    holds: (store) => {
      const [first, second] = [start(store).project.id, start(store).project.id];
      const [top, next] = store.projects.list('kept').map(({ id }) => id);
      assert.deepEqual([top, next], [second, first]);
    },
  },
  {
    says: 'a copy goes its own way, with its attachments and from the version that stands',
    holds: (store) => {
      const id = grown(store);
      store.projects.undo(id, { from: 3 });
      const coupon = must(
        store.attachments.add(id, { name: 'c1.csv', bytes: Uint8Array.of(1, 2, 3) }),
        'c1.csv',
      );
      const copy = must(store.projects.copy(id, { name: 'Dunlin, thicker' }), 'the copy').project;
      assert.equal(store.projects.open(copy.id)?.version.file, tankText(2));
      store.projects.save(copy.id, { basedOn: 1, file: tankText(4) });
      assert.equal(store.projects.open(id)?.version.file, tankText(2));
      const [copied] = store.attachments.list(copy.id, 'kept');
      assert.equal(copied.sha256, coupon.sha256);
      assert.notEqual(copied.id, coupon.id);
    },
  },
  {
    says: 'a project is renamed and keeps its versions',
    holds: (store) => {
      const id = grown(store);
      assert.equal(store.projects.rename(id, { name: 'Dunlin II' })?.name, 'Dunlin II');
      assert.equal(store.projects.versions(id).length, 3);
    },
  },
  {
    says: 'a deleted project leaves the list, takes no edit, and comes back whole',
    holds: (store) => {
      const id = grown(store);
      assert.notEqual(store.projects.remove(id)?.deleted_ms, undefined);
      assert.ok(!store.projects.list('kept').some((project) => project.id === id));
      assert.ok(store.projects.list('deleted').some((project) => project.id === id));
      assert.equal(store.projects.save(id, { basedOn: 3, file: tankText(9) }).kind, 'missing');
      assert.equal(store.projects.rename(id, { name: 'x' }), undefined);
      assert.equal(store.projects.remove(id), undefined);
      assert.equal(store.projects.restore(id)?.deleted_ms, undefined);
      assert.equal(store.projects.restore(id), undefined);
      assert.equal(store.projects.open(id)?.version.file, tankText(2.5));
    },
  },
  {
    says: 'what is not there is missing, and nothing breaks',
    holds: (store) => {
      const { projects } = store;
      assert.equal(projects.find('nobody'), undefined);
      assert.equal(projects.open('nobody'), undefined);
      assert.equal(projects.copy('nobody', { name: 'x' }), undefined);
      assert.equal(projects.version(start(store).project.id, 7), undefined);
      assert.deepEqual(projects.versions('nobody'), []);
      assert.equal(projects.save('nobody', { basedOn: 1, file: '{}' }).kind, 'missing');
      assert.equal(projects.undo('nobody', { from: 1 }).kind, 'missing');
    },
  },
];

const EDITS: readonly Claim[] = [
  {
    says: 'every save is a version that can be read for good',
    holds: (store) => {
      const id = grown(store);
      const lines = store.projects
        .versions(id)
        .map(({ number, parent, by, note }) => ({ number, parent, by, note }));
      assert.deepEqual(lines, [
        { number: 3, parent: 2, by: undefined, note: 'for the plate we have' },
        { number: 2, parent: 1, by: 'left window', note: undefined },
        { number: 1, parent: undefined, by: undefined, note: undefined },
      ]);
      assert.equal(store.projects.version(id, 2)?.file, tankText(2));
    },
  },
  {
    says: 'a save on a version that no longer stands is refused, and the newer one is told',
    holds: (store) => {
      const id = grown(store);
      const edit = store.projects.save(id, { basedOn: 2, file: tankText(9) });
      assert.equal(edit.kind, 'stale');
      assert.equal(edit.kind === 'stale' && edit.opened.version.file, tankText(2.5));
      assert.equal(store.projects.versions(id).length, 3);
      assert.equal(store.projects.open(id)?.version.file, tankText(2.5));
    },
  },
  {
    says: 'saving what stands makes no version, and a change of spelling does',
    holds: (store) => {
      const id = grown(store);
      assert.equal(done(store.projects.save(id, { basedOn: 3, file: tankText(2.5) })).version.number, 3);
      assert.equal(
        done(store.projects.save(id, { basedOn: 3, file: ` ${tankText(2.5)}` })).version.number,
        4,
      );
    },
  },
  {
    says: 'undo goes back save by save, redo goes on again, and both end',
    holds: (store) => {
      const id = grown(store);
      assert.equal(done(store.projects.undo(id, { from: 3 })).version.file, tankText(2));
      assert.equal(done(store.projects.undo(id, { from: 2 })).version.file, tankText(1.5));
      assert.equal(store.projects.undo(id, { from: 1 }).kind, 'nothing');
      assert.equal(done(store.projects.redo(id, { from: 1 })).version.file, tankText(2));
      assert.equal(done(store.projects.redo(id, { from: 2 })).version.file, tankText(2.5));
      assert.equal(store.projects.redo(id, { from: 3 }).kind, 'nothing');
    },
  },
  {
    says: 'a save after an undo loses nothing: the version undone can still be read',
    holds: (store) => {
      const id = grown(store);
      store.projects.undo(id, { from: 3 });
      const { project, version } = done(store.projects.save(id, { basedOn: 2, file: tankText(3) }));
      assert.deepEqual([version.number, version.parent, project.undo, project.redo], [4, 2, 2, undefined]);
      assert.equal(store.projects.version(id, 3)?.file, tankText(2.5));
      assert.equal(done(store.projects.undo(id, { from: 4 })).project.redo, 4);
    },
  },
  {
    says: 'undo and redo are refused when another version stands than the window shows',
    holds: (store) => {
      const id = grown(store);
      assert.equal(store.projects.undo(id, { from: 2 }).kind, 'stale');
      assert.equal(store.projects.redo(id, { from: 1 }).kind, 'stale');
      assert.equal(store.projects.open(id)?.project.current, 3);
    },
  },
];

const CHANGES: readonly Claim[] = [
  {
    says: 'each change is told once after it was kept, in order, and can be asked for again',
    holds: (store) => {
      const before = store.changes.last();
      const told: string[] = [];
      const stop = store.changes.watch(({ kind, project, current }) => {
        const standing = store.projects.find(project)?.current;
        told.push(`${kind} ${current} ${standing}`);
      });
      const id = grown(store);
      store.projects.save(id, { basedOn: 1, file: tankText(9) });
      store.projects.undo(id, { from: 3, by: 'right window' });
      store.projects.remove(id);
      stop();
      store.projects.restore(id);
      assert.deepEqual(told, ['created 1 1', 'saved 2 2', 'saved 3 3', 'undone 2 2', 'deleted 2 2']);
      const since = store.changes.since(before);
      assert.deepEqual(
        since.map(({ kind }) => kind),
        ['created', 'saved', 'saved', 'undone', 'deleted', 'restored'],
      );
      assert.equal(since[3].by, 'right window');
      assert.equal(since.at(-1)?.id, store.changes.last());
      assert.ok(since.every(({ id: number }, i) => i === 0 || number > since[i - 1].id));
    },
  },
];

export const PROJECT_CLAIMS: readonly Claim[] = [...LIFE, ...EDITS, ...CHANGES];
