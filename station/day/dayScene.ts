/** For tests: a server in memory with a frozen plan of the invented tank, and a day that is begun on it. */
import type { DayLine, Order, Snapshot } from '@hoopwright/wire/day';
import { freeze, type FrozenPlan } from '@hoopwright/wire/plan';
import { type AppParts } from '../server/app.ts';
import { ask, jsonOf, type Scene, scene } from '../server/visitor.ts';
import { sha256 } from '../store/hash.ts';
import { openMemoryStore } from '../store/memory/open.ts';
import type { Store } from '../store/store.ts';
import { Days, type DaysParts } from './days.ts';
import { type HeldTime, heldTime } from './heldTime.ts';
import { MESH, testPlan, TEST_TANK } from './rehearsed.ts';
import type { Laptop } from './surroundings.ts';

export interface DayScene {
  readonly here: Scene;
  readonly days: Days;
  readonly store: Store;
  readonly time: HeldTime;
  readonly project: string;
  readonly frozen: FrozenPlan;
  readonly logged: unknown[];
}

export const QUIET_LAPTOP: Laptop = {
  power: () => 'mains',
  free_MB: () => 9000,
  stayAwake: () => () => {},
};

export function dayScene(change: Partial<DaysParts> = {}, app: Partial<AppParts> = {}): DayScene {
  const time = heldTime();
  let tick = 0;
  const store =
    change.store ??
    openMemoryStore({
      clock: time.wall,
      dice: (bytes) => Uint8Array.from({ length: bytes }, (_, i) => (++tick * 37 + i * 11) & 0xff),
    });
  const { project } =
    store.projects.list('kept').map((one) => ({ project: one }))[0] ??
    store.projects.create({ name: 'INVENTED: Dunlin', file: JSON.stringify(TEST_TANK) });
  const frozen = freeze(testPlan(), { name: 'first stretch', revision: 'A', date: '2026-10-03' }, sha256);
  store.plans.keep(project.id, frozen);
  const logged: unknown[] = [];
  const days = new Days({
    store,
    laptop: QUIET_LAPTOP,
    later: time.later,
    real: time.real,
    wall: time.wall,
    log: (error) => logged.push(error),
    mesh: MESH,
    ...change,
  });
  const rates = { burst: 1e6, perSecond: 1e6 };
  const here = scene({ store, days, rates: { own: rates, network: rates, entrance: rates }, ...app });
  return { here, days, store, time, project: project.id, frozen, logged };
}

export interface BeginChange {
  readonly kind?: 'test' | 'rehearsal';
  readonly [key: string]: unknown;
}

/** Begins a test by hand, unless told otherwise; answers the record. */
export async function begun(day: DayScene, change: BeginChange = {}): Promise<string> {
  const body = {
    project: day.project,
    plan: day.frozen.frozen.digest,
    kind: 'test',
    director: 'A. Invented',
    ...change,
  };
  const answer = await waited(day, ask(day.here, '/api/days', { body }));
  const line = await jsonOf<DayLine & { issues?: unknown }>(answer);
  if (answer.status !== 201) throw new Error(JSON.stringify(line));
  return line.record;
}

/** Time passes until the answer is there. */
export async function waited<T>({ time }: DayScene, answer: T | Promise<T>): Promise<T> {
  const there = { is: false };
  const done = Promise.resolve(answer).finally(() => {
    there.is = true;
  });
  for (let i = 0; i < 200 && !there.is; i++) await time.pass(10);
  return done;
}

/** Gives an order from the laptop; answers the status and what came. */
export async function ordered(
  day: DayScene,
  record: string,
  order: { readonly order: Order['order']; readonly [key: string]: unknown },
): Promise<{
  readonly status: number;
  readonly seq?: number;
  readonly issues?: readonly { readonly received: string }[];
}> {
  const answer = await waited(
    day,
    ask(day.here, `/api/days/${record}/orders`, { body: { by: 'A. Invented', ...order } }),
  );
  return { ...(await jsonOf<object>(answer)), status: answer.status };
}

export async function shown(day: DayScene, record: string): Promise<Snapshot> {
  return jsonOf<Snapshot>(await waited(day, ask(day.here, `/api/days/${record}`)));
}
