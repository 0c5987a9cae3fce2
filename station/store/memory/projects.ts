/** Projects and versions in memory. */
import type { Opened, Project, Version, VersionLine } from '@hoopwright/wire/project';
import { type By, whose } from '../by.ts';
import { freshId } from '../hash.ts';
import type { Edit, Projects, Surroundings } from '../store.ts';
import type { MemoryAttachments } from './attachments.ts';
import type { Log } from './changes.ts';
import type { MemoryPlans } from './plans.ts';

interface Held {
  readonly project: Omit<Project, 'undo' | 'redo'>;
  readonly versions: readonly Version[];
}

/** The projects by id, in the order of their making. */
export type Shelf = Map<string, Held>;

interface Parts extends Surroundings {
  readonly shelf: Shelf;
  readonly log: Log;
  readonly attachments: MemoryAttachments;
  readonly plans: MemoryPlans;
}

export const memoryProjects = ({ shelf, log, attachments, plans, clock, dice }: Parts): Projects => {
  const open = (id: string): Opened | undefined => {
    const held = shelf.get(id);
    return held && openedOf(held);
  };

  const make = (name: string, versions: readonly Version[], current: number): Held => {
    const held = { project: { id: freshId(dice), name, created_ms: clock(), current }, versions };
    shelf.set(held.project.id, held);
    return held;
  };

  const first = (file: string, given: By): Version => ({
    number: 1,
    saved_ms: clock(),
    file,
    ...whose(given),
  });

  const created = (held: Held, given: By): Opened => {
    const { id, current } = held.project;
    log.tell({ project: id, kind: 'created', current, ...whose(given) });
    return openedOf(held);
  };

  const turn = (id: string, given: By, { lies, kind, turned }: Turn): Project | undefined => {
    const held = shelf.get(id);
    if (!held || (lies === 'deleted') !== (held.project.deleted_ms !== undefined)) return undefined;
    const project = turned(held.project);
    shelf.set(id, { ...held, project });
    log.tell({ project: id, kind, current: project.current, ...whose(given) });
    return openedOf({ ...held, project }).project;
  };

  const edit = (id: string, from: number, work: (held: Held) => Edit): Edit => {
    const held = shelf.get(id);
    if (!held || held.project.deleted_ms !== undefined) return { kind: 'missing' };
    return held.project.current === from ? work(held) : { kind: 'stale', opened: openedOf(held) };
  };

  const stand = (held: Held, current: number, kind: 'saved' | 'undone' | 'redone', given: By): Edit => {
    const { id } = held.project;
    const next = { ...held, project: { ...held.project, current } };
    shelf.set(id, next);
    log.tell({ project: id, kind, current, ...whose(given) });
    return { kind: 'done', opened: openedOf(next) };
  };

  const step = (id: string, given: By & { from: number }, way: 'undo' | 'redo'): Edit =>
    edit(id, given.from, (held) => {
      const target = openedOf(held).project[way];
      if (target === undefined) return { kind: 'nothing' };
      return stand(held, target, way === 'undo' ? 'undone' : 'redone', given);
    });

  return {
    open,
    find: (id) => open(id)?.project,
    list: (which) =>
      [...shelf.values()]
        .filter(({ project }) => (project.deleted_ms === undefined) === (which === 'kept'))
        .map((held) => openedOf(held).project)
        .toReversed(),
    versions: (id) => (shelf.get(id)?.versions ?? []).map(lineOf).toReversed(),
    version: (id, number) => shelf.get(id)?.versions.find((version) => version.number === number),
    create: (given) => created(make(given.name, [first(given.file, given)], 1), given),
    copy: (id, given) => {
      const source = open(id);
      if (!source) return undefined;
      const held = make(given.name, [first(source.version.file, given)], 1);
      attachments.copyAll(id, held.project.id);
      return created(held, given);
    },
    adopt: (file, given = {}) => {
      const held = make(file.name, file.versions, file.current);
      for (const { name, base64 } of file.attachments) {
        attachments.put(held.project.id, name, Buffer.from(base64, 'base64'));
      }
      for (const plan of file.plans ?? []) plans.lay(held.project.id, plan);
      return created(held, given);
    },
    rename: (id, given) =>
      turn(id, given, {
        lies: 'kept',
        kind: 'renamed',
        turned: (project) => ({ ...project, name: given.name }),
      }),
    remove: (id, given = {}) =>
      turn(id, given, {
        lies: 'kept',
        kind: 'deleted',
        turned: (project) => ({ ...project, deleted_ms: clock() }),
      }),
    restore: (id, given = {}) =>
      turn(id, given, {
        lies: 'deleted',
        kind: 'restored',
        turned: undeleted,
      }),
    save: (id, given) =>
      edit(id, given.basedOn, (held) => {
        if (openedOf(held).version.file === given.file) return { kind: 'done', opened: openedOf(held) };
        const number = Math.max(...held.versions.map((version) => version.number)) + 1;
        const note = given.note === undefined ? {} : { note: given.note };
        const version = { ...first(given.file, given), number, parent: given.basedOn, ...note };
        return stand({ ...held, versions: [...held.versions, version] }, number, 'saved', given);
      }),
    undo: (id, given) => step(id, given, 'undo'),
    redo: (id, given) => step(id, given, 'redo'),
  };
};

interface Turn {
  readonly lies: 'kept' | 'deleted';
  readonly kind: 'renamed' | 'deleted' | 'restored';
  readonly turned: (project: Held['project']) => Held['project'];
}

const undeleted = (held: Held['project']): Held['project'] => {
  const { deleted_ms: _, ...project } = held;
  return project;
};

const lineOf = (version: Version): VersionLine => {
  const { file: _, ...line } = version;
  return line;
};

const openedOf = ({ project, versions }: Held): Opened => {
  const version = versions.find(({ number }) => number === project.current);
  if (!version) throw new Error(`project ${project.id} has no version ${project.current}`);
  const made = versions.filter(({ parent }) => parent === project.current);
  return {
    project: {
      ...project,
      ...(version.parent === undefined ? {} : { undo: version.parent }),
      ...(made.length === 0 ? {} : { redo: Math.max(...made.map(({ number }) => number)) }),
    },
    version,
  };
};
