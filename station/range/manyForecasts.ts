/** Very many forecasts in threads, of which only the summaries come back. */
import { openThreads } from '../threads/threads.ts';
import type { ManyAnswer, ManyMessage } from '../worker/many.ts';

export interface ManyWatch {
  /** Called after each forecast with how many are done. */
  readonly progress?: (done: number) => void;
  /** Asks to stop: what has not begun never does, and the call rejects when what runs has ended. */
  readonly signal?: AbortSignal;
}

export interface ManyForecasts {
  /** Answers in the order of the messages. Rejects where one fails, or when the signal asks to stop. */
  run(messages: readonly ManyMessage[], watch?: ManyWatch): Promise<ManyAnswer[]>;
  close(): Promise<void>;
}

/** @param entry the built `station/worker/many.ts` */
export function openManyForecasts(entry: URL, threads: number): ManyForecasts {
  const pool = openThreads(entry, { least: threads, most: threads });
  return {
    run: (messages, { progress, signal } = {}) => {
      let done = 0;
      return Promise.all(
        messages.map(async (message) => {
          const answer = await pool.run<ManyAnswer>(message, { name: 'answerMany', signal });
          progress?.(++done);
          return answer;
        }),
      );
    },
    close: () => pool.close(),
  };
}
