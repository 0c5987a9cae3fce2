/** How other machines get in: a link's token becomes a cookie; links are made and revoked at the laptop. */
import { readEntrance, readNewToken } from '@hoopwright/wire/project';
import { Hono } from 'hono';
import type { Tokens } from '../../store/store.ts';
import { letIn, letOut, ownOnly } from '../gate/access.ts';
import { missing, refuse } from '../answer.ts';
import { bodyOf } from '../gate/body.ts';
import type { Env, Who } from '../env.ts';

const shown = (who: Who) =>
  who.kind === 'token' ? { who: 'link', role: who.token.role, label: who.token.label } : { who: who.kind };

export const entranceRoutes = (tokens: Tokens) =>
  new Hono<Env>()
    .get('/', (c) => c.json(shown(c.get('who'))))
    .post('/', async (c) => {
      const body = await bodyOf(c, readEntrance);
      if ('response' in body) return body.response;
      const token = tokens.check(body.value.token);
      if (!token) {
        const suggestion = 'ask at the laptop for a new link';
        return refuse(c, 401, {
          path: 'token',
          expected: 'a token that is valid',
          received: 'another',
          suggestion,
        });
      }
      letIn(c, body.value.token);
      return c.json(shown({ kind: 'token', token }));
    })
    .delete('/', (c) => {
      letOut(c);
      return c.json({ who: 'nobody' });
    });

/** @param addresses under which the server is reached from the network */
export const tokenRoutes = (tokens: Tokens, addresses: readonly string[]) =>
  new Hono<Env>()
    .use(ownOnly)
    .get('/', (c) => c.json({ tokens: tokens.list() }))
    .post('/', async (c) => {
      const body = await bodyOf(c, readNewToken);
      if ('response' in body) return body.response;
      const { token, secret } = tokens.make(body.value);
      // After '#', so that the browser never sends it in an address, and no server or proxy logs it.
      return c.json({ token, links: addresses.map((address) => `${address}/#${secret}`) }, 201);
    })
    .delete('/:id', (c) => {
      const token = tokens.revoke(c.req.param('id'));
      return token ? c.json({ token }) : missing(c, 'a link');
    });
