/**
 * What crosses between the server and the crew's screens. The state is a fold over the record (fold.ts); the server folds,
 * the pages show. Ages are told from `now_ms`, the clock of the day, not from a page's own clock; a rehearsal's day runs
 * `speed` times faster. A page that has had no tick for 2 s has lost the link: then every number is struck out.
 *
 * GET  /api/days                      DayLine[]: the days of this laptop, newest first
 * POST /api/days                      Begin -> 201 DayLine: a test or a rehearsal from a frozen plan (laptop only)
 * GET  /api/days/:record              Snapshot: the state now, the trace so far, the role of whoever asks
 * GET  /api/days/:record/at?ms=       Snapshot as it stood (replay)
 * GET  /api/days/:record/tank         text of the tank file that the plan was made from, so that the tank can be drawn
 * GET  /api/days/:record/stream?since=SEQ   event stream: `now` events, each a Tick. The first one carries the whole
 *                                     state and the trace since entry SEQ; `gone` when the record is closed
 * POST /api/days/:record/orders       Order -> { seq }; 409 where it does not fit the state, 403 where the role may not
 * POST /api/days/:record/photos?by=&place=   bytes as they are, under their image type -> { sha256, seq }
 * GET  /api/days/:record/photos/:sha256      the same bytes; ?location=removed: a copy that does not say where it was taken
 * GET  /api/days/:record/export?as=csv|ndjson|record&decimal=,   a file, during and after; `record` is for `record verify`
 * GET  /api/days/:record/links        DayLink[] (laptop only, as the next two)
 * POST /api/days/:record/links        { role, name } -> 201 { link, links }: the address to hand over, shown once
 * POST /api/days/:record/links/:id/revoke    {} -> DayLink
 * POST /api/days/:record/readings/:source    NDJSON, by a source's own token (Authorization: Bearer) -> { taken, bad, why? }
 * POST /api/days/:record/faults       { fault: "leak" }: a fault of a rehearsal, now (laptop only)
 *
 * A link is ADDRESS/day/RECORD#SECRET. The page posts the secret to /api/entrance, as it does for every other link.
 *
 * The laptop's own page may open every role's screen. It directs until the role is handed over ("hand over", `to` the name
 * of a link); from then on its director's orders are refused, until it takes the role back: "hand over" from the laptop
 * with `to` its own `by`. A director's link acts as a note taker until the role is handed to it.
 */
import type { DayRole } from './order.ts';
import type { DayPhase, DayState } from './state.ts';
import type { Channel } from '../reading/channel.ts';
import type { SourceSetUp } from '../reading/wire/source.ts';
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
  readonly role: DayRole | 'source';
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
  /** Sources by wire, of a test only; a rehearsal brings its own. */
  readonly sources?: readonly SourceSetUp[];
  /** Channels that differ from the plan's, or that it has not: noise, range, calibration, age limit. By name. */
  readonly channels?: readonly Channel[];
  /** A second folder, such as a stick: the record is written there too. */
  readonly mirror?: string;
  /** A rehearsal only. */
  readonly rehearsal?: {
    readonly seed: number;
    /** 1 to 200 times real time. */
    readonly speed: number;
    /** "leak@600" and the like. */
    readonly faults: readonly string[];
    /** `by hand`: the crew reads the simulated instruments and types; `by wires`: they come in by themselves. */
    readonly readings: 'by hand' | 'by wires';
    /** `as left`: it was stretched by the last day of the project, test or rehearsal; the same seed is the same steel. */
    readonly tank?: 'as welded' | 'as left';
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
  /** The day's clock now, so that a page can tell ages whatever its own clock says. */
  readonly now_ms: number;
  /** Times real time that the day runs: 1 but for rehearsals. */
  readonly speed: number;
  /** It takes entries now, in this program. */
  readonly live: boolean;
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
  /** New points at the end of the trace: one for each tick in which something was read. */
  readonly more: Trace;
  readonly shows?: Readonly<Record<string, number>>;
}
