/** The built page, read once at the start: a request looks up a name in a list and never reaches the file system. */
import { readFileSync, readdirSync } from 'node:fs';
import { extname, join, relative, sep } from 'node:path';
import type { MiddlewareHandler } from 'hono';
import { sha256 } from '../store/hash.ts';
import type { Env } from './env.ts';

export interface PageFile {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly type: string;
  readonly etag: string;
}

/** By path as asked for, e.g. `/assets/main-1a2b.js`. */
export type Page = ReadonlyMap<string, PageFile>;

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.txt': 'text/plain; charset=utf-8',
};

/** Reads every file under `dir`; links are left out. An absent folder is an empty page. */
export const readPage = (dir: string): Page => {
  const entries = readdirSync(dir, { recursive: true, withFileTypes: true, encoding: 'utf8' });
  return new Map(
    entries
      .filter((entry) => entry.isFile())
      .map((entry) => {
        const file = join(entry.parentPath, entry.name);
        const bytes = Uint8Array.from(readFileSync(file));
        const type = TYPES[extname(entry.name)] ?? 'application/octet-stream';
        const path = `/${relative(dir, file).split(sep).join('/')}`;
        return [path, { bytes, type, etag: `"${sha256(bytes).slice(0, 32)}"` }] as const;
      }),
  );
};

const NOT_BUILT = 'The page is not built yet: run `npm start` in the folder of the program.\n';

/** A path without a dot is a place within the page, which finds its own way there. */
const isPlace = (path: string): boolean => !path.slice(path.lastIndexOf('/')).includes('.');

export const servePage =
  (page: Page): MiddlewareHandler<Env> =>
  async (c, next) => {
    if (c.req.method !== 'GET' && c.req.method !== 'HEAD') return next();
    if (page.size === 0) return c.text(NOT_BUILT, 503);
    const { path } = c.req;
    const file = page.get(path) ?? (isPlace(path) ? page.get('/index.html') : undefined);
    if (!file) return next();
    // Names under /assets/ carry a digest of what they hold.
    c.header('Cache-Control', path.startsWith('/assets/') ? 'max-age=31536000, immutable' : 'no-cache');
    c.header('ETag', file.etag);
    if (c.req.header('if-none-match') === file.etag) return c.body(null, 304);
    return c.body(file.bytes, 200, { 'Content-Type': file.type });
  };
