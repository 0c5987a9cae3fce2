/** The event stream of a day: the whole state first, then what changes. Every screen gets the same text. */
import { setMaxListeners } from 'node:events';
import { Hono } from 'hono';
import { type SSEStreamingApi, streamSSE } from 'hono/streaming';
import type { Days } from '../../../day/days.ts';
import type { LiveDay } from '../../../day/live/live.ts';
import { wholeTick } from '../../../day/live/ticker.ts';
import type { Tokens } from '../../../store/store.ts';
import { missing, refuse } from '../../answer.ts';
import type { Env, Who } from '../../env.ts';

const MOST_STREAMS = 60;
/** Ticks that may wait for a screen that does not take them, before the stream is ended: it asks again by itself. */
const MOST_WAITING = 100;

export interface StreamParts {
  readonly days: Days;
  readonly tokens: Tokens;
  readonly closing: AbortSignal;
}

export const streamRoutes = ({ days, tokens, closing }: StreamParts) => {
  let streams = 0;
  setMaxListeners(2 * MOST_STREAMS + 2, closing);
  return new Hono<Env>().get('/:record/stream', (c) => {
    const running = days.find(c.req.param('record'));
    if (running === undefined && days.line(c.req.param('record')) === undefined) return missing(c, 'a day');
    if (streams >= MOST_STREAMS)
      return refuse(c, 503, {
        path: 'the server',
        expected: `${MOST_STREAMS} open screens`,
        received: 'more',
      });
    const since = Number(c.req.header('last-event-id') ?? c.req.query('since') ?? 0);
    streams += 1;
    return streamSSE(c, async (stream) => {
      try {
        if (running !== undefined)
          await follow(stream, running.day, { since, may: mayRead(c.get('who'), tokens), closing });
        await stream.writeSSE({ event: 'gone', data: '{}' });
      } finally {
        streams -= 1;
      }
    });
  });
};

interface Following {
  readonly since: number;
  /** Still allowed: its link may be revoked meanwhile. */
  readonly may: () => boolean;
  readonly closing: AbortSignal;
}

async function follow(
  stream: SSEStreamingApi,
  day: LiveDay,
  { since, may, closing }: Following,
): Promise<void> {
  const waiting: (string | undefined)[] = [];
  let wake: (() => void) | undefined;
  const add = (text: string | undefined): void => {
    waiting.push(text);
    wake?.();
  };
  const leave = day.ticker.listen(add);
  const end = (): void => add(undefined);
  stream.onAbort(end);
  closing.addEventListener('abort', end);
  try {
    const { state } = day.state;
    const after = Number.isFinite(since) && since <= state.seq ? since : 0;
    await now(stream, JSON.stringify(wholeTick(day.now().wall_ms, state, day.trace.read(after))), state.seq);
    for (;;) {
      if (waiting.length === 0) await new Promise<void>((resolve) => (wake = resolve));
      wake = undefined;
      if (waiting.length > MOST_WAITING || !may()) return;
      for (const text of waiting.splice(0)) {
        if (text === undefined || stream.aborted) return;
        await now(stream, text, day.state.state.seq);
      }
    }
  } finally {
    leave();
    closing.removeEventListener('abort', end);
  }
}

const now = (stream: SSEStreamingApi, data: string, seq: number): Promise<void> =>
  stream.writeSSE({ event: 'now', id: String(seq), data });

/** Asks the base once a second at most. */
const mayRead = (who: Who, tokens: Tokens): (() => boolean) => {
  let asked = 0;
  return () => {
    asked += 1;
    if (who.kind !== 'token' || asked % 10 !== 1) return true;
    return tokens.list().some(({ id, revoked_ms }) => id === who.token.id && revoked_ms === undefined);
  };
};
