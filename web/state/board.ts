/** The tank on the board: what is drawn, what was saved, what the last forecast said, and where the hand stands. */
import type { Issue } from '@hoopwright/wire/issue';
import type { Opened, Project } from '@hoopwright/wire/project';
import type { Stance } from '@hoopwright/report/drawing';
import { create } from 'zustand';
import type { Cursor, Drawn } from '../work/ask.ts';
import type { FileDraft } from './file/edit.ts';

export interface BoardState {
  readonly project?: Project | undefined;
  /** Number of the version this window stands on. */
  readonly version: number;
  /** Text of that version as it was saved. */
  readonly saved: string;
  readonly draft: FileDraft;
  /** Counts changes of the draft. */
  readonly number: number;
  /** Sentences beside fields whose text cannot be read, by path. */
  readonly faults: Readonly<Record<string, string>>;
  /** What the draft has against it. */
  readonly issues: readonly Issue[];
  /** The last good forecast, and the number of the draft it belongs to. */
  readonly drawn?: Drawn | undefined;
  readonly drawnFor: number;
  readonly stance?: Stance | undefined;
  readonly cursor: Cursor;
  readonly saving: 'saved' | 'unsaved' | 'saving' | 'failed';
  /** Somebody else saved meanwhile: what stands now. */
  readonly newer?: Opened | undefined;
  /** A sentence for the person: what just happened without their doing. */
  readonly told?: string | undefined;
}

export const UNDER: Cursor = { kind: 'stop', stop: 'under' };

export const useBoard = create<BoardState>(() => ({
  version: 0,
  saved: '',
  draft: {},
  number: 0,
  faults: {},
  issues: [],
  drawnFor: -1,
  cursor: UNDER,
  saving: 'saved',
}));

export type ForecastState = 'current' | 'first pass' | 'out of date' | 'none';

/** Whether the figures on the sheet belong to what is written on it. */
export function forecastState({ drawn, drawnFor, number, faults, issues }: BoardState): ForecastState {
  if (drawn === undefined) return 'none';
  if (drawnFor !== number || issues.length > 0 || Object.keys(faults).length > 0) return 'out of date';
  return drawn.fineness === 'exact' ? 'current' : 'first pass';
}
