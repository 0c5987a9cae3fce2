/** Work in threads that can be taken back: what has not begun never does; what runs is let run out. */
import { Tinypool } from 'tinypool';

export interface ThreadOrders {
  /** Name of the function that the bundle exports. */
  readonly name: string;
  /** Asks to stop: rejects before the work begins, or when it has ended. */
  readonly signal?: AbortSignal | undefined;
  readonly transferList?: NonNullable<Parameters<Tinypool['run']>[1]>['transferList'];
}

export interface Threads {
  run<T>(message: unknown, orders: ThreadOrders): Promise<T>;
  /** Work that waits is refused; what runs is broken off, and rejects. */
  close(): Promise<void>;
}

/**
 * A thread is never ended to stop its work: whatever was given to it meanwhile would be lost with it, and Node itself may
 * go down. So a signal is not handed on, and no more is given out than there are threads; the rest waits here, in order.
 *
 * @param entry the built file that the threads run
 */
export function openThreads(entry: URL, { least, most }: { least: number; most: number }): Threads {
  const pool = new Tinypool({ filename: entry.href, minThreads: least, maxThreads: most });
  const waiting: (() => void)[] = [];
  let free = most;
  let closed = false;
  const turn = (): Promise<void> | undefined => {
    if (free === 0) return new Promise((begin) => void waiting.push(begin));
    free--;
    return undefined;
  };
  const over = (): void => {
    const next = waiting.shift();
    if (next === undefined) free++;
    else next();
  };
  return {
    run: async <T>(message: unknown, { name, signal, transferList }: ThreadOrders): Promise<T> => {
      await turn();
      try {
        signal?.throwIfAborted();
        if (closed) throw new Error('the threads were closed before this work began');
        const result: T = await pool.run(message, {
          name,
          ...(transferList === undefined ? {} : { transferList }),
        });
        signal?.throwIfAborted();
        return result;
      } finally {
        over();
      }
    },
    close: () => {
      closed = true;
      return pool.destroy();
    },
  };
}
