/** Heavy work in threads of its own. Of several requests from one window only the newest is worth finishing. */
import { availableParallelism } from 'node:os';
import { openThreads } from '../threads/threads.ts';
import type { ForecastAnswer, ForecastMessage } from '../worker/forecast.ts';

export type Message = ForecastMessage;
export type Answer = ForecastAnswer;

export interface Pool {
  /** `overtaken`: a newer request of the same window took its place. Rejects where the work failed. */
  run(window: string, message: Message): Promise<Answer | { readonly kind: 'overtaken' }>;
  close(): Promise<void>;
}

const EXPORTS: Readonly<Record<Message['kind'], string>> = { forecast: 'answerForecast' };

/**
 * @param entry the built `station/worker/forecast.ts`
 * @param threads one is left to the thread that answers requests, if there are more
 */
export const openPool = (entry: URL, threads = Math.max(1, availableParallelism() - 1)): Pool => {
  const pool = openThreads(entry, { least: 1, most: threads });
  const newest = new Map<string, AbortController>();
  return {
    run: async (window, message) => {
      newest.get(window)?.abort();
      const mine = new AbortController();
      newest.set(window, mine);
      try {
        return await pool.run<Answer>(message, { name: EXPORTS[message.kind], signal: mine.signal });
      } catch (error) {
        if (mine.signal.aborted) return { kind: 'overtaken' };
        throw error;
      } finally {
        if (newest.get(window) === mine) newest.delete(window);
      }
    },
    close: () => pool.close(),
  };
};
