/** The range of a tank file's steel and of its stretch, worked out on all cores of the laptop. */
import type { Tank } from '@hoopwright/core/tank';
import { type CouponFiles, steelAnswer } from '@hoopwright/wire/evidence';
import { rangeFile } from '@hoopwright/wire/forecast';
import { issueLine } from '@hoopwright/wire/issue';
import { readForecast } from '@hoopwright/wire/project';
import { parseTankFile } from '@hoopwright/wire/tank';
import { Hono } from 'hono';
import { openAnswers } from '../../range/answers.ts';
import { couponsAttached } from '../../range/coupons.ts';
import type { Ranger } from '../../range/ranger.ts';
import { type SteelRange, steelOf } from '../../range/steelRange.ts';
import { type Env, remoteOf } from '../env.ts';
import { refuse } from '../answer.ts';
import { bodyOf } from '../gate/body.ts';
import { sha256 } from '../../store/hash.ts';
import type { Attachments } from '../../store/store.ts';

/**
 * POST {window, file}; `?project=ID` names the project whose attachments are the coupon files. Answers what the tests
 * say of the steel, with the steel in the middle for the page's own forecast; `steel` is null without evidence.
 * `?only=steel` leaves the stretch out, which takes a tenth of a second instead of some. The answers given last are kept.
 */
export const rangeRoutes = (ranger: Ranger, attachments: Attachments) => {
  const answers = openAnswers<Answer>();
  return new Hono<Env>().post('/', async (c) => {
    const body = await bodyOf(c, readForecast);
    if ('response' in body) return body.response;
    const { window, file } = body.value;
    const parsed = parseTankFile(file);
    if (!parsed.ok) return refuse(c, 422, ...parsed.issues);
    const coupons = couponsAttached(attachments, c.req.query('project'));
    const steelOnly = c.req.query('only') === 'steel';
    const question = questionOf(file, coupons, steelOnly);
    const asker = `${remoteOf(c)} ${window}`;
    const known = answers.of(question);
    if (known !== undefined) {
      if (!steelOnly) ranger.overtake(asker);
      return c.json(known);
    }
    const steel = steelOnly ? steelOf(parsed, coupons) : await ranger.range(asker, parsed, coupons);
    if (steel === 'overtaken') {
      const received = 'an older request of this window';
      return refuse(c, 409, { path: 'window', expected: 'the newest request', received });
    }
    const answer = steel === undefined ? { steel: null } : answerOf(parsed.tank, steel);
    answers.keep(question, answer);
    return c.json(answer);
  });
};

/** As the page gets it. */
type Answer = { readonly steel: null } | ReturnType<typeof answerOf>;

function answerOf(tank: Tank, { read, belief, stretch, middle }: SteelRange) {
  const { wall } = tank.courses.reduce((a, b) => (b.length > a.length ? b : a));
  const range = stretch === undefined ? null : rangeFile(stretch);
  const warnings = read.issues.map(issueLine);
  return { steel: steelAnswer({ read, belief, wall, stretch: range, warnings }), middle };
}

/** All that an answer depends on. */
const questionOf = (file: unknown, coupons: CouponFiles, steelOnly: boolean): string =>
  sha256(JSON.stringify([steelOnly, file, [...coupons].map(([name, bytes]) => [name, sha256(bytes)])]));
