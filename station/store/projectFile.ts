/** A project out of the store into one file, and back. */
import type { Issue } from '@hoopwright/wire/issue';
import { isWhole } from '@hoopwright/wire/plan';
import { type CarriedPlan, type Opened, PROJECT_FORMAT, type ProjectFile } from '@hoopwright/wire/project';
import type { By } from './by.ts';
import { sha256 } from './hash.ts';
import type { Store } from './store.ts';

/**
 * @param which all versions with all frozen plans, or the one that stands alone (its number stays, its parent does not)
 *   with the plans that were frozen of it
 */
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
    plans: plansOf(store, id).filter(({ version }) => which === 'all' || version === alone.number),
    attachments: store.attachments.list(id, 'kept').map((attachment) => ({
      name: attachment.name,
      sha256: attachment.sha256,
      base64: Buffer.from(store.attachments.bytes(id, attachment.id) ?? []).toString('base64'),
    })),
  };
};

/** Oldest first, as they are laid in again. */
const plansOf = ({ plans }: Store, id: string): CarriedPlan[] =>
  plans
    .list(id)
    .toReversed()
    .flatMap(({ digest, version, frozen_ms, by }) => {
      const frozen = plans.find(id, digest);
      return frozen ? [{ version, frozen_ms, ...(by === undefined ? {} : { by }), frozen }] : [];
    });

export type TakenIn =
  | { readonly kind: 'done'; readonly opened: Opened }
  | { readonly kind: 'refused'; readonly issues: readonly Issue[] };

/** Takes a project file in as a project of its own, if every attachment and every frozen plan still has its digest. */
export const takeIn = (store: Store, file: ProjectFile, given: By = {}): TakenIn => {
  const issues = [...attachmentIssues(file), ...planIssues(file)];
  if (issues.length > 0) return { kind: 'refused', issues };
  return { kind: 'done', opened: store.projects.adopt(file, given) };
};

const attachmentIssues = ({ attachments }: ProjectFile): Issue[] =>
  attachments.flatMap(({ name, sha256: told, base64 }, i): Issue[] => {
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

const planIssues = ({ plans = [] }: ProjectFile): Issue[] =>
  plans.flatMap(({ frozen }, i): Issue[] => {
    if (isWhole(frozen, sha256)) return [];
    const { name, revision, digest } = frozen.frozen;
    return [
      {
        path: `plans[${i}].frozen.frozen.digest`,
        expected: 'the digest of this plan',
        received: digest,
        suggestion: `“${name}”, revision ${revision}, was changed after it was frozen; export the project again`,
      },
    ];
  });
