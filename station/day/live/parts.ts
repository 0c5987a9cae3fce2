/** What a running day is made of, and what it answers. */
import type { Fold } from '@hoopwright/wire/day';
import type { Issue } from '@hoopwright/wire/issue';
import type { About, Body } from '@hoopwright/wire/record';
import type { Later, Source } from '../../instrument/source.ts';
import type { Records } from '../../store/store.ts';
import type { Laptop } from '../surroundings.ts';
import type { DayClock } from './clock.ts';
import type { Mirror } from './mirror.ts';

/** Foresees and advises: told of every new state, it writes `forecast` and `advice` entries when it has something to say. */
export interface Adviser {
  heard(now: Fold, write: (kind: 'forecast' | 'advice', body: Body) => void): void;
  close(): void;
}

export interface LiveParts {
  readonly records: Records;
  readonly about: About;
  readonly clock: DayClock;
  readonly later: Later;
  readonly laptop: Laptop;
  readonly sources: readonly Source[];
  readonly mirror?: Mirror;
  readonly adviser?: Adviser;
  /** What the simulated instruments show, in a rehearsal by hand. */
  readonly shows?: () => Readonly<Record<string, number>>;
  /** Told of mistakes of the program. */
  readonly log: (error: unknown) => void;
}

export type Ordered =
  | { readonly kind: 'done'; readonly seq: number }
  /** Kept in memory; it will be written when the disk has room again. */
  | { readonly kind: 'waits'; readonly seq: number }
  | { readonly kind: 'refused'; readonly issue: Issue };

/** While a rehearsed restart lasts. */
export const STARTED_ANEW: Issue = {
  path: 'the server',
  expected: 'a program that runs',
  received: 'one that is being started anew',
  suggestion: 'hold the pump and wait; then read a gauge and confirm the step',
};

/** ms between two looks at disk, power, mirror and silent channels. */
export const ROUND_MS = 1000;
/** An order is answered after this at the latest, durable or not, ms. */
export const LATE_MS = 1500;

export const ENDING: Issue = {
  path: 'order',
  expected: 'a day that goes on',
  received: 'one that has ended',
};
