/** Plans through the server: made with progress, ended when nobody waits, frozen, listed, opened, printed. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { freeze, type FrozenPlan, type PlanLine } from '@hoopwright/wire/plan';
import { pagesOf } from '../paper/readBack.ts';
import { madeFromNow } from '../plan/madeFrom.ts';
import { planHere } from '../plan/planHere.ts';
import { openPlanner, type Planner } from '../plan/planner.ts';
import { couponsAttached } from '../range/coupons.ts';
import { here } from '../range/runner.ts';
import { sha256 } from '../store/hash.ts';
import { parseTankFile } from '@hoopwright/wire/tank';
import { type Ask, ask, askFromNetwork, jsonOf, scene, type Scene } from './visitor.ts';

const text = readFileSync(new URL('../../examples/dunlin-fuel.json', import.meta.url), 'utf8');
const weak = text.replace('"opens_bar": 28.5', '"opens_bar": 20');

let planner: Planner;
let scenery: Scene;
let id: string;
beforeAll(() => {
  planner = openPlanner(here);
  scenery = scene({ planner });
  id = scenery.store.projects.create({ name: 'Tern Hill', file: text }).project.id;
});

const linesOf = async (answer: Response): Promise<Record<string, unknown>[]> =>
  (await answer.text())
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));

const SEAL = { window: 'left', version: 1, name: 'first stretch', revision: 'A', date: '2026-10-03' };
const freezing = (change: object = {}): Ask => ({ body: { ...SEAL, ...change } });
const plansAt = (path = ''): string => `/api/projects/${id}/plans${path}`;
const listed = async (): Promise<(PlanLine & { outdated?: string })[]> =>
  (await jsonOf<{ plans: PlanLine[] }>(await ask(scenery, plansAt()))).plans;

describe('a plan from the server', () => {
  it('is the one that the command line makes, to the last digit', async () => {
    const lines = await linesOf(await ask(scenery, '/api/plan', { body: { window: 'left', file: text } }));
    const given = parseTankFile(text);
    if (!given.ok) throw new Error('the example is whole');
    const answer = await planHere({ given, files: new Map(), run: here });
    expect(lines.at(-1)).toEqual({ kind: 'plan', plan: answer.kind === 'plan' ? answer.plan : {} });
  });

  it('is refused with every reason as a value, and a tank file that cannot be read with its issues', async () => {
    const lines = await linesOf(await ask(scenery, '/api/plan', { body: { window: 'left', file: weak } }));
    expect(lines.at(-1)).toMatchObject({
      kind: 'refused',
      reasons: [{ code: 'relief under stretch', opens_bar: 20, target_bar: 27 }],
    });
    const broken = await ask(scenery, '/api/plan', { body: { window: 'left', file: '{' } });
    expect(broken.status).toBe(422);
  });

  it('tells how far it is, and ends when the window that asked has gone', async () => {
    const heard: string[] = [];
    const patient: Planner = {
      ...planner,
      plan: (_window, _wanted, { progress, signal } = {}) =>
        new Promise((resolve) => {
          progress?.(0.25);
          signal?.addEventListener('abort', () => {
            heard.push('ended');
            resolve('overtaken');
          });
        }),
    };
    const answer = await ask(scene({ planner: patient }), '/api/plan', {
      body: { window: 'left', file: text },
    });
    const reader = answer.body?.getReader();
    const first = await reader?.read();
    expect(new TextDecoder().decode(first?.value)).toBe('{"kind":"progress","fraction":0.25}\n');
    await reader?.cancel();
    expect(heard).toEqual(['ended']);
  });

  it('is given up for a newer request of the same window, not of another', async () => {
    const waiting: AbortSignal[] = [];
    const slow = openPlanner(
      (_messages, { signal }) =>
        new Promise((_resolve, reject) => {
          if (signal) waiting.push(signal);
          signal?.addEventListener('abort', () => reject(new Error('asked to stop')));
        }),
    );
    const oxidiser = new URL('../../examples/dunlin-oxidiser.json', import.meta.url);
    const given = parseTankFile(readFileSync(oxidiser, 'utf8'));
    if (!given.ok) throw new Error('the example is whole');
    const wanted = { given, files: new Map() };
    const older = slow.plan('left', wanted);
    void slow.plan('right', wanted);
    await Promise.resolve();
    void slow.plan('left', wanted);
    expect(await older).toBe('overtaken');
    expect(waiting.map(({ aborted }) => aborted)).toEqual([true, false, false]);
  });
});

describe('a frozen plan', () => {
  let frozen: PlanLine;
  beforeAll(async () => {
    const answer = await ask(scenery, plansAt(), freezing({ by: 'left window' }));
    expect(answer.status).toBe(201);
    ({ line: frozen } = await jsonOf<{ line: PlanLine }>(answer));
  });

  it('is kept under its project, whole, with who froze it', async () => {
    expect(frozen).toMatchObject({
      name: 'first stretch',
      revision: 'A',
      date: '2026-10-03',
      version: 1,
      by: 'left window',
    });
    const { plan } = await jsonOf<{ plan: FrozenPlan }>(await ask(scenery, plansAt(`/${frozen.digest}`)));
    expect(plan.frozen.digest).toBe(frozen.digest);
    expect((await listed()).map(({ revision, outdated }) => [revision, outdated])).toEqual([
      ['A', undefined],
    ]);
  });

  it('is frozen of the version that the window shows, and of no other', async () => {
    const other = scenery.store.projects.create({ name: 'other', file: text }).project.id;
    const answer = await ask(scenery, `/api/projects/${other}/plans`, freezing({ version: 2 }));
    expect(answer.status).toBe(409);
    expect(await jsonOf(answer)).toMatchObject({ issues: [{ path: 'version' }] });
    expect(scenery.store.plans.list(other)).toEqual([]);
  });

  it('has its revision for itself, and wants a day', async () => {
    const again = await ask(scenery, plansAt(), freezing({ name: 'second' }));
    expect([again.status, await jsonOf(again)]).toMatchObject([409, { issues: [{ path: 'revision' }] }]);
    const day = await ask(scenery, plansAt(), freezing({ revision: 'B', date: '3.10.2026' }));
    expect([day.status, await jsonOf(day)]).toMatchObject([422, { issues: [{ path: 'date' }] }]);
  });

  it('is not made where there is no plan', async () => {
    const other = scenery.store.projects.create({ name: 'other', file: weak }).project.id;
    const answer = await ask(scenery, `/api/projects/${other}/plans`, freezing());
    expect([answer.status, await jsonOf(answer)]).toMatchObject([
      422,
      { issues: [{ path: 'plan', received: expect.stringContaining('relief under stretch') }] },
    ]);
  });

  it('prints on either paper, in the units of who asks, and strikes itself out once the tank has changed', async () => {
    const paper = async (query = ''): Promise<Uint8Array> =>
      new Uint8Array(await (await ask(scenery, plansAt(`/${frozen.digest}/paper${query}`))).arrayBuffer());
    const [first, again] = [await paper(), await paper()];
    expect(Buffer.from(first).equals(Buffer.from(again))).toBe(true);
    expect(pagesOf(first)[0]).toContain('27.0');
    expect(pagesOf(first)[0]).toContain('Tern Hill');
    expect(pagesOf(first).join()).not.toContain('OUT OF DATE');
    const psi = await paper('?size=Letter&units=psi&decimal=comma');
    expect(Buffer.from(psi).toString('latin1')).toContain('[0 0 612 792]');
    expect(pagesOf(psi).join()).toContain('psi');
    const changed = text.replace('"workingPressure_bar": 18', '"workingPressure_bar": 17');
    scenery.store.projects.save(id, { basedOn: 1, file: changed });
    for (const page of pagesOf(await paper())) expect(page).toContain('OUT OF DATE');
    expect((await listed())[0].outdated).toBe('tank changed');
    scenery.store.projects.undo(id, { from: 2 });
  });

  it('is handed out as the text that the command line writes', async () => {
    const answer = await ask(scenery, plansAt(`/${frozen.digest}/file`));
    const whole = scenery.store.plans.find(id, frozen.digest);
    expect(await answer.text()).toBe(`${JSON.stringify(whole, undefined, 1)}\n`);
    expect(Object.keys(whole?.plan ?? {})[0]).toBe('hoopwrightPlan');
  });

  it('can be read from the network with a link for reading, and frozen only with one for writing', async () => {
    expect((await askFromNetwork(scenery, plansAt())).status).toBe(401);
    const { secret } = scenery.store.tokens.make({ label: 'phone', role: 'viewer' });
    const cookie = `hoopwright-8417=${secret}`;
    expect((await askFromNetwork(scenery, plansAt(), { cookie })).status).toBe(200);
    const origin = { origin: 'http://192.0.2.7:8417' };
    const answer = await askFromNetwork(scenery, plansAt(), {
      ...freezing({ revision: 'C' }),
      cookie,
      headers: origin,
    });
    expect(answer.status).toBe(403);
  });
});

it('the papers of a draft say that they are one', async () => {
  const answer = await ask(scenery, `/api/plan/paper?project=${id}`, {
    body: { window: 'left', file: text },
  });
  const pages = pagesOf(new Uint8Array(await answer.arrayBuffer()));
  for (const page of pages) expect(page).toContain('DRAFT');
});

it('a coupon file that is replaced under its name puts the plan out of date, and back in its place it does not', async () => {
  const file = readFileSync(new URL('../../examples/dunlin-oxidiser.json', import.meta.url), 'utf8');
  const coupon = Uint8Array.from(
    readFileSync(new URL('../../examples/coupons/plate-1.csv', import.meta.url)),
  );
  const { attachments, plans, projects } = scenery.store;
  const project = projects.create({ name: 'evidence', file }).project.id;
  attachments.add(project, { name: 'plate-1.csv', bytes: coupon });
  const made = madeFromNow(parseTankFile(file), couponsAttached(attachments, project));
  const { plan } = must(plans.find(id, (await listed())[0].digest));
  const tank = { ...plan.tank, digest: made.tank, ...(made.evidence && { evidence: made.evidence }) };
  plans.keep(project, freeze({ ...plan, tank }, { name: 'x', revision: 'A', date: '2026-10-03' }, sha256));
  const state = async (): Promise<unknown> => {
    const answer = await ask(scenery, `/api/projects/${project}/plans`);
    return (await jsonOf<{ plans: { outdated?: string }[] }>(answer)).plans[0].outdated;
  };
  expect(await state()).toBeUndefined();
  const bytes = coupon.slice(0, -200);
  const replaced = must(attachments.add(project, { name: 'plate-1.csv', bytes }));
  expect(await state()).toBe('evidence changed');
  attachments.remove(project, replaced.id);
  expect(await state()).toBeUndefined();
});

function must<T>(found: T | undefined): T {
  if (found === undefined) throw new Error('it is not there');
  return found;
}
