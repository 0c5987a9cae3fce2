/** What a fold carries from entry to entry. */
import type { Memory } from '../../reading/judge/judge.ts';
import type { Row } from '../../reading/row.ts';
import type { DayPhase, DayState } from '../state.ts';

/** A row with its entry, so that it can be corrected. */
export interface FoldedRow extends Row {
  readonly seq: number;
  readonly part: number;
}

/** A girth as it was first read: what its growth counts from. */
export interface Zero {
  readonly value: number;
  /** mm before any growth. */
  readonly base: number;
  /** Percent foreseen up to that reading. */
  readonly grown: number;
}

/** What the fold remembers beside the state; it never leaves the station. */
export interface Inside {
  /** Rows since the vent was shut, thinned where they come by wire; what the plan's limits are held against. */
  readonly rows: readonly FoldedRow[];
  readonly zeros: Readonly<Record<string, Zero>>;
  readonly memory: Readonly<Record<string, Memory>>;
  /** ms that passed since the first entry by the monotonic clock, and what to add to this run's clock to get them. */
  readonly elapsed: number;
  readonly base: number;
  readonly ventShut?: number;
  /** When the last row of a wire was taken, by `elapsed`. */
  readonly wired?: number;
  readonly gaps: number;
  /** Steps as they were begun, oldest first: paper typed in later finds its step here. */
  readonly stepped: readonly { readonly step: string; readonly wall_ms: number }[];
  /** It was bled once already: too much air again is a reason to stop. */
  readonly bled?: true;
  /** Phase before it was broken off, and the window of its hold. */
  readonly before?: DayPhase;
  readonly windowBefore?: number;
  readonly girthSeen_ms?: number;
}

export interface Fold {
  readonly state: DayState;
  readonly inside: Inside;
}
