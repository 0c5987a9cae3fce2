/** The range of a tank file's steel and of its stretch, worked out on all cores of the laptop. */
import { steelAnswer } from '@hoopwright/wire/evidence';
import { rangeFile } from '@hoopwright/wire/forecast';
import { issueLine } from '@hoopwright/wire/issue';
import { readForecast } from '@hoopwright/wire/project';
import { parseTankFile } from '@hoopwright/wire/tank';
import { Hono } from 'hono';
import { couponsAttached } from '../../range/coupons.ts';
import type { Ranger } from '../../range/ranger.ts';
import { steelOf } from '../../range/steelRange.ts';
import { type Env, remoteOf } from '../env.ts';
import { refuse } from '../answer.ts';
import { bodyOf } from '../gate/body.ts';
import type { Attachments } from '../../store/store.ts';

/**
 * POST {window, file}; `?project=ID` names the project whose attachments are the coupon files. Answers what the tests
 * say of the steel, with the steel in the middle for the page's own forecast; `steel` is null without evidence.
 * `?only=steel` leaves the stretch out, which takes a tenth of a second instead of some.
 */
export const rangeRoutes = (ranger: Ranger, attachments: Attachments) =>
  new Hono<Env>().post('/', async (c) => {
    const body = await bodyOf(c, readForecast);
    if ('response' in body) return body.response;
    const { window, file } = body.value;
    const parsed = parseTankFile(file);
    if (!parsed.ok) return refuse(c, 422, ...parsed.issues);
    const coupons = couponsAttached(attachments, c.req.query('project'));
    const steel =
      c.req.query('only') === 'steel'
        ? steelOf(parsed, coupons)
        : await ranger.range(`${remoteOf(c)} ${window}`, parsed, coupons);
    if (steel === 'overtaken') {
      const received = 'an older request of this window';
      return refuse(c, 409, { path: 'window', expected: 'the newest request', received });
    }
    if (steel === undefined) return c.json({ steel: null });
    const wall = parsed.tank.courses.reduce((a, b) => (b.length > a.length ? b : a)).wall;
    return c.json({
      steel: steelAnswer({
        read: steel.read,
        belief: steel.belief,
        wall,
        stretch: steel.stretch === undefined ? null : rangeFile(steel.stretch),
        warnings: steel.read.issues.map(issueLine),
      }),
      middle: steel.middle,
    });
  });
