/** Writes into one record as it comes: many entries in one commit, each acknowledged only when it is durable. */
import {
  type Body,
  type Draft,
  type EntryKind,
  type Link,
  type Moment,
  type RecordKind,
  canonical,
  clockGap,
} from '@hoopwright/wire/record';
import { Trouble } from '../driver/base.ts';
import type { Records } from './store.ts';

/** Entries wait no longer than this for their commit, ms. The record must be committed at least every 50 ms. */
export const COMMIT_MS = 20;
/** After a trouble the commit is tried again this much later, ms. */
export const RETRY_MS = 200;

export interface Recorder {
  /**
   * Resolves when the entry is durable. Throws at once where JSON cannot hold the body. `at`: when it was taken, if
   * that was before now. Where the clocks have parted since the entry before, a `gap` is written first.
   */
  write(kind: EntryKind, body: Body, at?: Clocks): Promise<Link>;
  /** Commits what waits, now. `false`: it could not be, and goes on waiting. */
  flush(): boolean;
  state(): RecorderState;
  /** Commits what waits and takes nothing more. */
  close(): boolean;
}

export interface RecorderState {
  /** Entries that are not durable yet. */
  readonly waiting: number;
  /** Why they are not; readings go on being taken and are written when it clears. */
  readonly trouble?: Trouble;
}

export type Clocks = Omit<Moment, 'run'>;

export interface RecorderParts {
  readonly records: Records;
  readonly to: { readonly record: string; readonly kind: RecordKind };
  readonly now: () => Clocks;
  /** Runs `work` in so many ms; the answer calls it off. */
  readonly later: (ms: number, work: () => void) => () => void;
  /** Told when a trouble begins and when it has cleared. */
  readonly told: (state: RecorderState) => void;
  /** Each entry in order: as it is taken, and when it is durable, gaps included. */
  readonly queued?: (draft: Draft) => void;
  readonly wrote?: (link: Link) => void;
}

interface Waiting {
  readonly draft: Draft;
  readonly resolve: (link: Link) => void;
  readonly reject: (error: unknown) => void;
}

/** Begins a run of the record: one more than the last. Throws where `to` is not open to that kind. */
export const openRecorder = (parts: RecorderParts): Recorder => {
  const { records, to, now, later, told } = parts;
  records.append(to, []);
  const before = records.find(to.record);
  const run = (before?.run ?? 0) + 1;
  const [end] = records.entries(to.record, (before?.entries ?? 0) - 1);
  let last: Moment | undefined = before?.entries ? end.entry : undefined;
  let waiting: Waiting[] = [];
  let trouble: Trouble | undefined;
  let callOff: (() => void) | undefined;
  let closed = false;

  const queue = (kind: EntryKind, body: Body, moment: Moment): Promise<Link> =>
    new Promise((resolve, reject) => {
      const { mono_ms, wall_ms } = moment;
      const draft: Draft = { run, mono_ms, wall_ms, kind, body };
      waiting.push({ draft, resolve, reject });
      parts.queued?.(draft);
    });

  const state = (): RecorderState => ({ waiting: waiting.length, ...(trouble ? { trouble } : {}) });

  const turned = (next: Trouble | undefined): void => {
    const news = next?.kind !== trouble?.kind;
    trouble = next;
    if (news) told(state());
  };

  const flush = (): boolean => {
    callOff?.();
    callOff = undefined;
    const batch = waiting;
    if (batch.length === 0) return true;
    try {
      const links = records.append(
        to,
        batch.map(({ draft }) => draft),
      );
      waiting = waiting.slice(batch.length);
      links.forEach((link) => parts.wrote?.(link));
      batch.forEach(({ resolve }, i) => resolve(links[i]));
      turned(undefined);
      return true;
    } catch (error) {
      if (!(error instanceof Trouble)) {
        waiting = [];
        for (const { reject } of batch) reject(error);
        return false;
      }
      if (!closed) callOff = later(RETRY_MS, flush);
      turned(error);
      return false;
    }
  };

  return {
    flush,
    state,
    write: (kind, body, at = now()) => {
      if (closed) throw new Error(`the recorder of ${to.record} is closed; a ${kind} came`);
      canonical(body);
      const moment = { run, mono_ms: at.mono_ms, wall_ms: at.wall_ms };
      const gap = last && clockGap(last, moment);
      last = moment;
      if (gap) queue('gap', { ...gap }, moment).catch(() => {});
      const done = queue(kind, body, moment);
      callOff ??= later(COMMIT_MS, flush);
      return done;
    },
    close: () => {
      closed = true;
      return flush();
    },
  };
};
