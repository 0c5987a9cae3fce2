/** Projects and versions as they are read from the base. */
import type { Opened, Project, Version, VersionLine } from '@hoopwright/wire/project';
import type { Base, Row } from '../../driver/base.ts';
import type { ProjectReads } from '../store.ts';
import { figure, ifFigure, ifText, text } from './row.ts';

export interface ProjectRows extends ProjectReads {
  /** As `open`, for a project that must be there. */
  opened(id: string): Opened;
}

const PROJECT = `SELECT p.*,
  (SELECT parent FROM version WHERE project = p.id AND number = p.current) AS undo,
  (SELECT max(number) FROM version WHERE project = p.id AND parent = p.current) AS redo
  FROM project p`;

export const openRows = (base: Base): ProjectRows => {
  const find = (id: string): Project | undefined => {
    const row = base.one(`${PROJECT} WHERE id = ?`, id);
    return row && projectOf(row);
  };
  const version = (id: string, number: number): Version | undefined => {
    const row = base.one('SELECT * FROM version WHERE project = ? AND number = ?', id, number);
    return row && { ...versionLineOf(row), file: text(row.file) };
  };
  const open = (id: string): Opened | undefined => {
    const project = find(id);
    const standing = project && version(id, project.current);
    return project && standing && { project, version: standing };
  };
  const LINES =
    'SELECT number, parent, saved_ms, saved_by, note FROM version WHERE project = ? ORDER BY number DESC';

  return {
    find,
    version,
    open,
    opened: (id) => {
      const both = open(id);
      if (both) return both;
      throw new Error(`project ${id} or the version that stands is not in the base`);
    },
    list: (which) => {
      const where = which === 'kept' ? 'deleted_ms IS NULL' : 'deleted_ms IS NOT NULL';
      return base.all(`${PROJECT} WHERE ${where} ORDER BY p.rowid DESC`).map(projectOf);
    },
    versions: (id) => base.all(LINES, id).map(versionLineOf),
  };
};

const projectOf = (row: Row): Project => ({
  id: text(row.id),
  name: text(row.name),
  created_ms: figure(row.created_ms),
  ...ifFigure('deleted_ms', row.deleted_ms),
  current: figure(row.current),
  ...ifFigure('undo', row.undo),
  ...ifFigure('redo', row.redo),
});

const versionLineOf = (row: Row): VersionLine => ({
  number: figure(row.number),
  ...ifFigure('parent', row.parent),
  saved_ms: figure(row.saved_ms),
  ...ifText('by', row.saved_by),
  ...ifText('note', row.note),
});
