/** The worker threads of the page. Of several requests to one thread only the newest is worth making. */
import { type Remote, wrap } from 'comlink';
import type { SteelDraw } from '@hoopwright/core/steel';
import type { Compared, Comparison } from '@hoopwright/wire/compare';
import type { CouponEntry } from '../../work/coupon.ts';
import type { CouponView } from '../../work/couponView.ts';
import type { Board } from '../../work/answer.ts';
import type { Ask, Cursor, Fineness, Reply } from '../../work/ask.ts';
import type { Stance } from '@hoopwright/report/drawing';
import type { Manner } from '@hoopwright/report/figure';

/** Runs one job at a time; a job that waits is replaced by a newer one and resolves to undefined. */
export function newestOnly<A, B>(work: (asked: A) => Promise<B>): (asked: A) => Promise<B | undefined> {
  let busy = false;
  let waiting:
    | {
        readonly asked: A;
        readonly settle: (value: B | undefined) => void;
        readonly fail: (error: unknown) => void;
      }
    | undefined;
  const next = async (): Promise<void> => {
    const job = waiting;
    waiting = undefined;
    if (job === undefined) return;
    busy = true;
    try {
      job.settle(await work(job.asked));
    } catch (error) {
      job.fail(error);
    }
    busy = false;
    void next();
  };
  return (asked) =>
    new Promise((settle, fail) => {
      waiting?.settle(undefined);
      waiting = { asked, settle, fail };
      if (!busy) void next();
    });
}

type Thread = Remote<Board>;

type Use = Fineness | 'compare';

const threads = new Map<Use, Thread>();

/** A thread for each use: the exact answer to an older file never holds up the rough answer to a newer one. */
function thread(fineness: Use): Thread {
  const there = threads.get(fineness);
  if (there !== undefined) return there;
  const made = wrap<Board>(new Worker(new URL('../../worker.ts', import.meta.url), { type: 'module' }));
  threads.set(fineness, made);
  return made;
}

/** Starts both threads, so that the first change does not wait for them. */
export const warmUp = (): void => void (thread('rough'), thread('exact'));

const asks: Readonly<Record<Fineness, (ask: Ask) => Promise<Reply | undefined>>> = {
  rough: newestOnly<Ask, Reply>((asked) => thread('rough').answer(asked)),
  exact: newestOnly<Ask, Reply>((asked) => thread('exact').answer(asked)),
};

/** Undefined: a newer request took its place. */
export const ask = (asked: Ask): Promise<Reply | undefined> => asks[asked.fineness](asked);

const stances: Readonly<Record<Fineness, (cursor: Cursor) => Promise<Stance | undefined>>> = {
  rough: newestOnly<Cursor, Stance | undefined>((cursor) => thread('rough').stance(cursor)),
  exact: newestOnly<Cursor, Stance | undefined>((cursor) => thread('exact').stance(cursor)),
};

/** The tank of the last forecast of that fineness, where the hand stands. */
export const stanceAt = (fineness: Fineness, cursor: Cursor): Promise<Stance | undefined> =>
  stances[fineness](cursor);

/** One sheet compared, in a thread of its own. */
export const compareWall = (file: unknown, wall: number, steel: SteelDraw | undefined): Promise<Compared> =>
  thread('compare').compare(file, wall, steel);

export const comparisonOf = (
  file: unknown,
  rows: readonly Compared['row'][],
  unstretched: Compared['unstretched'],
): Promise<Comparison> => thread('compare').comparison(file, rows, unstretched);

export const couponView = (bytes: Uint8Array, entry: CouponEntry, manner: Manner): Promise<CouponView> =>
  thread('compare').coupon(bytes, entry, manner);
