/** For tests: the server in memory, and visitors who ask it from the laptop or from the network. */
import type { Hono } from 'hono';
import { openMemoryStore } from '../store/memory/open.ts';
import type { Store } from '../store/store.ts';
import { type AppParts, makeApp } from './app.ts';
import type { Env } from './env.ts';

export const HOST = 'localhost:8417';
export const NETWORK_HOST = '192.0.2.7:8417';

export interface Scene {
  readonly app: Hono<Env>;
  readonly store: Store;
  /** What the server logged. */
  readonly logged: unknown[];
  /** Timers that wait, oldest first. */
  readonly timers: { readonly ms: number; readonly work: () => void }[];
  readonly closing: AbortController;
  /** Monotonic, ms; a test moves it. */
  now: number;
}

export const scene = (change: Partial<AppParts> = {}): Scene => {
  let tick = 0;
  const store =
    change.store ??
    openMemoryStore({
      clock: () => 1_790_000_000_000 + ++tick,
      dice: (bytes) => Uint8Array.from({ length: bytes }, (_, i) => (++tick * 31 + i) & 0xff),
    });
  const made = {
    store,
    logged: [] as unknown[],
    timers: [] as Scene['timers'],
    closing: new AbortController(),
    now: 0,
  };
  const app = makeApp({
    hosts: new Set([HOST, NETWORK_HOST]),
    addresses: [`http://${NETWORK_HOST}`],
    clock: () => whole.now,
    log: (error) => made.logged.push(error),
    later: (ms, work) => {
      const timer = { ms, work };
      made.timers.push(timer);
      return () => void made.timers.splice(made.timers.indexOf(timer), 1);
    },
    closing: made.closing.signal,
    ...change,
    store,
  });
  const whole: Scene = { ...made, app };
  return whole;
};

export interface Ask {
  readonly method?: string;
  readonly body?: unknown;
  readonly headers?: Readonly<Record<string, string>>;
  /** Address from which the request comes. */
  readonly from?: string;
}

/** Asks from the laptop, as its own page does. */
export const ask = async (
  { app }: Scene,
  path: string,
  { method, body, headers, from }: Ask = {},
): Promise<Response> => {
  const json = body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) };
  const writes = body === undefined && method === undefined ? {} : { 'content-type': 'application/json' };
  const init = {
    method: method ?? (body === undefined ? 'GET' : 'POST'),
    ...json,
    headers: { host: HOST, ...writes, ...headers },
  };
  return app.request(`http://${HOST}${path}`, init, {
    incoming: { socket: { remoteAddress: from ?? '127.0.0.1' } },
  });
};

/** Asks from another machine, with the cookie that a link gave, if it has one. */
export const askFromNetwork = (here: Scene, path: string, given: Ask & { readonly cookie?: string } = {}) =>
  ask(here, path, {
    from: '192.0.2.99',
    ...given,
    headers: { host: NETWORK_HOST, ...(given.cookie ? { cookie: given.cookie } : {}), ...given.headers },
  });

export const jsonOf = async <T = Record<string, unknown>>(answer: Response): Promise<T> =>
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- the test says what it expects, then checks it
  (await answer.json()) as T;
