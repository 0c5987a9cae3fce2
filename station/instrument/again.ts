/** Keeps something open that may be lost: opens it, and looks for it again whenever it goes. */
import { type Later, LOOK_AGAIN_MS, type SourceState } from './source.ts';

export interface Attempt {
  /** It is there. */
  readonly opened: () => void;
  /** It could not be opened, or is gone: once for each attempt. */
  readonly gone: (why: string) => void;
}

export interface Again {
  /** Begins one attempt; the answer lets go of it. */
  readonly open: (attempt: Attempt) => () => Promise<void> | void;
  readonly later: Later;
  readonly state: (state: SourceState) => void;
}

/** The answer ends it all. */
export function keepOpen({ open, later, state }: Again): () => Promise<void> {
  let stopped = false;
  let letGo: (() => Promise<void> | void) | undefined;
  let callOff: (() => void) | undefined;
  let isLost = false;
  const attempt = (): void => {
    let over = false;
    letGo = open({
      opened: () => {
        if (over || stopped) return;
        isLost = false;
        state({ kind: 'open' });
      },
      gone: (why) => {
        if (over || stopped) return;
        over = true;
        if (!isLost) state({ kind: 'lost', why });
        isLost = true;
        void letGo?.();
        callOff = later(LOOK_AGAIN_MS, attempt);
      },
    });
  };
  attempt();
  return async () => {
    stopped = true;
    callOff?.();
    await letGo?.();
  };
}
