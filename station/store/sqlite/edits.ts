/** Save, undo and redo in SQLite: each refused when another version stands than the window shows. */
import type { Project } from '@hoopwright/wire/project';
import type { Base } from '../../driver/base.ts';
import { type By, whose } from '../by.ts';
import type { Edit, ProjectEdits } from '../store.ts';
import type { Journal } from './changes.ts';
import { figure, orNull } from './row.ts';
import type { ProjectRows } from './rows.ts';

interface Parts {
  readonly base: Base;
  readonly journal: Journal;
  readonly rows: ProjectRows;
  readonly clock: () => number;
}

export const openEdits = ({ base, journal, rows, clock }: Parts): ProjectEdits => {
  const edit = (id: string, from: number, work: (project: Project) => Edit): Edit =>
    journal.commit(() => {
      const project = rows.find(id);
      if (!project || project.deleted_ms !== undefined) return { kind: 'missing' };
      return project.current === from ? work(project) : { kind: 'stale', opened: rows.opened(id) };
    });

  const stand = (id: string, current: number, kind: 'saved' | 'undone' | 'redone', given: By): Edit => {
    base.change('UPDATE project SET current = ? WHERE id = ?', current, id);
    journal.note({ project: id, kind, current, ...whose(given) });
    return { kind: 'done', opened: rows.opened(id) };
  };

  const last = (id: string): number =>
    figure(base.one('SELECT max(number) AS last FROM version WHERE project = ?', id)?.last ?? 0);

  return {
    save: (id, given) =>
      edit(id, given.basedOn, ({ current }) => {
        if (rows.version(id, current)?.file === given.file) return { kind: 'done', opened: rows.opened(id) };
        const number = last(id) + 1;
        const values = [id, number, current, clock(), orNull(given.by), orNull(given.note), given.file];
        base.change('INSERT INTO version VALUES (?, ?, ?, ?, ?, ?, ?)', ...values);
        return stand(id, number, 'saved', given);
      }),
    undo: (id, given) =>
      edit(id, given.from, ({ undo }) =>
        undo === undefined ? { kind: 'nothing' } : stand(id, undo, 'undone', given),
      ),
    redo: (id, given) =>
      edit(id, given.from, ({ redo }) =>
        redo === undefined ? { kind: 'nothing' } : stand(id, redo, 'redone', given),
      ),
  };
};
