/** A forecast worked out on the laptop, for pages that cannot do it themselves. */
import { readForecast } from '@hoopwright/wire/project';
import { Hono } from 'hono';
import { refuse } from '../answer.ts';
import { bodyOf } from '../gate/body.ts';
import { type Env, remoteOf } from '../env.ts';
import type { Pool } from '../pool.ts';

export const forecastRoutes = (pool: Pool) =>
  new Hono<Env>().post('/', async (c) => {
    const body = await bodyOf(c, readForecast);
    if ('response' in body) return body.response;
    const { window, file } = body.value;
    // One machine's windows must not overtake another's.
    const answer = await pool.run(`${remoteOf(c)} ${window}`, { kind: 'forecast', file });
    if (answer.kind === 'refused') return refuse(c, 422, ...answer.issues);
    if (answer.kind === 'forecast') return c.json(answer);
    const received = 'an older request of this window';
    return refuse(c, 409, { path: 'window', expected: 'the newest request', received });
  });
