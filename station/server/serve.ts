/** The server behind a socket. */
import { existsSync } from 'node:fs';
import { hostname, networkInterfaces } from 'node:os';
import { performance } from 'node:perf_hooks';
import { type Server, createServer } from 'node:http';
import { getRequestListener } from '@hono/node-server';
import type { Hono } from 'hono';
import type { Days } from '../day/days.ts';
import type { Planner } from '../plan/planner.ts';
import type { Ranger } from '../range/ranger.ts';
import type { Store } from '../store/store.ts';
import { makeApp } from './app.ts';
import type { Env } from './env.ts';
import { hostsFor, isOwnHost, networkNames } from './gate/hosts.ts';
import { readPage } from './page.ts';
import type { Pool } from './pool.ts';
import type { CheckFile } from './routes/projects.ts';

export interface ServeOptions {
  readonly store: Store;
  /** 0: any that is free. */
  readonly port: number;
  /** Absent: the laptop itself only. `0.0.0.0` shares on the network, over plain HTTP: say so to the person. */
  readonly host?: string;
  /** The built page; absent or not there: the server says that the page is not built. */
  readonly webDir?: string;
  readonly pool?: Pool;
  readonly ranger?: Ranger;
  readonly planner?: Planner;
  /** Closed by the caller, before the store. */
  readonly days?: Days;
  readonly check?: CheckFile;
  /** Told of mistakes of the program, never of secrets. */
  readonly log: (error: unknown) => void;
}

export interface Serving {
  /** To be opened on the laptop. */
  readonly url: string;
  readonly port: number;
  /** To be opened on other machines, with a token; empty where it is not shared. */
  readonly addresses: readonly string[];
  /** Ends streams and stops listening. The store and the pool are the caller's to close. */
  close(): Promise<void>;
}

/** Rejects with a sentence where the port is taken or must not be used. */
export const serve = async (options: ServeOptions): Promise<Serving> => {
  const { store, port: asked, host = '127.0.0.1', webDir, pool, ranger, planner, days, check, log } = options;
  const page = webDir !== undefined && existsSync(webDir) ? readPage(webDir) : new Map();
  const closing = new AbortController();
  let app: Hono<Env> | undefined;
  const answer = (request: Request, env: Env['Bindings']) =>
    app?.fetch(request, env) ?? new Response(null, { status: 503 });
  const server = createServer(getRequestListener(answer));
  const port = await listening(server, asked, host);
  const names = networkNames(host, { hostname: hostname(), interfaces: networkInterfaces() });
  const addresses = names.map((name) => `http://${name}:${port}`);
  app = makeApp({
    store,
    page,
    addresses,
    log,
    hosts: hostsFor(names, port),
    clock: () => performance.now(),
    later,
    closing: closing.signal,
    ...(pool ? { pool } : {}),
    ...(ranger ? { ranger } : {}),
    ...(planner ? { planner } : {}),
    ...(days ? { days } : {}),
    ...(check ? { check } : {}),
  });
  const own = isOwnHost(host) || host === '0.0.0.0' || host === '::' ? 'localhost' : host;
  return {
    url: `http://${own}:${port}/`,
    port,
    addresses,
    close: async () => {
      closing.abort();
      // The streams end in their own turn; after it their connections are idle.
      await new Promise(setImmediate);
      await closed(server);
    },
  };
};

const later = (ms: number, work: () => void): (() => void) => {
  const timer = setTimeout(work, ms);
  return () => {
    clearTimeout(timer);
  };
};

const listening = (server: Server, port: number, host: string): Promise<number> =>
  new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      reject(new Error(sentence(error, port, host), { cause: error }));
    });
    server.listen(port, host, () => {
      const address = server.address();
      resolve(typeof address === 'object' && address ? address.port : port);
    });
  });

const sentence = (error: NodeJS.ErrnoException, port: number, host: string): string => {
  if (error.code === 'EADDRINUSE') {
    return `Port ${port} is taken, perhaps by this program in another window: close that one, or choose another port, e.g. PORT=${port + 1}.`;
  }
  if (error.code === 'EACCES')
    return `Port ${port} may not be used here: choose one over 1023, e.g. PORT=8417.`;
  if (error.code === 'EADDRNOTAVAIL' || error.code === 'ENOTFOUND') {
    return `This machine has no address ${host}: leave the host out, or share with 0.0.0.0.`;
  }
  return `The server cannot listen on ${host}, port ${port}: ${error.message}.`;
};

/** Idle connections are ended at once, those in an answer are let finish for a moment. */
const closed = (server: Server): Promise<void> =>
  new Promise((resolve) => {
    server.close(() => {
      resolve();
    });
    server.closeIdleConnections();
    const callOff = later(GRACE_MS, () => {
      server.closeAllConnections();
    });
    server.once('close', callOff);
  });

const GRACE_MS = 500;
