import { connect } from 'node:net';
import { afterEach, describe, expect, it } from 'vitest';
import { openMemoryStore } from '../store/memory/open.ts';
import type { Store } from '../store/store.ts';
import { type ServeOptions, type Serving, serve } from './serve.ts';

const open: Serving[] = [];
afterEach(async () => {
  await Promise.all(open.splice(0).map((serving) => serving.close()));
});

const store = (): Store => {
  let id = 0;
  return openMemoryStore({ clock: () => 7, dice: (bytes) => new Uint8Array(bytes).fill(++id) });
};

const start = async (options: Partial<ServeOptions> = {}): Promise<Serving> => {
  const serving = await serve({ store: store(), port: 0, log: () => {}, ...options });
  open.push(serving);
  return serving;
};

const posting = (body: NonNullable<RequestInit['body']>) => ({
  method: 'POST',
  headers: { 'content-type': 'application/json' },
  body,
});

/** Says exactly these bytes to the server and reads to the end: no client tidies them. */
const say = (port: number, text: string): Promise<string> =>
  new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () => socket.end(text));
    let answer = '';
    socket.on('data', (piece) => (answer += piece.toString('latin1')));
    socket.on('close', () => resolve(answer));
    socket.on('error', reject);
  });

describe('the server behind a socket', () => {
  it('answers the laptop without a token, under the address that it gives', async () => {
    const { url } = await start();
    expect(url).toMatch(/^http:\/\/localhost:\d+\/$/);
    const made = await fetch(`${url.replace('localhost', '127.0.0.1')}api/projects`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ name: 'Dunlin', file: '{"wall_mm": 1.50}' }),
    });
    expect([made.status, await made.json()]).toMatchObject([201, { version: { file: '{"wall_mm": 1.50}' } }]);
  });

  it('deletes and brings back through a socket, where a request without a body has no length', async () => {
    const { url } = await start();
    const projects = `${url.replace('localhost', '127.0.0.1')}api/projects`;
    const { project } = await (await fetch(projects, posting('{"name": "Dunlin", "file": "{}"}'))).json();
    expect((await fetch(`${projects}/${project.id}`, { method: 'DELETE' })).status).toBe(200);
    expect((await (await fetch(projects)).json()).projects).toEqual([]);
    expect((await fetch(`${projects}/${project.id}/restore`, posting('{}'))).status).toBe(200);
    expect((await (await fetch(projects)).json()).projects).toHaveLength(1);
  });

  it('reads a body that comes in pieces without saying its length, and stops at its limit', async () => {
    const { url } = await start();
    const projects = `${url.replace('localhost', '127.0.0.1')}api/projects`;
    const inPieces = (text: string) => ({
      ...posting(new ReadableStream({ start: (out) => (out.enqueue(Buffer.from(text)), out.close()) })),
      duplex: 'half' as const,
    });
    expect((await fetch(projects, inPieces('{"name": "Dunlin", "file": "{}"}'))).status).toBe(201);
    const long = JSON.stringify({ name: 'Dunlin', file: ' '.repeat(4 << 20) });
    expect((await fetch(projects, inPieces(long))).status).toBe(413);
  });

  it('says in a sentence that its port is taken, and by what to do', async () => {
    const { port } = await start();
    await expect(start({ port })).rejects.toThrow(
      `Port ${port} is taken, perhaps by this program in another window: close that one, or choose another port, e.g. PORT=${port + 1}.`,
    );
  });

  it('says in a sentence that it has no such address', async () => {
    await expect(start({ host: '192.0.2.77' })).rejects.toThrow(/This machine has no address 192\.0\.2\.77/);
  });

  it('is not shared unless that is asked for, and then says under which addresses', async () => {
    expect((await start()).addresses).toEqual([]);
    const shared = await start({ host: '0.0.0.0' });
    expect(shared.addresses.every((address) => address.endsWith(`:${shared.port}`))).toBe(true);
    expect(shared.url).toBe(`http://localhost:${shared.port}/`);
  });

  it('refuses a wrong Host, a path that climbs, and a request that is none', async () => {
    const { port } = await start({ webDir: new URL('.', import.meta.url).pathname });
    const request = (path: string, host: string) =>
      `GET ${path} HTTP/1.1\r\nHost: ${host}\r\nConnection: close\r\n\r\n`;
    expect(await say(port, request('/api/projects', 'evil.example'))).toMatch(/^HTTP\/1\.1 421 /);
    expect(await say(port, request('/../../package.json', `127.0.0.1:${port}`))).toMatch(
      /^HTTP\/1\.1 4\d\d /,
    );
    expect(await say(port, '\0\0\0\0\r\n\r\n')).toMatch(/^HTTP\/1\.1 400 /);
    expect(await say(port, request('/api/health', `127.0.0.1:${port}`))).toMatch(/^HTTP\/1\.1 200 /);
  });

  it('serves the built page, and says so when it is not built', async () => {
    const { port } = await start({ webDir: '/nowhere/web' });
    expect((await fetch(`http://127.0.0.1:${port}/`)).status).toBe(503);
    const { port: other } = await start({ webDir: new URL('routes', import.meta.url).pathname });
    expect((await fetch(`http://127.0.0.1:${other}/projects.ts`)).status).toBe(200);
  });

  it('streams changes, and ends the streams when it closes', async () => {
    const [base, serving] = [store(), []] as [Store, Serving[]];
    serving.push(await start({ store: base }));
    const answer = await fetch(`http://127.0.0.1:${serving[0].port}/api/changes`);
    const reader = answer.body?.pipeThrough(new TextDecoderStream()).getReader();
    expect((await reader?.read())?.value).toContain('event: ready');
    base.projects.create({ name: 'Dunlin', file: '{}' });
    expect((await reader?.read())?.value).toContain('"kind":"created"');
    await serving[0].close();
    expect((await reader?.read())?.done).toBe(true);
  });

  it('lets go of a stream whose window has closed', async () => {
    const watching = new Set<number>();
    const base = store();
    const changes: Store['changes'] = {
      ...base.changes,
      watch: (listener) => {
        watching.add(1);
        const stop = base.changes.watch(listener);
        return () => {
          watching.delete(1);
          stop();
        };
      },
    };
    const { port } = await start({ store: { ...base, changes } });
    const gone = new AbortController();
    const answer = await fetch(`http://127.0.0.1:${port}/api/changes`, { signal: gone.signal });
    await answer.body?.getReader().read();
    expect(watching.size).toBe(1);
    gone.abort();
    while (watching.size > 0) await new Promise(setImmediate);
    expect(watching.size).toBe(0);
  });
});
