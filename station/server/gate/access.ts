/** Who asks, and may they: the laptop's own page anything, a writer's link edits, a viewer's link reads. */
import type { MiddlewareHandler } from 'hono';
import { deleteCookie, getCookie, setCookie } from 'hono/cookie';
import type { Token } from '@hoopwright/wire/project';
import type { Tokens } from '../../store/store.ts';
import { refuse } from '../answer.ts';
import { type Asked, type Env, type Who, isLoopback, remoteOf } from '../env.ts';

/** What a proxy adds. One that runs on the laptop would make the whole network look like the laptop. */
const FORWARDED = ['forwarded', 'x-forwarded-for', 'x-real-ip', 'via'];

const COOKIE_DAYS = 7;

/** Browsers send cookies to every port of a host, so the name tells two servers on one host apart. */
const cookieName = (c: Asked): string => `hoopwright-${c.req.header('host')?.split(':').at(-1) ?? ''}`;

export const letIn = (c: Asked, secret: string): void =>
  setCookie(c, cookieName(c), secret, {
    httpOnly: true,
    sameSite: 'Strict',
    path: '/',
    maxAge: COOKIE_DAYS * 24 * 3600,
  });

export const letOut = (c: Asked): void => void deleteCookie(c, cookieName(c), { path: '/' });

export const whoAsks =
  (tokens: Tokens): MiddlewareHandler<Env> =>
  async (c, next) => {
    c.set('who', whoOf(c, tokens));
    await next();
  };

const whoOf = (c: Asked, tokens: Tokens): Who => {
  const direct = FORWARDED.every((name) => c.req.header(name) === undefined);
  if (direct && isLoopback(remoteOf(c))) return { kind: 'own' };
  const secret = bearerOf(c.req.header('authorization')) ?? getCookie(c, cookieName(c));
  const token = secret === undefined ? undefined : tokens.check(secret);
  return token ? { kind: 'token', token } : { kind: 'nobody' };
};

/** A source has no browser: it sends its token with every request (RFC 6750). */
const bearerOf = (header: string | undefined): string | undefined =>
  /^Bearer (\S{1,200})$/.exec(header ?? '')?.[1];

/** What one of the crew may send; which of it the role may, the day says. A source sends its readings and sees nothing. */
const CREW_SENDS = /^\/api\/days\/([^/]+)\/(?:orders|photos)$/;
const SOURCE_SENDS = /^\/api\/days\/([^/]+)\/readings\/[^/]+$/;

/** To the day that the link was made for, and to no other. */
const mayWrite = ({ role, record }: Token, path: string): boolean => {
  const sendsTo = (place: RegExp): boolean => record !== undefined && place.exec(path)?.[1] === record;
  switch (role) {
    case 'writer':
      return !path.startsWith('/api/days');
    case 'viewer':
      return false;
    case 'director':
    case 'note taker':
    case 'pump':
      return sendsTo(CREW_SENDS);
    case 'source':
      return sendsTo(SOURCE_SENDS);
  }
};

/** From the network nothing is read without a token, and nothing written with a viewer's. */
export const accessCheck: MiddlewareHandler<Env> = async (c, next) => {
  const who = c.get('who');
  if (c.req.path === '/api/entrance' || who.kind === 'own') return next();
  if (who.kind === 'nobody')
    return turnedAway(c, 401, 'a link with a token', 'none, or one that was revoked');
  const reads = c.req.method === 'GET' || c.req.method === 'HEAD';
  const may = reads ? who.token.role !== 'source' : mayWrite(who.token, c.req.path);
  if (may) return next();
  return turnedAway(c, 403, 'a link for writing', 'a link for reading');
};

/** What only the laptop itself may do. */
export const ownOnly: MiddlewareHandler<Env> = async (c, next) => {
  if (c.get('who').kind === 'own') return next();
  return turnedAway(c, 403, 'the laptop on which the server runs', 'another machine');
};

const turnedAway = (c: Asked, status: 401 | 403, expected: string, received: string): Response =>
  refuse(c, status, {
    path: 'access',
    expected,
    received,
    suggestion: 'ask at the laptop for a link',
  });
