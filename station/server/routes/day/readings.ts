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
    const http = days.find(record)?.http.get(source);
    if (http === undefined) return missing(c, 'a source that readings are sent to');
    const sent = await http.send(c.req.raw.body ?? none());
    return sent === undefined ? missing(c, 'a day that runs') : c.json(sent);
  });

async function* none(): AsyncGenerator<Uint8Array> {}
