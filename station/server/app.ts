/** The whole server as one function from request to answer; it runs in memory as well as behind a socket. */
import { Hono, type MiddlewareHandler } from 'hono';
import type { Days } from '../day/days.ts';
import type { Planner } from '../plan/planner.ts';
import type { Ranger } from '../range/ranger.ts';
import type { Store } from '../store/store.ts';
import { accessCheck, whoAsks } from './gate/access.ts';
import { failed, missing } from './answer.ts';
import { jsonOnly, limitBody } from './gate/body.ts';
import type { Env } from './env.ts';
import { headers, hostCheck, originCheck } from './gate/guard.ts';
import { type Page, servePage } from './page.ts';
import type { Pool } from './pool.ts';
import { RATES, type Rates, rateCheck } from './gate/rate.ts';
import { attachmentRoutes } from './routes/attachments.ts';
import { changesRoutes } from './routes/changes.ts';
import { entranceRoutes, tokenRoutes } from './routes/entrance.ts';
import { dayRoutes } from './routes/day/days.ts';
import { linkRoutes } from './routes/day/links.ts';
import { orderRoutes } from './routes/day/orders.ts';
import { photoRoutes } from './routes/day/photos.ts';
import { readingRoutes } from './routes/day/readings.ts';
import { streamRoutes } from './routes/day/stream.ts';
import { forecastRoutes } from './routes/forecast.ts';
import { type CheckFile, isJson, projectRoutes } from './routes/projects.ts';
import { frozenRoutes, planRoutes } from './routes/plans.ts';
import { rangeRoutes } from './routes/range.ts';
import { versionRoutes } from './routes/versions.ts';

export interface AppParts {
  readonly store: Store;
  /** Every `name:port` under which the server is meant to be reached. */
  readonly hosts: ReadonlySet<string>;
  /** Addresses for links, `http://name:port`. */
  readonly addresses: readonly string[];
  readonly page?: Page;
  readonly pool?: Pool;
  readonly ranger?: Ranger;
  readonly planner?: Planner;
  /** Days of testing; absent: none can be begun or seen. */
  readonly days?: Days;
  /** What is wrong with a tank file's text; absent: only that it is no JSON. */
  readonly check?: CheckFile;
  readonly rates?: Rates;
  /** Monotonic, ms. */
  readonly clock: () => number;
  readonly later: (ms: number, work: () => void) => () => void;
  readonly log: (error: unknown) => void;
  readonly closing: AbortSignal;
}

export const makeApp = (parts: AppParts): Hono<Env> => {
  const { store, page = new Map() } = parts;
  const app = new Hono<Env>();
  app.use(headers, hostCheck(parts.hosts), rateCheck(parts.rates ?? RATES, parts.clock));
  app.use('/api/*', fresh, originCheck, whoAsks(store.tokens), accessCheck, jsonOnly, limitBody);
  app.route('/api', apiOf(parts));
  app.all('/api/*', (c) => missing(c, 'a place'));
  app.use(servePage(page));
  app.notFound((c) => missing(c, 'a page'));
  app.onError((error, c) => failed(error, c, parts.log));
  return app;
};

/** Nothing of a project stays in a browser's cache. */
const fresh: MiddlewareHandler<Env> = async (c, next) => {
  await next();
  if (!c.res.headers.has('Cache-Control')) c.res.headers.set('Cache-Control', 'no-store');
};

const apiOf = ({
  store,
  addresses,
  pool,
  ranger,
  planner,
  days,
  check = isJson,
  ...parts
}: AppParts): Hono<Env> => {
  const { projects, attachments, tokens, changes } = store;
  const api = new Hono<Env>()
    .get('/health', (c) =>
      c.json({ ok: true, projects: projects.list('kept').length, changes: changes.last() }),
    )
    .route('/entrance', entranceRoutes(tokens))
    .route('/tokens', tokenRoutes(tokens, addresses))
    .route('/changes', changesRoutes({ changes, tokens, ...parts }))
    .route('/projects', projectRoutes(store, check))
    .route('/projects', versionRoutes(projects, check))
    .route('/projects', attachmentRoutes(attachments, projects));
  if (days)
    api
      .route('/days', dayRoutes(days, store))
      .route('/days', orderRoutes(days, store))
      .route('/days', photoRoutes(days, store))
      .route('/days', readingRoutes(days))
      .route('/days', linkRoutes(days, tokens, addresses))
      .route('/days', streamRoutes({ days, tokens, closing: parts.closing }));
  if (ranger) api.route('/range', rangeRoutes(ranger, attachments));
  if (planner)
    api.route('/plan', planRoutes(planner, store)).route('/projects', frozenRoutes(planner, store));
  return pool ? api.route('/forecast', forecastRoutes(pool)) : api;
};
