/** Readings that a source sends by itself: NDJSON under a token of its own. */
import { Hono } from 'hono';
import type { Days } from '../../../day/days.ts';
import { missing, refuse } from '../../answer.ts';
import type { Env } from '../../env.ts';

export const readingRoutes = (days: Days) =>
  new Hono<Env>().post('/:record/readings/:source', async (c) => {
    const { record, source } = c.req.param();
    const who = c.get('who');
    if (who.kind === 'token' && (who.token.role !== 'source' || who.token.label !== source))
      return refuse(c, 403, { path: 'token', expected: `the token of ${source}`, received: 'another one' });
    const running = days.find(record);
    const http = running?.http.get(source);
    if (running === undefined || http === undefined) return missing(c, 'a source that readings are sent to');
    const sent = await http.send(untilGone(c.req.raw.body ?? none()));
    if (sent === undefined) return missing(c, 'a day that runs');
    // Acknowledged only when durable; while the disk is full it is said that they wait.
    const durable = running.day.settled();
    return c.json(durable ? sent : { ...sent, waits: true }, durable ? 200 : 202);
  });

/** A node that is switched off in the middle of a line has said what it said before. */
async function* untilGone(body: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  try {
    yield* body;
  } catch {
    return;
  }
}

async function* none(): AsyncGenerator<Uint8Array> {}
