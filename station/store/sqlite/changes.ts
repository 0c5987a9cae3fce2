/** What happened to the projects, in order; each change is written with what it tells of, and told after the commit. */
import type { Change } from '@hoopwright/wire/project';
import type { Base, Row } from '../../driver/base.ts';
import type { Changes } from '../store.ts';
import { figure, ifText, orNull, text } from './row.ts';

export interface Journal extends Changes {
  /** Runs `work` in one transaction, then tells the changes that it noted. */
  commit<T>(work: () => T): T;
  /** Notes a change; only within `commit`. */
  note(change: Omit<Change, 'id' | 'wall_ms'>): void;
}

export const openJournal = (base: Base, clock: () => number): Journal => {
  const listeners = new Set<(change: Change) => void>();
  const since = (id: number): Change[] =>
    base.all('SELECT * FROM change WHERE id > ? ORDER BY id', id).map(changeOf);
  const last = (): number => figure(base.one('SELECT coalesce(max(id), 0) AS id FROM change')?.id ?? 0);

  return {
    last,
    since,
    watch: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    note: ({ project, kind, current, by }) => {
      const values = [project, kind, current, orNull(by), clock()];
      base.change(
        'INSERT INTO change (project, kind, current, changed_by, wall_ms) VALUES (?, ?, ?, ?, ?)',
        ...values,
      );
    },
    commit: (work) => {
      const { result, noted } = base.transaction(() => {
        const before = last();
        return { result: work(), noted: since(before) };
      });
      for (const change of noted) for (const listener of listeners) listener(change);
      return result;
    },
  };
};

const changeOf = (row: Row): Change => ({
  id: figure(row.id),
  project: text(row.project),
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- only `note` writes it
  kind: text(row.kind) as Change['kind'],
  current: figure(row.current),
  ...ifText('by', row.changed_by),
  wall_ms: figure(row.wall_ms),
});
