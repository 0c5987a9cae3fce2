/** A source of readings behind a wire: what every adapter does, whatever its protocol. */
import type { Raw } from '@hoopwright/wire/reading';

export type SourceState =
  /** Readings come, or could come. */
  | { readonly kind: 'open' }
  /** Gone; it is looked for again by itself. */
  | { readonly kind: 'lost'; readonly why: string }
  /** Back, but nothing proves that it is itself: a person must say so. Its readings are not taken meanwhile. */
  | { readonly kind: 'unproved'; readonly why: string };

/** What a source tells while it runs. Called from the event loop, never after `stop`. */
export interface Told {
  readonly reading: (raw: Raw) => void;
  readonly state: (state: SourceState) => void;
  /** Something that was no reading. Told often by a hostile or broken wire: count it, do not keep it. */
  readonly bad: (why: string) => void;
}

export interface Running {
  /** A person says that the source is itself. Without effect unless it is unproved. */
  accept(): void;
  /** After this nothing is told any more. Resolves when everything it held is let go. */
  stop(): Promise<void>;
}

export interface Source {
  readonly name: string;
  start(told: Told): Running;
}

/** Runs `work` in so many ms; the answer calls it off. */
export type Later = (ms: number, work: () => void) => () => void;

/** A lost source is looked for again after this, ms. */
export const LOOK_AGAIN_MS = 500;
