/** Links of the crew and of sources: made and revoked at the laptop. */
import { type DayLink, readDayLink } from '@hoopwright/wire/day';
import type { Token } from '@hoopwright/wire/project';
import { Hono } from 'hono';
import type { Days } from '../../../day/days.ts';
import type { Tokens } from '../../../store/store.ts';
import { missing } from '../../answer.ts';
import type { Env } from '../../env.ts';
import { ownOnly } from '../../gate/access.ts';
import { bodyOf } from '../../gate/body.ts';

/** @param addresses under which the server is reached from the network */
export const linkRoutes = (days: Days, tokens: Tokens, addresses: readonly string[]) =>
  new Hono<Env>()
    .get('/:record/links', ownOnly, (c) =>
      c.json(tokens.list().flatMap((token) => linkOf(token, c.req.param('record')))),
    )
    .post('/:record/links', ownOnly, async (c) => {
      const record = c.req.param('record');
      if (days.line(record) === undefined) return missing(c, 'a day');
      const body = await bodyOf(c, readDayLink);
      if ('response' in body) return body.response;
      const { role, name } = body.value;
      const { secret } = tokens.make({ role, label: name, record });
      // A source has no page: it sends the secret itself.
      if (role === 'source') return c.json({ link: secret, links: [secret] }, 201);
      const links = addresses.map((address) => `${address}/day/${record}#${secret}`);
      return c.json({ link: links[0] ?? `/day/${record}#${secret}`, links }, 201);
    })
    .post('/:record/links/:id/revoke', ownOnly, (c) => {
      const { record, id } = c.req.param();
      const made = tokens.list().find((token) => token.id === id && token.record === record);
      const token = made && tokens.revoke(id);
      const [link] = token === undefined ? [] : linkOf(token, record);
      return link === undefined ? missing(c, 'a link') : c.json(link);
    });

/** Nothing where the token belongs to another day, or to the projects. */
const linkOf = ({ id, role, label, record, created_ms, revoked_ms }: Token, of: string): DayLink[] =>
  record !== of || role === 'writer'
    ? []
    : [{ id, role, name: label, made_ms: created_ms, ...(revoked_ms === undefined ? {} : { revoked_ms }) }];
