/**
 * Where a day of testing stands. The state is a fold over the entries of its record and over nothing else, so that the
 * live server, a restart, `hoopwright listen`, every page and a replay all show the same thing.
 * Pressures bar, girths mm, litres L, times ms since 1970-01-01 UTC where the name ends in `_ms`.
 */
import type { FrozenPlan } from '../plan/freeze.ts';
import type { WatchedLimit, StepKind } from '../plan/plan.ts';
import type { About, Body } from '../record/entry.ts';
import type { Gap } from '../record/gap.ts';
import type { Ailed } from '../reading/judge/judge.ts';
import type { Channel } from '../reading/channel.ts';
import type { EndName } from '../reading/body.ts';

export interface DayState {
  readonly about: About;
  /** Number of the last entry, its run and its time. */
  readonly seq: number;
  readonly run: number;
  readonly wall_ms: number;
  /** Head digest in 8 groups, as it stands on the log sheet. */
  readonly head: string;
  /** Heads that were shown to be copied, oldest first: at the start, at each hold, at the end. */
  readonly heads: readonly HeadShown[];
  readonly phase: DayPhase;
  readonly plan?: FrozenPlan;
  readonly step?: StepNow;
  /** Number of the step that the director's "go on" leads to; undefined after the last. After "bleed again": the seating. */
  readonly next?: string;
  readonly hold?: HoldNow;
  /** When the vent was shut: rows count their seconds from here. */
  readonly ventShut_ms?: number;
  readonly channels: readonly ChannelNow[];
  readonly figures: Figures;
  /** Crossed limits of the plan, latched: the first cause first. */
  readonly causes: readonly Cause[];
  readonly advice?: AdviceNow;
  readonly foresight?: ForesightNow;
  /** Until something is foreseen: how far the making ready is. */
  readonly readying?: Readying;
  readonly broken?: BrokenOff;
  readonly gaps: readonly (Gap & { readonly seq: number; readonly wall_ms: number })[];
  readonly troubles: readonly TroubleNow[];
  /** Who holds which role, by the name they gave. */
  readonly crew: {
    readonly director?: string;
    readonly noteTaker?: string;
    readonly pump?: string;
    /** Who directs: "laptop", or the id of the link to which the role was handed over. */
    readonly held: string;
  };
  /** Sound was armed and heard on a screen before the first pressure. */
  readonly soundArmed: boolean;
  readonly measures: readonly Measure[];
  readonly remarks: readonly Remark[];
  /** Rows that people have written, newest first: what can be corrected. The last ones. */
  readonly rows: readonly WrittenRow[];
  /** State that the test before left on this tank. */
  readonly follows?: Follows;
  readonly end?: { readonly name: EndName; readonly why: string; readonly step: string };
}

/**
 * `set up`: nothing read yet. `before`: measuring the empty or full tank at no pressure. `under way`: the vent is shut and
 * a step of the plan runs. `broken off`: the program was started anew, and the director has not confirmed the step.
 * `stopping`: the director has decided to stop and release. `after`: released, measuring. `ended`: nothing more is written.
 */
export const DAY_PHASES = [
  'set up',
  'before',
  'under way',
  'broken off',
  'stopping',
  'after',
  'ended',
] as const;
export type DayPhase = (typeof DAY_PHASES)[number];

export interface StepNow {
  readonly number: string;
  readonly kind: StepKind;
  readonly pressure_bar: number;
  readonly begun_ms: number;
}

/** A hold as it runs: its window begins anew after a break unless readings on both sides carry it. */
export interface HoldNow {
  readonly begun_ms: number;
  /** The director has ended it; what is left is "go on". */
  readonly over?: boolean;
  readonly windowFrom_ms: number;
  /** Growth rate of the girth that matters over the window, %/h, with its 90 % range; undefined: too few readings. */
  readonly rate?: { readonly value: number; readonly low: number; readonly high: number };
}

export interface ChannelNow {
  readonly channel: Channel;
  readonly last?: {
    readonly value: number;
    readonly seq: number;
    /** When it was taken. */
    readonly wall_ms: number;
    readonly how: string;
  };
  /** Older than this many seconds it is struck out. */
  readonly fresh_s: number;
  /** What the readings themselves say against it. */
  readonly ails?: Ailed;
  /** By whom or by what rule it was set aside; its readings are kept and not believed. */
  readonly aside?: { readonly why: string; readonly by: string };
  /** Its source came back unproved and waits for a person. */
  readonly unproved?: string;
}

/** The three numbers of the director's screen, each with its age. */
export interface Figures {
  readonly pressure?: FigureNow;
  /** Growth under pressure of the girth that matters (the one that grows most), percent. */
  readonly growth?: FigureNow & { readonly girth: string };
  readonly litres?: FigureNow;
  /** Highest pressure read so far. */
  readonly highest_bar?: number;
}

export interface FigureNow {
  readonly value: number;
  readonly channel: string;
  readonly wall_ms: number;
  readonly fresh_s: number;
}

/** A limit of the plan that was crossed. It stays until the director has dealt with it. */
export interface Cause {
  readonly seq: number;
  readonly wall_ms: number;
  readonly limit: WatchedLimit;
  readonly state: 'stop and release' | 'bleed again';
  readonly value: number;
  readonly allowed: number;
  readonly channels: readonly string[];
  readonly step: string;
  /** Whole sentence. */
  readonly says: string;
  /** Entry by which the director acknowledged it; sound is silent from then on for this cause. */
  readonly acknowledged?: number;
}

export const ADVICE_STATES = [
  'nothing against going on',
  'slow down',
  'hold',
  'stop and release',
  'cannot judge',
] as const;
export type AdviceState = (typeof ADVICE_STATES)[number];

/** What the rules advise now, as it stands in the record. */
export interface AdviceNow {
  readonly seq: number;
  readonly wall_ms: number;
  readonly state: AdviceState;
  /** Whole sentences: the reasons, the first one first. */
  readonly reasons: readonly string[];
  /** Entries of the readings behind it. */
  readonly readings: readonly number[];
  /** Explanations that remain, likeliest first, and the reading that would tell them apart. */
  readonly explanations?: readonly string[];
  readonly tellApart?: string;
}

/** What is foreseen now, as it stands in the record: body of the last `forecast` entry. */
export interface ForesightNow {
  readonly seq: number;
  readonly wall_ms: number;
  readonly body: Body;
}

export interface Readying {
  readonly seq: number;
  readonly wall_ms: number;
  readonly percent: number;
  /** Whole sentence. */
  readonly says: string;
  /** Nothing will be foreseen. */
  readonly failed?: boolean;
}

export interface BrokenOff {
  /** Time of the last entry of the run before. */
  readonly since_ms: number;
  readonly lastPressure_bar?: number;
}

export interface TroubleNow {
  readonly seq: number;
  readonly what:
    | 'disk nearly full'
    | 'disk full'
    | 'base locked'
    | 'mirror gone'
    | 'on battery'
    | 'not kept awake'
    | 'source lost'
    | 'source unproved';
  readonly says: string;
  /** The source it is about. */
  readonly source?: string;
}

export interface HeadShown {
  readonly seq: number;
  readonly groups: string;
  readonly at: 'start' | 'hold' | 'end';
}

/** Measured at no pressure, before or after. */
export interface Measure {
  readonly seq: number;
  readonly when: 'before' | 'after';
  readonly what: 'girth' | 'wall' | 'height' | 'mass' | 'fill';
  /** Girth or place it belongs to. */
  readonly place?: string;
  readonly value: number;
  readonly unit: 'mm' | 'kg' | 'L';
  readonly by: string;
  readonly with: string;
}

/** A row as it was written, and what was added to it. */
export interface WrittenRow {
  readonly seq: number;
  /** When it was taken. */
  readonly wall_ms: number;
  readonly by: string;
  readonly step: string;
  readonly values: Readonly<Record<string, number>>;
  readonly corrections: readonly {
    readonly seq: number;
    readonly by: string;
    readonly values: Readonly<Record<string, number>>;
  }[];
}

export interface Remark {
  readonly seq: number;
  readonly wall_ms: number;
  readonly by: string;
  readonly text: string;
  readonly step?: string;
  /** SHA-256 of a photo that belongs to it. */
  readonly photo?: string;
  readonly place?: string;
}

/** What an earlier day on the same tank left: the wall is elastic up to the highest pressure that it has seen. */
export type Follows = {
  readonly record: string;
  readonly highest_bar: number;
  /** Growth that was left at no pressure, percent of the tank as welded, by girth; absent: it was not read. */
  readonly left_percent?: { readonly [girth: string]: number };
};
