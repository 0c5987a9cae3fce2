import { describe, expect, it } from 'vitest';
import { Trouble } from '../driver/base.ts';
import { openMemoryStore } from '../store/memory/open.ts';
import { HOST, NETWORK_HOST, type Scene, ask, askFromNetwork, jsonOf, scene } from './visitor.ts';

const create = { name: 'Dunlin', file: '{"wall_mm": 1.50}' };

/** The cookie that a link of that role gives. */
const cookieOf = async (here: Scene, role: 'viewer' | 'writer'): Promise<{ cookie: string; id: string }> => {
  const { token, secret } = here.store.tokens.make({ label: `${role} by the pump`, role });
  const entered = await askFromNetwork(here, '/api/entrance', { body: { token: secret } });
  expect(entered.status).toBe(200);
  return { cookie: (entered.headers.get('set-cookie') ?? '').split(';')[0], id: token.id };
};

describe('the Host and the Origin', () => {
  it.each(['evil.example', 'localhost', 'localhost:8418', `evil.example@${HOST}`, ''])(
    'a request for the host "%s" is refused, as after a rebinding',
    async (host) => {
      const answer = await ask(scene(), '/api/projects', { headers: { host } });
      expect(answer.status).toBe(421);
    },
  );

  it.each([
    ['another page', { origin: 'https://evil.example' }],
    ['a page on another port of this laptop', { origin: 'http://localhost:3000' }],
    ['a page without an origin', { origin: 'null' }],
    ['a page over TLS under our name', { origin: `https://${HOST}` }],
    ['a picture or script of another page', { 'sec-fetch-site': 'cross-site' }],
    ['a page of a neighbouring name', { 'sec-fetch-site': 'same-site' }],
  ])('a request by %s is refused, reading as well as writing', async (_, headers) => {
    const here = scene();
    expect((await ask(here, '/api/projects', { headers })).status).toBe(403);
    expect((await ask(here, '/api/projects', { headers, body: create })).status).toBe(403);
    expect(here.store.projects.list('kept')).toEqual([]);
  });

  it('our own page and a program without a browser are served', async () => {
    const own = { origin: `http://${HOST}`, 'sec-fetch-site': 'same-origin' };
    expect((await ask(scene(), '/api/projects', { headers: own, body: create })).status).toBe(201);
    expect((await ask(scene(), '/api/projects', { body: create })).status).toBe(201);
  });

  it('no other page is ever told that it may', async () => {
    const headers = { origin: 'https://evil.example', 'access-control-request-method': 'POST' };
    const answer = await ask(scene(), '/api/projects', { method: 'OPTIONS', headers });
    expect(answer.status).toBe(403);
    expect(answer.headers.get('access-control-allow-origin')).toBeNull();
  });
});

describe('every answer', () => {
  it.each(['/api/health', '/', '/nowhere.js', '/api/nowhere'])(
    'from %s forbids what a page must not do',
    async (path) => {
      const { headers } = await ask(scene(), path);
      const policy = headers.get('content-security-policy') ?? '';
      expect(policy).toContain("default-src 'none'");
      expect(policy).toContain("script-src 'self'");
      expect(policy).toContain("style-src 'self'");
      expect(policy).toContain("frame-ancestors 'none'");
      expect(policy).not.toContain('unsafe');
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('x-frame-options')).toBe('DENY');
      expect(headers.get('referrer-policy')).toBe('no-referrer');
      expect(headers.get('cross-origin-resource-policy')).toBe('same-origin');
    },
  );

  it('from the interface stays in no cache', async () => {
    for (const path of ['/api/projects', '/api/nowhere']) {
      expect((await ask(scene(), path)).headers.get('cache-control')).toBe('no-store');
    }
  });
});

describe('from the network', () => {
  it('nothing is read or written without a token', async () => {
    const here = scene();
    const { id } = here.store.projects.create(create).project;
    for (const path of [
      '/api/health',
      '/api/projects',
      `/api/projects/${id}`,
      '/api/changes',
      '/api/tokens',
    ]) {
      const answer = await askFromNetwork(here, path);
      expect([path, answer.status]).toEqual([path, 401]);
      expect(await answer.text()).not.toContain('Dunlin');
    }
    expect((await askFromNetwork(here, '/api/projects', { body: create })).status).toBe(401);
    expect((await askFromNetwork(here, `/api/projects/${id}`, { method: 'DELETE' })).status).toBe(401);
  });

  it.each(['::ffff:192.0.2.99', '10.0.0.4', '127.0.0.1.evil', '2001:db8::1', ''])(
    'the address "%s" is not the laptop',
    async (from) => {
      expect((await ask(scene(), '/api/projects', { from })).status).toBe(401);
    },
  );

  it.each(['127.0.0.1', '::1', '::ffff:127.0.0.1', '127.8.9.10'])(
    'the address %s is the laptop',
    async (from) => {
      expect((await ask(scene(), '/api/projects', { from })).status).toBe(200);
    },
  );

  it('somebody behind a proxy on the laptop is not the laptop', async () => {
    const headers = { 'x-forwarded-for': '203.0.113.5' };
    expect((await ask(scene(), '/api/projects', { headers })).status).toBe(401);
  });

  it("a viewer's link reads and cannot write", async () => {
    const here = scene();
    const { id } = here.store.projects.create(create).project;
    const { cookie } = await cookieOf(here, 'viewer');
    expect((await askFromNetwork(here, `/api/projects/${id}`, { cookie })).status).toBe(200);
    const writes: [string, string, unknown][] = [
      ['POST', '/api/projects', create],
      ['POST', '/api/projects/import', {}],
      ['POST', `/api/projects/${id}/versions`, { basedOn: 1, file: '{}' }],
      ['POST', `/api/projects/${id}/undo`, { from: 1 }],
      ['POST', `/api/projects/${id}/attachments`, { name: 'a', base64: '' }],
      ['PATCH', `/api/projects/${id}`, { name: 'x' }],
      ['DELETE', `/api/projects/${id}`, undefined],
      ['POST', '/api/tokens', { label: 'me', role: 'writer' }],
    ];
    for (const [method, path, body] of writes) {
      const answer = await askFromNetwork(here, path, { method, body, cookie });
      expect([method, path, answer.status]).toEqual([method, path, 403]);
    }
    expect(here.store.projects.open(id)?.version.file).toBe(create.file);
  });

  it("a writer's link writes, and neither sees nor makes links", async () => {
    const here = scene();
    const { cookie } = await cookieOf(here, 'writer');
    expect((await askFromNetwork(here, '/api/projects', { cookie, body: create })).status).toBe(201);
    expect((await askFromNetwork(here, '/api/tokens', { cookie })).status).toBe(403);
    const more = await askFromNetwork(here, '/api/tokens', { cookie, body: { label: 'x', role: 'writer' } });
    expect(more.status).toBe(403);
  });

  it('a link that was revoked at the laptop opens nothing from then on', async () => {
    const here = scene();
    const { cookie, id } = await cookieOf(here, 'viewer');
    expect((await askFromNetwork(here, '/api/projects', { cookie })).status).toBe(200);
    expect((await ask(here, `/api/tokens/${id}`, { method: 'DELETE' })).status).toBe(200);
    expect((await askFromNetwork(here, '/api/projects', { cookie })).status).toBe(401);
  });

  it('the cookie is kept from scripts and other sites, and a wrong token gives none', async () => {
    const here = scene();
    const { secret } = here.store.tokens.make({ label: 'phone', role: 'viewer' });
    const entered = await askFromNetwork(here, '/api/entrance', { body: { token: secret } });
    expect(await jsonOf(entered)).toEqual({ who: 'link', role: 'viewer', label: 'phone' });
    const cookie = entered.headers.get('set-cookie') ?? '';
    expect(cookie).toMatch(/; HttpOnly/);
    expect(cookie).toMatch(/; SameSite=Strict/);
    const refused = await askFromNetwork(here, '/api/entrance', { body: { token: `${secret}x` } });
    expect([refused.status, refused.headers.get('set-cookie')]).toEqual([401, null]);
    expect(await refused.text()).not.toContain(secret);
  });

  it('a page is told who it is before it has entered, and can go out again', async () => {
    const here = scene();
    expect(await jsonOf(await askFromNetwork(here, '/api/entrance'))).toEqual({ who: 'nobody' });
    const { cookie } = await cookieOf(here, 'viewer');
    const seen = await jsonOf(await askFromNetwork(here, '/api/entrance', { cookie }));
    expect(seen).toEqual({ who: 'link', role: 'viewer', label: 'viewer by the pump' });
    const out = await askFromNetwork(here, '/api/entrance', { cookie, method: 'DELETE' });
    expect(out.headers.get('set-cookie')).toMatch(/Max-Age=0/);
    expect(await jsonOf(await ask(here, '/api/entrance'))).toEqual({ who: 'own' });
  });

  it('a link stands after the mark that browsers never send, and is shown once', async () => {
    const here = scene();
    const made = await jsonOf<{ links: string[]; token: { id: string } }>(
      await ask(here, '/api/tokens', { body: { label: 'phone', role: 'viewer' } }),
    );
    const secret = made.links[0].split('#')[1];
    expect(made.links).toEqual([`http://${NETWORK_HOST}/#${secret}`]);
    expect(here.store.tokens.check(secret)?.id).toBe(made.token.id);
    expect(await (await ask(here, '/api/tokens')).text()).not.toContain(secret);
  });

  it('tries to enter are slowed down before they are many', async () => {
    const here = scene();
    const enter = () => askFromNetwork(here, '/api/entrance', { body: { token: 'guess' } });
    const first = await Promise.all(Array.from({ length: 10 }, enter));
    expect(new Set(first.map(({ status }) => status))).toEqual(new Set([401]));
    const next = await enter();
    expect([next.status, next.headers.get('retry-after')]).toEqual([429, '5']);
    here.now += 5000;
    expect((await enter()).status).toBe(401);
    expect((await enter()).status).toBe(429);
  });

  it('one machine that asks without end is slowed down, and the laptop and the others are not', async () => {
    const here = scene();
    const { cookie } = await cookieOf(here, 'viewer');
    const asked = await Promise.all(
      Array.from({ length: 130 }, () => askFromNetwork(here, '/api/health', { cookie })),
    );
    expect(asked.filter(({ status }) => status === 429).length).toBeGreaterThan(5);
    expect((await ask(here, '/api/health')).status).toBe(200);
    expect((await askFromNetwork(here, '/api/health', { cookie, from: '192.0.2.100' })).status).toBe(200);
  });
});

describe('a body', () => {
  it.each([
    'text/plain',
    'application/x-www-form-urlencoded',
    'multipart/form-data',
    'application/jsonp',
    '',
  ])('of type "%s" is refused: a form of another page could send it', async (type) => {
    const here = scene();
    const answer = await ask(here, '/api/projects', { body: create, headers: { 'content-type': type } });
    expect(answer.status).toBe(415);
    expect(here.store.projects.list('kept')).toEqual([]);
  });

  it('that is too long is refused, whether or not it says its length', async () => {
    const file = JSON.stringify({ note: 'x'.repeat(4 << 20) });
    const body = JSON.stringify({ name: 'Dunlin', file });
    expect((await ask(scene(), '/api/projects', { body })).status).toBe(413);
    const headers = { 'content-length': String(body.length) };
    expect((await ask(scene(), '/api/projects', { body, headers })).status).toBe(413);
  });

  it('that is no JSON, or not what was wanted, comes back as issues', async () => {
    const broken = await ask(scene(), '/api/projects', { body: '{"name": "Dunlin",' });
    expect([broken.status, await jsonOf(broken)]).toMatchObject([
      422,
      { issues: [{ path: 'line 1, column 19' }] },
    ]);
    const misspelt = await ask(scene(), '/api/projects', { body: { nam: 'Dunlin', file: '{}' } });
    expect(await jsonOf(misspelt)).toMatchObject({
      issues: [{ path: 'nam', suggestion: 'did you mean name?' }],
    });
  });
});

describe('a failure', () => {
  const failing = (error: Error): Scene => {
    const store = openMemoryStore({ clock: () => 7, dice: (bytes) => new Uint8Array(bytes) });
    const projects = {
      ...store.projects,
      list: () => {
        throw error;
      },
    };
    return scene({ store: { ...store, projects } });
  };

  it.each([
    ['full', 507, /make room/],
    ['locked', 503, /close it/],
    ['read-only', 500, /check the rights/],
    ['broken', 500, /put a backup in its place/],
  ] as const)('because the base is %s says what to do', async (kind, status, suggestion) => {
    const answer = await ask(failing(new Trouble(kind, undefined)), '/api/projects');
    const { issues } = await jsonOf<{ issues: { suggestion: string }[] }>(answer);
    expect(answer.status).toBe(status);
    expect(issues[0].suggestion).toMatch(suggestion);
  });

  it('of the program is logged and shows no inside', async () => {
    const here = failing(new Error('secret plan at line 12'));
    const answer = await ask(here, '/api/projects');
    expect(answer.status).toBe(500);
    expect(await answer.text()).not.toContain('secret plan');
    expect(here.logged).toMatchObject([{ message: 'secret plan at line 12' }]);
  });
});
