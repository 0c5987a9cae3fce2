/** The tank file that a day's plan was made from, so that the tank can be drawn. */
import { type FrozenPlan, tankDigest } from '@hoopwright/wire/plan';
import { parseTankFile } from '@hoopwright/wire/tank';
import { sha256 } from '../store/hash.ts';
import type { Store } from '../store/store.ts';

/** Of the project the plan is frozen in; for a record that was brought in, any version here with the plan's own digest. */
export function tankOf(
  { plans, projects }: Pick<Store, 'plans' | 'projects'>,
  frozen: FrozenPlan,
  project?: string,
): string | undefined {
  const line = plans.list(project ?? '').find(({ digest }) => digest === frozen.frozen.digest);
  if (project !== undefined && line !== undefined) return projects.version(project, line.version)?.file;
  for (const { id } of projects.list('kept')) {
    for (const { number } of projects.versions(id)) {
      const file = projects.version(id, number)?.file;
      if (file !== undefined && digestOf(file) === frozen.plan.tank.digest) return file;
    }
  }
  return undefined;
}

function digestOf(file: string): string | undefined {
  const parsed = parseTankFile(file);
  return parsed.ok ? tankDigest(parsed.file, sha256) : undefined;
}
