/**
 * Bodies of the entries of a day beside those of readings, steps, decisions and crossings (see wire/reading).
 * `forecast`: { growth, litres, … } as whoever foresees writes it; the fold keeps the last one as it is. { ready } while
 * the foreseeing itself is made ready (wire/advice/readyBody.ts).
 * `advice` with a `limit` is a crossing of the plan's own limits; without one it is an AdviceBody.
 */
import type { Json } from '../record/canonical.ts';
import type { Channel } from '../reading/channel.ts';
import type { SourceSetUp } from '../reading/wire/source.ts';
import type { AdviceState, Follows, Measure, TroubleNow } from './state.ts';

export type StartBody = {
  readonly program: string;
  readonly by?: string;
  readonly rehearsed?: boolean;
  readonly seed?: number;
  /** What was looked at before the test: mains or battery, disk, whether the laptop is kept awake. */
  readonly power?: 'mains' | 'battery' | 'not known';
  readonly free_MB?: number;
  readonly keptAwake?: boolean;
  /** The program was started anew within the record. */
  readonly again?: boolean;
};

export type SetUpBody = {
  readonly channels: readonly Channel[];
  readonly sources?: readonly SourceSetUp[];
  /** State that an earlier day left. */
  readonly follows?: Follows;
  readonly [key: string]: Json | readonly Channel[] | readonly SourceSetUp[] | undefined;
};

export type MeasureBody = Omit<Measure, 'seq'>;

export type PhotoBody = {
  /** SHA-256 of the bytes as the phone sent them. */
  readonly photo: string;
  readonly bytes: number;
  readonly type: string;
  readonly by: string;
  readonly step?: string;
  readonly place?: string;
};

export type TroubleBody = {
  readonly what: TroubleNow['what'];
  readonly says: string;
  /** It has cleared. */
  readonly over?: boolean;
  /** Source that is lost or unproved. */
  readonly source?: string;
};

/** What the rules advise, with the readings behind it. */
export type AdviceBody = {
  readonly state: AdviceState;
  readonly reasons: readonly string[];
  readonly readings: readonly number[];
  readonly explanations?: readonly string[];
  readonly tellApart?: string;
};
