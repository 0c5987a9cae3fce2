/** A store that forgets: for tests, and for looking without keeping. */
import type { Token } from '@hoopwright/wire/project';
import { freshId, freshSecret, sha256 } from '../hash.ts';
import type { Store, Surroundings, Tokens } from '../store.ts';
import { memoryAttachments, memoryBytes } from './attachments.ts';
import { startLog } from './changes.ts';
import { memoryPlans } from './plans.ts';
import { type Shelf, memoryProjects } from './projects.ts';
import { memoryRecords } from './records.ts';

export const openMemoryStore = (surroundings: Surroundings): Store => {
  const shelf: Shelf = new Map();
  const log = startLog(surroundings.clock);
  const bytes = memoryBytes();
  const standing = (id: string): number | undefined => {
    const project = shelf.get(id)?.project;
    return project?.deleted_ms === undefined ? project?.current : undefined;
  };
  const attachments = memoryAttachments({ bytes, log, standing, ...surroundings });
  const plans = memoryPlans({ log, standing, clock: surroundings.clock });
  return {
    projects: memoryProjects({ shelf, log, attachments, plans, ...surroundings }),
    attachments: attachments.attachments,
    plans: plans.plans,
    records: memoryRecords(surroundings),
    bytes,
    tokens: memoryTokens(surroundings),
    changes: log,
    backup: () => Promise.reject(new Error('a store in memory has no file to copy')),
    close: () => {},
  };
};

const memoryTokens = ({ clock, dice }: Surroundings): Tokens => {
  const shelf = new Map<string, { readonly token: Token; readonly digest: string }>();
  return {
    make: (given) => {
      const [token, secret] = [{ id: freshId(dice), ...given, created_ms: clock() }, freshSecret(dice)];
      shelf.set(token.id, { token, digest: sha256(secret) });
      return { token, secret };
    },
    check: (secret) => {
      const found = [...shelf.values()].find(({ digest }) => digest === sha256(secret));
      return found?.token.revoked_ms === undefined ? found?.token : undefined;
    },
    list: () => [...shelf.values()].map(({ token }) => token).toReversed(),
    revoke: (id) => {
      const held = shelf.get(id);
      if (!held) return undefined;
      const token = { revoked_ms: clock(), ...held.token };
      shelf.set(id, { ...held, token });
      return token;
    },
  };
};
