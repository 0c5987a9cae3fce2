/** The stream of changes: what was changed elsewhere. It may break off; the page resumes after the last id it saw. */
import { setMaxListeners } from 'node:events';
import { Hono } from 'hono';
import { type SSEStreamingApi, streamSSE } from 'hono/streaming';
import type { Changes, Tokens } from '../../store/store.ts';
import { refuse } from '../answer.ts';
import type { Env, Who } from '../env.ts';

/** A line with nothing in it keeps the connection alive and finds the ones that are dead, ms. */
const BEAT_MS = 15_000;
const MOST_STREAMS = 60;

export interface ChangesParts {
  readonly changes: Changes;
  readonly tokens: Tokens;
  readonly later: (ms: number, work: () => void) => () => void;
  /** Ends all streams, when the server closes. */
  readonly closing: AbortSignal;
}

/**
 * Events: `ready` at the start, with the id up to which the page is told; `change` with a Change; `reset` where the id
 * of the page is one that this base never gave: then everything must be asked for anew.
 */
export const changesRoutes = (parts: ChangesParts) => {
  let streams = 0;
  setMaxListeners(MOST_STREAMS + 1, parts.closing);
  return new Hono<Env>().get('/', (c) => {
    if (streams >= MOST_STREAMS) {
      return refuse(c, 503, {
        path: 'the server',
        expected: `${MOST_STREAMS} open windows`,
        received: 'more',
      });
    }
    const since = c.req.header('last-event-id') ?? c.req.query('since');
    const who = c.get('who');
    streams += 1;
    return streamSSE(c, async (stream) => {
      try {
        await follow(stream, { since, who }, parts);
      } finally {
        streams -= 1;
      }
    });
  });
};

interface Follower {
  /** Id of the last change that it saw, as it says. */
  readonly since: string | undefined;
  readonly who: Who;
}

const follow = async (stream: SSEStreamingApi, { since, who }: Follower, parts: ChangesParts) => {
  const { changes, tokens, closing } = parts;
  const waiter = startWaiter(parts, stream);
  const start = changes.last();
  const asked = since !== undefined && /^\d{1,15}$/.test(since) ? Number(since) : start;
  let last = Math.min(asked, start);
  await stream.writeSSE({ event: asked > start ? 'reset' : 'ready', id: String(last), data: String(last) });
  try {
    while (!stream.aborted && !closing.aborted && mayRead(who, tokens)) {
      for (const change of changes.since(last)) {
        await stream.writeSSE({ event: 'change', id: String(change.id), data: JSON.stringify(change) });
        last = change.id;
      }
      if ((await waiter.next()) === 'beat') await stream.write(': \n\n');
    }
  } finally {
    waiter.stop();
  }
};

/** A link that is revoked ends the streams that it began. */
const mayRead = (who: Who, tokens: Tokens): boolean =>
  who.kind === 'own' ||
  (who.kind === 'token' &&
    tokens.list().some(({ id, revoked_ms }) => id === who.token.id && revoked_ms === undefined));

type Why = 'change' | 'beat';

/** Waits for a change, the beat, or the end, whichever is first; a change that came while nobody waited is not missed. */
const startWaiter = ({ changes, later, closing }: ChangesParts, stream: SSEStreamingApi) => {
  let woken = false;
  let settle: ((why: Why) => void) | undefined;
  const wake = (): void => {
    woken = true;
    settle?.('change');
  };
  const stop = changes.watch(wake);
  stream.onAbort(wake);
  closing.addEventListener('abort', wake);

  const waiting = (): Promise<Why> =>
    new Promise((resolve) => {
      const callOff = later(BEAT_MS, () => settle?.('beat'));
      settle = (why) => {
        callOff();
        resolve(why);
      };
    });

  return {
    next: async (): Promise<Why> => {
      const why = woken ? 'change' : await waiting();
      [woken, settle] = [false, undefined];
      return why;
    },
    stop: () => {
      stop();
      closing.removeEventListener('abort', wake);
    },
  };
};
