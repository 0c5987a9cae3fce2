/** The body of a request: JSON, no longer than its place allows, read strictly. */
import { type Message, readLongJson } from '@hoopwright/wire/project';
import type { MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { refuse } from '../answer.ts';
import type { Asked, Env } from '../env.ts';

const MB = 1 << 20;

/** Longest bodies, bytes: a tank file is some kB, an attachment 16 MB in base64, a project file several of those. */
const LONGEST = { usual: 3 * MB, attachment: 23 * MB, project: 128 * MB } as const;

const limit = (maxSize: number): MiddlewareHandler<Env> =>
  bodyLimit({
    maxSize,
    onError: (c) =>
      refuse(c, 413, { path: 'the body', expected: `${maxSize / MB} MB at most`, received: 'a longer one' }),
  });

const limits = {
  usual: limit(LONGEST.usual),
  attachment: limit(LONGEST.attachment),
  project: limit(LONGEST.project),
};

/** Bytes of a photo, as phones send them. */
export const PHOTO_TYPES = [
  'image/jpeg',
  'image/png',
  'image/webp',
  'image/heic',
  'image/heif',
  'application/octet-stream',
];

const isPhoto = (path: string): boolean => /^\/api\/days\/[^/]+\/photos$/.test(path);
/** Readings come without end, line by line; a line that is too long is dropped as it arrives. */
const isReadings = (path: string): boolean => /^\/api\/days\/[^/]+\/readings\/[^/]+$/.test(path);

export const limitBody: MiddlewareHandler<Env> = (c, next) => {
  const { path } = c.req;
  if (isReadings(path)) return next();
  if (isPhoto(path)) return limits.attachment(c, next);
  if (path === '/api/projects/import') return limits.project(c, next);
  return path.endsWith('/attachments') ? limits.attachment(c, next) : limits.usual(c, next);
};

/** Writing asks for JSON by name: a form or a plain text, which any page may send anywhere, is refused. */
export const jsonOnly: MiddlewareHandler<Env> = async (c, next) => {
  const writes = c.req.method === 'POST' || c.req.method === 'PATCH' || c.req.method === 'PUT';
  const type = c.req.header('content-type') ?? '';
  if (!writes || /^application\/json\s*(;|$)/i.test(type)) return next();
  const { path } = c.req;
  // Neither can be sent by a page elsewhere without asking first (Fetch, CORS-safelisted request headers).
  if (isPhoto(path) && PHOTO_TYPES.some((one) => type.toLowerCase().startsWith(one))) return next();
  if (isReadings(path) && /^application\/(x-ndjson|ndjson)\s*(;|$)/i.test(type)) return next();
  return refuse(c, 415, { path: 'content-type', expected: 'application/json', received: type || 'nothing' });
};

/** Reads the body as the message wanted, or answers what is wrong with it. */
export const bodyOf = async <T>(
  c: Asked,
  read: (value: unknown) => Message<T>,
): Promise<{ readonly value: T } | { readonly response: Response }> => {
  const json = readLongJson(await c.req.text());
  const message = json.ok ? read(json.value) : json;
  return message.ok ? { value: message.value } : { response: refuse(c, 422, ...message.issues) };
};
