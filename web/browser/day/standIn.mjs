/**
 * Stands in for the server of a day, for tests of the screens alone: it serves the built page and whatever states a test
 * shows it. What it cannot do (keep a record, refuse an order) is tested against the real server.
 */
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join } from 'node:path';
import { inClone } from '../harness.mjs';

const TYPES = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
};
const NO_TRACE = { seconds: [], channels: [] };
const BEAT = 500;

/**
 * @param {string} tank text of the tank file
 * @returns {Promise<{
 *   url: string,
 *   orders: any[],
 *   show: (snapshot: any) => void,
 *   tick: (more: any) => void,
 *   freeze: (frozen: boolean) => void,
 *   close: () => Promise<void>,
 * }>} `orders`: those that came; `freeze`: as a stopped server, it neither beats nor answers
 */
export async function openStandIn(tank) {
  let shown;
  let frozen = false;
  const streams = new Set();
  const orders = [];
  const beat = (changed, more = NO_TRACE) => {
    if (frozen || shown === undefined) return;
    const tick = { now_ms: shown.now_ms, seq: shown.state.seq, changed, more };
    for (const stream of streams) stream.write(`event: now\ndata: ${JSON.stringify(tick)}\n\n`);
  };
  const timer = setInterval(() => beat({}), BEAT);
  const json = (response, value) =>
    response.writeHead(200, { 'Content-Type': 'application/json' }).end(JSON.stringify(value));

  const answer = (request, response, path) => {
    if (path.endsWith('/stream')) {
      response.writeHead(200, { 'Content-Type': 'text/event-stream' });
      streams.add(response);
      response.on('close', () => streams.delete(response));
    } else if (path.endsWith('/tank')) response.end(tank);
    else if (path.endsWith('/orders')) {
      let text = '';
      request.on('data', (piece) => {
        text += piece;
      });
      request.on('end', () => {
        orders.push(JSON.parse(text));
        json(response, { seq: 900 + orders.length });
      });
    } else if (path.endsWith('/links') || path === '/api/days') json(response, []);
    else if (path.endsWith('/plans')) json(response, { plans: [] });
    else if (path.startsWith('/api/projects')) json(response, { projects: [] });
    else json(response, shown);
  };
  const server = createServer((request, response) => {
    if (frozen) return;
    const path = (request.url ?? '/').split('?')[0];
    if (path.startsWith('/api/')) return answer(request, response, path);
    const file = extname(path) === '' ? '/index.html' : path;
    try {
      const bytes = readFileSync(join(inClone('dist/web'), file));
      response
        .writeHead(200, { 'Content-Type': TYPES[extname(file)] ?? 'application/octet-stream' })
        .end(bytes);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    url: `http://127.0.0.1:${server.address().port}`,
    orders,
    show: (snapshot) => {
      const { state } = snapshot;
      shown = {
        role: 'director',
        own: true,
        speed: 1,
        live: true,
        trace: NO_TRACE,
        now_ms: state.wall_ms,
        ...snapshot,
      };
      beat(state);
    },
    tick: (more) => beat({}, more),
    freeze: (stop) => {
      frozen = stop;
    },
    close: async () => {
      clearInterval(timer);
      for (const stream of streams) stream.end();
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}
