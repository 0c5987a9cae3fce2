/** Orders of the crew: one order, one POST. */
import { LAPTOP, MAY, type Order, readOrder } from '@hoopwright/wire/day';
import type { Issue } from '@hoopwright/wire/issue';
import type { Body } from '@hoopwright/wire/record';
import { Hono } from 'hono';
import type { Days, Running } from '../../../day/days.ts';
import type { Store } from '../../../store/store.ts';
import { missing, refuse } from '../../answer.ts';
import type { Env } from '../../env.ts';
import { bodyOf } from '../../gate/body.ts';
import { type Asker, askerOf } from './who.ts';

export const orderRoutes = (days: Days, store: Store) =>
  new Hono<Env>().post('/:record/orders', async (c) => {
    const running = days.find(c.req.param('record'));
    if (running === undefined) return missing(c, 'a day that runs');
    const body = await bodyOf(c, readOrder);
    if ('response' in body) return body.response;
    const order = body.value;
    const asker = askerOf(c.get('who'), running.day.state.state);
    if (!may(asker, order)) {
      const expected = !MAY['note taker'].includes(order.order) ? 'the director' : 'a role that writes';
      return refuse(c, 403, {
        path: 'order',
        expected,
        received: `the ${asker.role}, ordering "${order.order}"`,
      });
    }
    const more = beside(order, { asker, store, running });
    if ('path' in more) return refuse(c, 409, more);
    const done = await running.day.order(order, more.body);
    if (done.kind === 'refused') return refuse(c, 409, done.issue);
    if (done.kind === 'waits') return c.json({ seq: done.seq, waits: true }, 202);
    if (order.order === 'new revision')
      await running.day.write('plan', planBody(store, running, order.digest));
    return c.json({ seq: done.seq });
  });

/** From the laptop the role can be taken back at any time. */
const may = ({ role, own }: Asker, { order }: Order): boolean =>
  (own && order === 'hand over') || MAY[role].includes(order);

interface Around {
  readonly asker: Asker;
  readonly store: Store;
  readonly running: Running;
}

/** What the server adds to an order's entry, or why it cannot be done. */
function beside(order: Order, { asker, store, running }: Around): { readonly body: Body } | Issue {
  switch (order.order) {
    case 'hand over': {
      if (asker.own && order.to === order.by) return { body: { link: LAPTOP } };
      const link = store.tokens
        .list()
        .find(
          ({ label, role, record, revoked_ms }) =>
            label === order.to &&
            role !== 'source' &&
            record === running.day.parts.about.record &&
            revoked_ms === undefined,
        );
      if (link !== undefined) return { body: { link: link.id } };
      return {
        path: 'to',
        expected: 'the name of a link',
        received: order.to,
        suggestion: 'make a link first',
      };
    }
    case 'new revision':
      return revision(order.digest, { asker, store, running });
    case 'end': {
      const hidden = running.rig?.secrets();
      return { body: hidden === undefined ? {} : { hidden } };
    }
    case 'remark':
      if (order.photo === undefined || store.bytes.find(order.photo) !== undefined) return { body: {} };
      return { path: 'photo', expected: 'a photo that was sent', received: order.photo };
    default:
      return { body: {} };
  }
}

/** The same tank, and a plan that stands frozen in the project. */
function revision(digest: string, { store, running }: Around): { readonly body: Body } | Issue {
  const found = store.plans.find(running.day.parts.about.project ?? '', digest);
  const name = running.day.state.state.plan?.plan.tank.name;
  if (found === undefined)
    return { path: 'digest', expected: 'a frozen plan of the project', received: digest };
  return found.plan.tank.name === name
    ? { body: { revision: found.frozen.revision } }
    : { path: 'digest', expected: `a plan of ${name}`, received: found.plan.tank.name };
}

function planBody({ plans }: Store, { day }: Running, digest: string): Body {
  return JSON.parse(JSON.stringify(plans.find(day.parts.about.project ?? '', digest) ?? {}));
}
