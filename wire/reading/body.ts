/** Bodies of a record's entries, as a day of testing writes them. Whole sentences are made by `report`, not kept here. */
import type { Json } from '../record/canonical.ts';
import type { WatchedLimit } from '../plan/plan.ts';

/** Where a reading came from. */
export type How = 'by hand' | 'typed in from paper' | 'by wire' | 'rig';

export type RowBody = {
  readonly values: { readonly [channel: string]: number };
  readonly step: string;
  readonly how: How;
  readonly by?: string;
};

export type StepBody = { readonly step: string; readonly kind: string; readonly pressure_bar: number };

export const DECISIONS = [
  'vent shut',
  'go on',
  'hold ended',
  'bleed again',
  'stop and release',
  'confirm step',
  'set aside',
  'take back',
  'acknowledge',
  'accept source',
  'sound armed',
  'hand over',
  'new revision',
  'end',
] as const;
export type Decision = (typeof DECISIONS)[number];

export type DecisionBody = {
  readonly decision: Decision;
  readonly step: string;
  readonly by: string;
  readonly why?: string;
};

/** A limit of the plan was crossed. */
export type CrossingBody = {
  readonly state: 'stop and release' | 'bleed again';
  readonly limit: WatchedLimit;
  readonly value: number;
  readonly allowed: number;
  readonly channels: readonly string[];
  readonly step: string;
  readonly says: string;
};

export const ENDS = ['done', 'broken off', 'leaked', 'burst'] as const;
export type EndName = (typeof ENDS)[number];
export type EndBody = {
  readonly end: EndName;
  readonly why: string;
  readonly step: string;
  /** A rehearsal says at its end what was hidden. */
  readonly hidden?: { readonly [key: string]: Json };
};
