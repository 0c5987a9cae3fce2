/** Attachments and kept bytes in memory. */
import type { Attachment } from '@hoopwright/wire/project';
import { type By, whose } from '../by.ts';
import { freshId, sha256 } from '../hash.ts';
import type { Attachments, Bytes, Surroundings } from '../store.ts';
import type { Log } from './changes.ts';

export const memoryBytes = (): Bytes => {
  const kept = new Map<string, Uint8Array>();
  return {
    keep: (bytes) => {
      const digest = sha256(bytes);
      kept.set(digest, Uint8Array.from(bytes));
      return digest;
    },
    find: (digest) => {
      const bytes = kept.get(digest);
      return bytes && Uint8Array.from(bytes);
    },
  };
};

export interface MemoryAttachments {
  readonly attachments: Attachments;
  put(project: string, name: string, bytes: Uint8Array): Attachment;
  copyAll(from: string, to: string): void;
}

interface Parts extends Surroundings {
  readonly bytes: Bytes;
  readonly log: Log;
  /** Number of the version that stands, for a project that is kept. */
  readonly standing: (project: string) => number | undefined;
}

export const memoryAttachments = ({ bytes, log, standing, clock, dice }: Parts): MemoryAttachments => {
  const shelf = new Map<string, Map<string, Attachment>>();
  const of = (project: string): Map<string, Attachment> => shelf.get(project) ?? new Map();
  const lay = (project: string, attachment: Attachment): Attachment => {
    shelf.set(project, of(project).set(attachment.id, attachment));
    return attachment;
  };
  const put = (project: string, name: string, content: Uint8Array): Attachment => {
    const digest = bytes.keep(content);
    return lay(project, {
      id: freshId(dice),
      name,
      bytes: content.byteLength,
      sha256: digest,
      added_ms: clock(),
    });
  };
  const told = (
    project: string,
    kind: 'attached' | 'detached',
    given: By,
    work: () => Attachment | undefined,
  ) => {
    const current = standing(project);
    const done = current === undefined ? undefined : work();
    if (done && current !== undefined) log.tell({ project, kind, current, ...whose(given) });
    return done;
  };

  const attachments: Attachments = {
    list: (project, which) =>
      [...of(project).values()].filter(({ deleted_ms }) => (deleted_ms === undefined) === (which === 'kept')),
    add: (project, given) => told(project, 'attached', given, () => put(project, given.name, given.bytes)),
    bytes: (project, id) => {
      const attachment = of(project).get(id);
      return attachment && bytes.find(attachment.sha256);
    },
    remove: (project, id, given = {}) =>
      told(project, 'detached', given, () => {
        const attachment = of(project).get(id);
        if (!attachment || attachment.deleted_ms !== undefined) return undefined;
        return lay(project, { ...attachment, deleted_ms: clock() });
      }),
    restore: (project, id, given = {}) =>
      told(project, 'attached', given, () => {
        const found = of(project).get(id);
        if (found?.deleted_ms === undefined) return undefined;
        const { deleted_ms: _, ...attachment } = found;
        return lay(project, attachment);
      }),
  };
  return {
    attachments,
    put,
    copyAll: (from, to) => {
      for (const attachment of attachments.list(from, 'kept')) {
        lay(to, { ...attachment, id: freshId(dice), added_ms: clock() });
      }
    },
  };
};
