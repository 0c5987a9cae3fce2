/** Very many forecasts in threads, of which only the summaries come back. */
import { setMaxListeners } from 'node:events';
import { Tinypool } from 'tinypool';
import type { ManyAnswer, ManyMessage } from '../worker/many.ts';

export interface ManyWatch {
  /** Called after each forecast with how many are done. */
  readonly progress?: (done: number) => void;
  /** Asks to stop: what has not begun never does, what runs is ended, and the call rejects. */
  readonly signal?: AbortSignal;
}

export interface ManyForecasts {
  /** Answers in the order of the messages. Rejects where one fails, or when the signal asks to stop. */
  run(messages: readonly ManyMessage[], watch?: ManyWatch): Promise<ManyAnswer[]>;
  close(): Promise<void>;
}

/** @param entry the built `station/worker/many.ts` */
export function openManyForecasts(entry: URL, threads: number): ManyForecasts {
  const pool = new Tinypool({ filename: entry.href, minThreads: threads, maxThreads: threads });
  return {
    run: (messages, { progress, signal } = {}) => {
      // Every forecast that waits listens to the one signal.
      if (signal !== undefined) setMaxListeners(messages.length + 1, signal);
      let done = 0;
      return Promise.all(
        messages.map(async (message) => {
          const options = { name: 'answerMany', ...(signal === undefined ? {} : { signal }) };
          const answer: ManyAnswer = await pool.run(message, options);
          progress?.(++done);
          return answer;
        }),
      );
    },
    close: () => pool.destroy(),
  };
}
