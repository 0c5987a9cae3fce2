/** Plans of the day: made, printed, frozen, listed, opened. */
import { type Manner, USUAL_MANNER } from '@hoopwright/report/figure';
import { planPaper } from '@hoopwright/report/plan';
import { freeze, type MadeFrom, madeFrom, outgrown, PAPERS, type PlanLine } from '@hoopwright/wire/plan';
import { readForecast, readFreeze } from '@hoopwright/wire/project';
import { parseTankFile } from '@hoopwright/wire/tank';
import { Hono } from 'hono';
import { stream } from 'hono/streaming';
import { madeFromNow } from '../../plan/madeFrom.ts';
import type { Planner } from '../../plan/planner.ts';
import { couponsAttached } from '../../range/coupons.ts';
import { sha256 } from '../../store/hash.ts';
import type { Store } from '../../store/store.ts';
import { missing, refuse } from '../answer.ts';
import { type Asked, type Env, remoteOf } from '../env.ts';
import { bodyOf } from '../gate/body.ts';
import { attachment } from './download.ts';

/**
 * POST {window, file}; `?project=ID` names the project whose attachments are the coupon files. Answers in lines of JSON:
 * {kind: 'progress', fraction} as it goes, then {kind: 'plan', plan}, {kind: 'refused', reasons} or {kind: 'overtaken'}.
 * Who hangs up ends the work. /paper answers the papers of the draft as PDF.
 */
export const planRoutes = (planner: Planner, { attachments, projects }: Store) =>
  new Hono<Env>()
    .post('/', async (c) => {
      const body = await bodyOf(c, readForecast);
      if ('response' in body) return body.response;
      const given = parseTankFile(body.value.file);
      if (!given.ok) return refuse(c, 422, ...given.issues);
      const files = couponsAttached(attachments, c.req.query('project'));
      const window = windowOf(c, body.value.window);
      c.header('Content-Type', 'application/x-ndjson');
      return stream(c, async (out) => {
        const left = new AbortController();
        out.onAbort(() => left.abort());
        const progress = (fraction: number): void => void out.writeln(line({ kind: 'progress', fraction }));
        const answer = await planner.plan(window, { given, files }, { progress, signal: left.signal });
        await out.writeln(line(answer === 'overtaken' ? { kind: 'overtaken' } : answer));
      });
    })
    .post('/paper', async (c) => {
      const body = await bodyOf(c, readForecast);
      if ('response' in body) return body.response;
      const given = parseTankFile(body.value.file);
      if (!given.ok) return refuse(c, 422, ...given.issues);
      const project = c.req.query('project');
      const files = couponsAttached(attachments, project);
      const answer = await planner.plan(windowOf(c, body.value.window), { given, files });
      if (answer === 'overtaken') return overtaken(c);
      if (answer.kind === 'refused') return noPlan(c, answer.reasons);
      const name = project === undefined ? undefined : projects.find(project)?.name;
      const source = planPaper(answer.plan, {
        ...readingOf(c),
        paper: sizeOf(c) ?? answer.plan.paper,
        ...(name === undefined ? {} : { project: name }),
      });
      return pdf(c, `${answer.plan.tank.name}, draft.pdf`, await planner.paper(source));
    });

/** Under a project: GET list, POST freezes, GET one, its text, its papers. */
export const frozenRoutes = (planner: Planner, { attachments, plans, projects }: Store) => {
  const nowOf = (id: string): MadeFrom =>
    madeFromNow(parseTankFile(projects.open(id)?.version.file ?? ''), couponsAttached(attachments, id));
  return new Hono<Env>()
    .get('/:id/plans', (c) => {
      const id = c.req.param('id');
      if (!projects.find(id)) return missing(c, 'a project');
      const now = nowOf(id);
      return c.json({ plans: plans.list(id).map((one) => ({ ...one, ...outOf(one, now) })) });
    })
    .post('/:id/plans', async (c) => {
      const body = await bodyOf(c, readFreeze);
      if ('response' in body) return body.response;
      const { window, version, by, ...seal } = body.value;
      const id = c.req.param('id');
      const opened = projects.open(id);
      if (!opened || opened.project.deleted_ms !== undefined) return missing(c, 'a project');
      if (opened.version.number !== version) return stale(c, opened.version.number, version);
      const given = parseTankFile(opened.version.file);
      if (!given.ok) return refuse(c, 422, ...given.issues);
      const files = couponsAttached(attachments, id);
      const answer = await planner.plan(windowOf(c, window), { given, files });
      if (answer === 'overtaken') return overtaken(c);
      if (answer.kind === 'refused') return noPlan(c, answer.reasons);
      const standing = projects.find(id)?.current ?? version;
      if (standing !== version) return stale(c, standing, version);
      const kept = plans.keep(id, freeze(answer.plan, seal, sha256), by === undefined ? {} : { by });
      if (kept.kind === 'missing') return missing(c, 'a project');
      return kept.kind === 'done' ? c.json({ line: kept.line }, 201) : taken(c, kept.line);
    })
    .get('/:id/plans/:digest', (c) => {
      const plan = plans.find(c.req.param('id'), c.req.param('digest'));
      return plan ? c.json({ plan }) : missing(c, 'a frozen plan');
    })
    .get('/:id/plans/:digest/file', (c) => {
      const plan = plans.find(c.req.param('id'), c.req.param('digest'));
      if (!plan) return missing(c, 'a frozen plan');
      return attachment(c, `${titleOf(plan.frozen)}.json`, `${JSON.stringify(plan, undefined, 1)}\n`);
    })
    .get('/:id/plans/:digest/paper', async (c) => {
      const { id, digest } = c.req.param();
      const [plan, opened] = [plans.find(id, digest), projects.open(id)];
      if (!plan || !opened) return missing(c, 'a frozen plan');
      const source = planPaper(plan, {
        ...readingOf(c),
        ...outOf(madeFrom(plan.plan), nowOf(id)),
        paper: sizeOf(c) ?? plan.plan.paper,
        project: opened.project.name,
      });
      return pdf(c, `${titleOf(plan.frozen)}.pdf`, await planner.paper(source));
    });
};

const line = (value: object): string => JSON.stringify(value);

/** One machine's windows must not overtake another's. */
const windowOf = (c: Asked, window: string): string => `${remoteOf(c)} ${window}`;

const titleOf = ({ name, revision }: { readonly name: string; readonly revision: string }): string =>
  `${name}, revision ${revision}`;

function outOf(then: MadeFrom, now: MadeFrom) {
  const outdated = outgrown(then, now);
  return outdated === undefined ? {} : { outdated };
}

const sizeOf = (c: Asked) => PAPERS.find((size) => size === c.req.query('size'));

/** As whoever asks reads: ?units=psi&decimal=comma. */
function readingOf(c: Asked): { readonly manner: Manner } {
  const units = (['bar', 'MPa', 'psi'] as const).find((one) => one === c.req.query('units'));
  const decimal = c.req.query('decimal') === 'comma' ? ',' : USUAL_MANNER.decimal;
  return { manner: { ...USUAL_MANNER, decimal, ...(units === undefined ? {} : { units }) } };
}

const pdf = (c: Asked, name: string, bytes: Uint8Array): Response =>
  attachment(c, name, Uint8Array.from(bytes));

const overtaken = (c: Asked): Response =>
  refuse(c, 409, {
    path: 'window',
    expected: 'the newest request',
    received: 'an older request of this window',
  });

const stale = (c: Asked, standing: number, shown: number): Response =>
  refuse(c, 409, {
    path: 'version',
    expected: `version ${standing}, which stands now`,
    received: `version ${shown}`,
    suggestion: 'it was changed meanwhile: look at the plan again, then freeze it',
  });

const taken = (c: Asked, { revision, name, date }: PlanLine): Response =>
  refuse(c, 409, {
    path: 'revision',
    expected: 'a revision that no frozen plan of this project has',
    received: `revision ${revision}, which “${name}” of ${date} has`,
    suggestion: 'freeze it under the next revision',
  });

const noPlan = (c: Asked, reasons: readonly { readonly code: string }[]): Response =>
  refuse(c, 422, {
    path: 'plan',
    expected: 'a plan',
    received: `a refusal (${reasons.map(({ code }) => code).join('; ')})`,
    suggestion: 'mend what the sheet of the plan names',
  });
