/**
 * What crosses between the server and the crew's screens.
 *
 * GET  /api/days                      DayLine[]: the days of this laptop, newest first
 * POST /api/days                      Begin -> DayLine: a test or a rehearsal from a frozen plan of a project
 * GET  /api/days/:record              Snapshot: the state now, the trace so far, the role of whoever asks
 * GET  /api/days/:record/at?ms=       Snapshot as it stood (replay)
 * GET  /api/days/:record/tank         text of the tank file that the plan was made from, so that the tank can be drawn
 * GET  /api/days/:record/stream?since=SEQ   event stream: `now` events, each a Tick; `gone` when the record is closed
 * POST /api/days/:record/orders       Order -> { seq }
 * POST /api/days/:record/photos       bytes as they are -> { sha256 }; GET /api/days/:record/photos/:sha256
 * GET  /api/days/:record/export?as=csv|ndjson&decimal=,   a file, during and after
 * GET  /api/days/:record/links        DayLink[]; POST { role, name } -> { link }; POST /links/:id/revoke (laptop only)
 *
 * A link is ADDRESS/day/RECORD#SECRET. The page posts the secret to /api/entrance, as it does for every other link.
 */
import type { DayRole } from './order.ts';
import type { DayPhase, DayState } from './state.ts';
import type { RecordKind } from '../record/entry.ts';

export interface DayLine {
  readonly record: string;
  readonly kind: RecordKind;
  readonly title: string;
  readonly project?: string;
  readonly began_ms: number;
  readonly phase: DayPhase;
  readonly entries: number;
  /** It takes readings now, in this program. */
  readonly live: boolean;
}

/** A link that was made for one of the crew. */
export interface DayLink {
  readonly id: string;
  readonly role: DayRole;
  readonly name: string;
  readonly made_ms: number;
  readonly revoked_ms?: number;
}

export interface Begin {
  readonly project: string;
  /** Digest of a frozen plan of the project. */
  readonly plan: string;
  readonly kind: 'test' | 'rehearsal';
  readonly director: string;
  /** A rehearsal only. */
  readonly rehearsal?: {
    readonly seed: number;
    /** 1 to 200 times real time. */
    readonly speed: number;
    /** "leak@600" and the like. */
    readonly faults: readonly string[];
    /** `by hand`: the crew reads the simulated instruments and types; `by wires`: they come in by themselves. */
    readonly readings: 'by hand' | 'by wires';
  };
}

/** One column of the trace for each channel, and the time axis: seconds since the record began. */
export interface Trace {
  readonly seconds: readonly number[];
  /** Lowest and highest within each interval of the time axis; null where nothing was read. */
  readonly channels: readonly {
    readonly name: string;
    readonly low: readonly (number | null)[];
    readonly high: readonly (number | null)[];
  }[];
}

export interface Snapshot {
  readonly role: DayRole;
  readonly state: DayState;
  readonly trace: Trace;
  /** The server's clock now, so that a page can tell ages whatever its own clock says. */
  readonly now_ms: number;
  /** Name that the link was made for. */
  readonly name?: string;
  /** Asked by the laptop's own page, which may take every role. */
  readonly own?: boolean;
  /** A rehearsal by hand: what the simulated instruments show to whoever looks. */
  readonly shows?: Readonly<Record<string, number>>;
}

/**
 * Sent at most ten times a second, and at least once a second though nothing changed: a page that hears nothing for two
 * seconds takes the link for lost. A page that missed some asks for the snapshot again.
 */
export interface Tick {
  readonly now_ms: number;
  readonly seq: number;
  /** Only what changed since the tick before, by key of the state. */
  readonly changed: Partial<DayState>;
  /** Keys of the state that are no longer there: a hold that ended, causes dealt with. */
  readonly gone?: readonly (keyof DayState)[];
  /** New points at the end of the trace. */
  readonly more: Trace;
  readonly shows?: Readonly<Record<string, number>>;
}
