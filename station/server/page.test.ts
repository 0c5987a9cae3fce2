import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Page, readPage } from './page.ts';
import { ask, askFromNetwork, scene } from './visitor.ts';

let outer: string;
let page: Page;
beforeAll(() => {
  outer = mkdtempSync(join(tmpdir(), 'hoopwright-page-'));
  const dir = join(outer, 'web');
  mkdirSync(join(dir, 'assets'), { recursive: true });
  writeFileSync(join(outer, 'secret.txt'), 'kept apart');
  writeFileSync(
    join(dir, 'index.html'),
    '<!doctype html><script type="module" src="/assets/main-1a.js"></script>',
  );
  writeFileSync(join(dir, 'assets', 'main-1a.js'), 'export {};');
  symlinkSync(join(outer, 'secret.txt'), join(dir, 'link.txt'));
  page = readPage(dir);
});
afterAll(() => {
  rmSync(outer, { recursive: true });
});

describe('the page', () => {
  it('is served at the root and at every place within it, also to somebody who has not entered yet', async () => {
    for (const path of ['/', '/projects/7', '/index.html']) {
      const answer = await askFromNetwork(scene({ page }), path);
      expect([path, answer.status, answer.headers.get('content-type')]).toEqual([
        path,
        200,
        'text/html; charset=utf-8',
      ]);
      expect(await answer.text()).toContain('<!doctype html>');
    }
  });

  it('serves a file with its type, for good where its name holds its digest', async () => {
    const answer = await ask(scene({ page }), '/assets/main-1a.js');
    expect(await answer.text()).toBe('export {};');
    expect(answer.headers.get('content-type')).toBe('text/javascript; charset=utf-8');
    expect(answer.headers.get('cache-control')).toContain('immutable');
    expect((await ask(scene({ page }), '/')).headers.get('cache-control')).toBe('no-cache');
  });

  it('is not sent again to a browser that has it', async () => {
    const etag = (await ask(scene({ page }), '/')).headers.get('etag') ?? '';
    const again = await ask(scene({ page }), '/', { headers: { 'if-none-match': etag } });
    expect([again.status, await again.text()]).toEqual([304, '']);
  });

  it.each([
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/assets/..\\..\\secret.txt',
    '/link.txt',
    '//etc/passwd.txt',
    '/assets/main-1a.js%00.html',
    '/secret.txt',
    '/assets/none.js',
  ])('does not lead to the file system by %s', async (path) => {
    const answer = await ask(scene({ page }), path);
    expect(answer.status).toBe(404);
    expect(await answer.text()).not.toContain('kept apart');
  });

  it('that is not built says what to do', async () => {
    const answer = await ask(scene(), '/');
    expect([answer.status, await answer.text()]).toEqual([503, expect.stringContaining('npm start')]);
  });

  it('takes no writing', async () => {
    expect((await ask(scene({ page }), '/', { method: 'POST' })).status).toBe(404);
  });
});
