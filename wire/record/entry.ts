/** What a record is and what stands in it. A record only grows: a correction is a new entry, never a changed one. */
import * as z from 'zod';
import type { Json } from './canonical.ts';

/** A rehearsal or a replay is its own kind of record and never shares one with real channels. */
export const RECORD_KINDS = ['test', 'rehearsal', 'replay'] as const;
export type RecordKind = (typeof RECORD_KINDS)[number];

export const ENTRY_KINDS = [
  'start',
  'set-up',
  'calibration',
  'plan',
  'forecast',
  'reading',
  'correction',
  'step',
  'advice',
  'decision',
  'remark',
  'photo',
  'measure',
  'gap',
  'trouble',
  'end',
] as const;
export type EntryKind = (typeof ENTRY_KINDS)[number];

export const RECORD_FORMAT = 'hoopwright record';

/** What the record says of itself, before its first entry; chained like an entry. */
export interface About {
  readonly format: typeof RECORD_FORMAT;
  readonly version: 1;
  /** Name of the record among all records, made once. */
  readonly record: string;
  readonly kind: RecordKind;
  readonly title: string;
  readonly began_ms: number;
  /** Project whose tank is tested. */
  readonly project?: string;
  /** Record that a replay plays. */
  readonly replays?: string;
}

export type Body = { readonly [key: string]: Json };

/** An entry before it has its place in the chain. */
export interface Draft {
  /** Which start of the program within this record: the monotonic clock counts from that start. 1, 2, … */
  readonly run: number;
  /** Monotonic clock of the run, ms. */
  readonly mono_ms: number;
  /** Wall clock, ms since 1970-01-01 UTC. */
  readonly wall_ms: number;
  readonly kind: EntryKind;
  readonly body: Body;
}

export interface Entry extends Draft {
  /** 1, 2, 3, … over the whole record, across runs. */
  readonly seq: number;
}

/** An entry in its place: `digest` covers it and, through the one before, everything before it. 64 hex digits. */
export interface Link {
  readonly entry: Entry;
  readonly digest: string;
}

/** Body of a `reading`: what the channels said at one moment, in the units of the set-up. */
export type ReadingBody = { readonly values: { readonly [channel: string]: number } };
/** Body of a `correction`: the entry it corrects and the values to be read instead. */
export type CorrectionBody = ReadingBody & { readonly corrects: number };

const count = z.int().min(1);
const json: z.ZodType<Json> = z.json();

export const aboutShape = z.strictObject({
  format: z.literal(RECORD_FORMAT),
  version: z.literal(1),
  record: z.string().regex(/^[a-z0-9-]{4,64}$/),
  kind: z.enum(RECORD_KINDS),
  title: z.string(),
  began_ms: z.number(),
  project: z.string().exactOptional(),
  replays: z.string().exactOptional(),
});

const entryShape = z.strictObject({
  seq: count,
  run: count,
  mono_ms: z.number(),
  wall_ms: z.number(),
  kind: z.enum(ENTRY_KINDS),
  body: z.record(z.string(), json),
});

const digestShape = z.string().regex(/^[0-9a-f]{64}$/);

export const aboutLineShape = z.strictObject({ about: aboutShape, digest: digestShape });
export const entryLineShape = z.strictObject({ digest: digestShape, entry: entryShape });
