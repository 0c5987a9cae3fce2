/** A frozen plan: name, revision, date and a digest over all of it. Test day runs nothing else. */
import { type Issue, shown, WHOLE_FILE } from '../issue/issue.ts';
import { readJson } from '../issue/jsonText.ts';
import { canonical } from '../record/canonical.ts';
import { type Plan, PLAN_FORMAT } from './plan.ts';
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

/** A frozen plan as a list shows it, and as its state is judged from. */
export interface PlanLine extends Seal {
  readonly digest: string;
  /** Digests of the tank file and of the coupon files, and version of the program it was made from. */
  readonly tank: string;
  /** Undefined: no coupon file was used. */
  readonly evidence?: string;
  readonly program: string;
  /** Version of the project that stood when it was frozen. */
  readonly version: number;
  /** ms since 1970-01-01 UTC. */
  readonly frozen_ms: number;
  /** Window or person that froze it. */
  readonly by?: string;
}

export function freeze(plan: Plan, { name, revision, date }: Seal, hash: TextHash): FrozenPlan {
  return { plan, frozen: { name, revision, date, digest: digestOf(plan, { name, revision, date }, hash) } };
}

/** False where a single character of the plan or its seal was changed since. */
export const isWhole = ({ plan, frozen }: FrozenPlan, hash: TextHash): boolean =>
  digestOf(plan, frozen, hash) === frozen.digest;

const digestOf = (plan: Plan, { name, revision, date }: Seal, hash: TextHash): string =>
  hash(canonical({ plan, name, revision, date }));

/** Why a plan no longer belongs to what stands now. */
export type Outdated = 'tank changed' | 'evidence changed' | 'program changed';

/** Digests of tank file and coupon files, and version of the program. */
export type MadeFrom = Pick<PlanLine, 'tank' | 'evidence' | 'program'>;

export const madeFrom = ({ tank, forecast }: Plan): MadeFrom => ({
  tank: tank.digest,
  ...(tank.evidence === undefined ? {} : { evidence: tank.evidence }),
  program: forecast.program,
});

/** @param now what a plan made now would be made from */
export const outdated = (plan: Plan, now: MadeFrom): Outdated | undefined => outgrown(madeFrom(plan), now);

/** As `outdated`, for a line of a list. */
export function outgrown(then: MadeFrom, now: MadeFrom): Outdated | undefined {
  if (then.tank !== now.tank) return 'tank changed';
  if (then.evidence !== now.evidence) return 'evidence changed';
  return then.program === now.program ? undefined : 'program changed';
}

export type FrozenRead =
  | { readonly ok: true; readonly frozen: FrozenPlan }
  | { readonly ok: false; readonly issues: readonly Issue[] };

/** Reads a frozen plan back. What is not whole, character for character, is refused: its digest says so. */
export function readFrozen(text: string, hash: TextHash): FrozenRead {
  const json = readJson(text);
  if (!json.ok) return json;
  const { value } = json;
  if (!looksFrozen(value))
    return refused(WHOLE_FILE, 'a frozen plan, as --freeze with --json writes it', shown(value));
  const { plan, frozen } = value;
  const digest = digestOf(plan, frozen, hash);
  if (digest !== frozen.digest)
    return refused(
      'frozen.digest',
      `the digest of this plan, ${digest}`,
      frozen.digest,
      'the plan was changed after it was frozen; freeze it again under a new revision',
    );
  return { ok: true, frozen: { plan, frozen } };
}

/** The format, the seal and what a list shows; that nothing within was changed is for the digest to say. */
export function looksFrozen(value: unknown): value is FrozenPlan {
  if (!isRecord(value) || !isRecord(value['plan']) || !isRecord(value['frozen'])) return false;
  const { frozen, plan } = value;
  const texts = ['name', 'revision', 'date', 'digest'].map((key) => frozen[key]);
  const { tank, forecast } = plan;
  if (!isRecord(tank) || !isRecord(forecast)) return false;
  return (
    plan['hoopwrightPlan'] === PLAN_FORMAT &&
    [...texts, tank['digest'], forecast['program']].every((text) => typeof text === 'string')
  );
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const refused = (path: string, expected: string, received: string, suggestion?: string): FrozenRead => ({
  ok: false,
  issues: [{ path, expected, received, ...(suggestion === undefined ? {} : { suggestion }) }],
});
