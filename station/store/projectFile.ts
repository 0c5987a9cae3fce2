/** A project out of the store into one file, and back. */
import type { Issue } from '@hoopwright/wire/issue';
import { type Opened, PROJECT_FORMAT, type ProjectFile } from '@hoopwright/wire/project';
import type { By } from './by.ts';
import { sha256 } from './hash.ts';
import type { Store } from './store.ts';

/** @param which all versions, or the one that stands alone (its number stays, its parent does not) */
export const projectFileOf = (
  store: Store,
  id: string,
  which: 'all' | 'current',
): ProjectFile | undefined => {
  const opened = store.projects.open(id);
  if (!opened) return undefined;
  const { parent: _, ...alone } = opened.version;
  const all = () =>
    store.projects
      .versions(id)
      .toReversed()
      .flatMap(({ number }) => store.projects.version(id, number) ?? []);
  return {
    format: PROJECT_FORMAT,
    version: 1,
    name: opened.project.name,
    current: opened.project.current,
    versions: which === 'all' ? all() : [alone],
    attachments: store.attachments.list(id, 'kept').map((attachment) => ({
      name: attachment.name,
      sha256: attachment.sha256,
      base64: Buffer.from(store.attachments.bytes(id, attachment.id) ?? []).toString('base64'),
    })),
  };
};

export type TakenIn =
  | { readonly kind: 'done'; readonly opened: Opened }
  | { readonly kind: 'refused'; readonly issues: readonly Issue[] };

/** Takes a project file in as a project of its own, if every attachment still has its digest. */
export const takeIn = (store: Store, file: ProjectFile, given: By = {}): TakenIn => {
  const issues = file.attachments.flatMap(({ name, sha256: told, base64 }, i): Issue[] => {
    const found = sha256(Buffer.from(base64, 'base64'));
    if (found === told) return [];
    const suggestion = `"${name}" was changed on the way; export the project again`;
    return [
      {
        path: `attachments[${i}].sha256`,
        expected: `the digest of the bytes, ${found}`,
        received: told,
        suggestion,
      },
    ];
  });
  if (issues.length > 0) return { kind: 'refused', issues };
  return { kind: 'done', opened: store.projects.adopt(file, given) };
};
