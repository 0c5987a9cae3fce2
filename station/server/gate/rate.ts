/** So many requests from one place, and no more: a bucket that fills at a steady rate. */
import type { MiddlewareHandler } from 'hono';
import { refuse } from '../answer.ts';
import { type Env, isLoopback, remoteOf } from '../env.ts';

export interface Rate {
  /** Requests at once. */
  readonly burst: number;
  readonly perSecond: number;
}

export interface Rates {
  /** The laptop itself: only a runaway page meets this. */
  readonly own: Rate;
  readonly network: Rate;
  /** Tries to enter with a token. */
  readonly entrance: Rate;
}

export const RATES: Rates = {
  own: { burst: 1000, perSecond: 500 },
  network: { burst: 120, perSecond: 30 },
  entrance: { burst: 10, perSecond: 0.2 },
};

/** Buckets that are kept at most; full ones, which say nothing, are forgotten first. */
const MOST_BUCKETS = 1000;

interface Bucket {
  readonly left: number;
  readonly at: number;
}

/** Answers 0, or after how many seconds the next request is welcome. @param clock monotonic, ms */
export const startBuckets = (
  { burst, perSecond }: Rate,
  clock: () => number,
): ((place: string) => number) => {
  const buckets = new Map<string, Bucket>();
  const filled = ({ left, at }: Bucket, now: number): number =>
    Math.min(burst, left + ((now - at) / 1000) * perSecond);

  const forget = (now: number): void => {
    if (buckets.size < MOST_BUCKETS) return;
    for (const [place, bucket] of buckets) if (filled(bucket, now) >= burst) buckets.delete(place);
    // All are in use: forgetting them is kinder than growing without end.
    if (buckets.size >= MOST_BUCKETS) buckets.clear();
  };

  return (place) => {
    const now = clock();
    const left = filled(buckets.get(place) ?? { left: burst, at: now }, now);
    forget(now);
    buckets.set(place, { left: left >= 1 ? left - 1 : left, at: now });
    return left >= 1 ? 0 : (1 - left) / perSecond;
  };
};

export const rateCheck = (rates: Rates, clock: () => number): MiddlewareHandler<Env> => {
  const [own, network] = [startBuckets(rates.own, clock), startBuckets(rates.network, clock)];
  const entrance = startBuckets(rates.entrance, clock);
  return async (c, next) => {
    const place = remoteOf(c) ?? 'unknown';
    const tries = c.req.path === '/api/entrance' && c.req.method === 'POST';
    const wait = Math.max((isLoopback(place) ? own : network)(place), tries ? entrance(place) : 0);
    if (wait === 0) return next();
    c.header('Retry-After', String(Math.ceil(wait)));
    return refuse(c, 429, {
      path: 'the server',
      expected: 'fewer requests',
      received: 'too many',
      suggestion: `wait ${Math.ceil(wait)} s`,
    });
  };
};
