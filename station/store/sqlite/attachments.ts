/** Attachments and kept bytes in SQLite. The same bytes are kept once, whoever refers to them. */
import type { Attachment } from '@hoopwright/wire/project';
import type { Base, Row } from '../../driver/base.ts';
import { type By, whose } from '../by.ts';
import { freshId, sha256 } from '../hash.ts';
import type { Attachments, Bytes, Surroundings } from '../store.ts';
import type { Journal } from './changes.ts';
import { blob, figure, ifFigure, text } from './row.ts';
import type { ProjectRows } from './rows.ts';

export const openBytes = (base: Base): Bytes => ({
  keep: (bytes) => {
    const digest = sha256(bytes);
    base.change('INSERT INTO bytes VALUES (?, ?) ON CONFLICT DO NOTHING', digest, bytes);
    return digest;
  },
  find: (digest) => {
    const row = base.one('SELECT content FROM bytes WHERE sha256 = ?', digest);
    return row && Uint8Array.from(blob(row.content));
  },
});

/** What others do with attachments inside their own transaction. */
export interface Shelf {
  put(project: string, name: string, bytes: Uint8Array): string;
  copyAll(from: string, to: string): void;
}

interface ShelfParts extends Surroundings {
  readonly base: Base;
  readonly bytes: Bytes;
}

export const openShelf = ({ base, bytes, clock, dice }: ShelfParts): Shelf => {
  const insert = (project: string, name: string, digest: string): string => {
    const id = freshId(dice);
    base.change('INSERT INTO attachment VALUES (?, ?, ?, ?, ?, NULL)', id, project, name, digest, clock());
    return id;
  };
  return {
    put: (project, name, content) => insert(project, name, bytes.keep(content)),
    copyAll: (from, to) => {
      const sql =
        'SELECT name, sha256 FROM attachment WHERE project = ? AND deleted_ms IS NULL ORDER BY rowid';
      for (const row of base.all(sql, from)) insert(to, text(row.name), text(row.sha256));
    },
  };
};

interface Parts {
  readonly base: Base;
  readonly journal: Journal;
  readonly rows: ProjectRows;
  readonly shelf: Shelf;
  readonly bytes: Bytes;
  readonly clock: () => number;
}

const ATTACHMENT = `SELECT a.*, length(b.content) AS bytes FROM attachment a JOIN bytes b ON b.sha256 = a.sha256
  WHERE a.project = ?`;

export const openAttachments = ({ base, journal, rows, shelf, bytes, clock }: Parts): Attachments => {
  const find = (project: string, id: string): Attachment | undefined => {
    const row = base.one(`${ATTACHMENT} AND a.id = ?`, project, id);
    return row && attachmentOf(row);
  };
  const kept = (project: string) => {
    const found = rows.find(project);
    return found?.deleted_ms === undefined ? found : undefined;
  };
  const lay = (project: string, id: string, deleted_ms: number | null, given: By): Attachment | undefined =>
    journal.commit(() => {
      const [owner, attachment] = [kept(project), find(project, id)];
      if (!owner || !attachment) return undefined;
      if ((attachment.deleted_ms === undefined) === (deleted_ms === null)) return undefined;
      base.change('UPDATE attachment SET deleted_ms = ? WHERE id = ?', deleted_ms, id);
      const kind = deleted_ms === null ? 'attached' : 'detached';
      journal.note({ project, kind, current: owner.current, ...whose(given) });
      return find(project, id);
    });

  return {
    list: (project, which) => {
      const where = which === 'kept' ? 'deleted_ms IS NULL' : 'deleted_ms IS NOT NULL';
      return base.all(`${ATTACHMENT} AND ${where} ORDER BY a.rowid`, project).map(attachmentOf);
    },
    add: (project, given) =>
      journal.commit(() => {
        const owner = kept(project);
        if (!owner) return undefined;
        const id = shelf.put(project, given.name, given.bytes);
        journal.note({ project, kind: 'attached', current: owner.current, ...whose(given) });
        return find(project, id);
      }),
    bytes: (project, id) => {
      const attachment = find(project, id);
      return attachment && bytes.find(attachment.sha256);
    },
    remove: (project, id, given = {}) => lay(project, id, clock(), given),
    restore: (project, id, given = {}) => lay(project, id, null, given),
  };
};

const attachmentOf = (row: Row): Attachment => ({
  id: text(row.id),
  name: text(row.name),
  bytes: figure(row.bytes),
  sha256: text(row.sha256),
  added_ms: figure(row.added_ms),
  ...ifFigure('deleted_ms', row.deleted_ms),
});
