/** The life of projects in SQLite: made, copied, renamed, deleted and brought back. */
import type { Opened, Project, Version } from '@hoopwright/wire/project';
import type { Base, SqlValue } from '../../driver/base.ts';
import { type By, whose } from '../by.ts';
import { freshId } from '../hash.ts';
import type { ProjectLife, Surroundings } from '../store.ts';
import type { Shelf } from './attachments.ts';
import type { Journal } from './changes.ts';
import { layPlan } from './plans.ts';
import { orNull } from './row.ts';
import type { ProjectRows } from './rows.ts';

interface Parts extends Surroundings {
  readonly base: Base;
  readonly journal: Journal;
  readonly rows: ProjectRows;
  readonly shelf: Shelf;
}

interface Seed {
  readonly name: string;
  readonly versions: readonly Version[];
  readonly current: number;
  /** Puts attachments and plans into the project that was just made. */
  readonly attach: (id: string) => void;
}

interface Turn {
  /** Where the project must lie for this. */
  readonly lies: 'kept' | 'deleted';
  readonly kind: 'renamed' | 'deleted' | 'restored';
  readonly sql: string;
  readonly value: SqlValue;
}

export const openLife = ({ base, journal, rows, shelf, clock, dice }: Parts): ProjectLife => {
  const make = ({ name, versions, current, attach }: Seed, given: By): Opened =>
    journal.commit(() => {
      const id = freshId(dice);
      base.change('INSERT INTO project VALUES (?, ?, ?, NULL, ?)', id, name, clock(), current);
      for (const one of versions) {
        const values = [
          id,
          one.number,
          one.parent ?? null,
          one.saved_ms,
          orNull(one.by),
          orNull(one.note),
          one.file,
        ];
        base.change('INSERT INTO version VALUES (?, ?, ?, ?, ?, ?, ?)', ...values);
      }
      attach(id);
      journal.note({ project: id, kind: 'created', current, ...whose(given) });
      return rows.opened(id);
    });

  const first = (file: string, given: By): Pick<Seed, 'versions' | 'current'> => ({
    versions: [{ number: 1, saved_ms: clock(), file, ...whose(given) }],
    current: 1,
  });

  const turn = (id: string, { lies, kind, sql, value }: Turn, given: By): Project | undefined =>
    journal.commit(() => {
      const project = rows.find(id);
      if (!project || (lies === 'deleted') !== (project.deleted_ms !== undefined)) return undefined;
      base.change(sql, value, id);
      journal.note({ project: id, kind, current: project.current, ...whose(given) });
      return rows.find(id);
    });

  return {
    create: (given) => make({ name: given.name, ...first(given.file, given), attach: () => {} }, given),
    copy: (id, given) => {
      const source = rows.open(id);
      if (!source) return undefined;
      const attach = (copy: string): void => shelf.copyAll(id, copy);
      return make({ name: given.name, ...first(source.version.file, given), attach }, given);
    },
    adopt: ({ name, versions, current, attachments, plans = [] }, given = {}) => {
      const attach = (id: string): void => {
        for (const { name: called, base64 } of attachments)
          shelf.put(id, called, Buffer.from(base64, 'base64'));
        for (const plan of plans) layPlan(base, id, plan);
      };
      return make({ name, versions, current, attach }, given);
    },
    rename: (id, given) => turn(id, { lies: 'kept', kind: 'renamed', sql: RENAME, value: given.name }, given),
    remove: (id, given = {}) =>
      turn(id, { lies: 'kept', kind: 'deleted', sql: DELETE, value: clock() }, given),
    restore: (id, given = {}) =>
      turn(id, { lies: 'deleted', kind: 'restored', sql: DELETE, value: null }, given),
  };
};

const RENAME = 'UPDATE project SET name = ? WHERE id = ?';
const DELETE = 'UPDATE project SET deleted_ms = ? WHERE id = ?';
