/** A frozen plan: name, revision, date and a digest over all of it. Test day runs nothing else. */
import { canonical } from '../record/canonical.ts';
import type { Plan } from './plan.ts';
import type { TextHash } from './planFor.ts';

export interface Seal {
  readonly name: string;
  /** "A", "B", "C2": as the team counts. */
  readonly revision: string;
  /** Day of freezing, ISO 8601, e.g. 2026-10-03. */
  readonly date: string;
}

export interface FrozenPlan {
  readonly plan: Plan;
  readonly frozen: Seal & {
    /** SHA-256 over the canonical JSON of plan, name, revision and date; 64 hex digits. */
    readonly digest: string;
  };
}

export function freeze(plan: Plan, { name, revision, date }: Seal, hash: TextHash): FrozenPlan {
  return { plan, frozen: { name, revision, date, digest: digestOf(plan, { name, revision, date }, hash) } };
}

/** False where a single character of the plan or its seal was changed since. */
export const isWhole = ({ plan, frozen }: FrozenPlan, hash: TextHash): boolean => {
  const { name, revision, date } = frozen;
  return digestOf(plan, { name, revision, date }, hash) === frozen.digest;
};

const digestOf = (plan: Plan, seal: Seal, hash: TextHash): string => hash(canonical({ plan, ...seal }));

/** Why a plan no longer belongs to what stands now. */
export type Outdated = 'tank changed' | 'program changed';

/** @param now digest of the tank file as it stands, and the version of the program */
export function outdated(
  { tank, forecast }: Plan,
  now: { readonly tank: string; readonly program: string },
): Outdated | undefined {
  if (tank.digest !== now.tank) return 'tank changed';
  return forecast.program === now.program ? undefined : 'program changed';
}
