/** Who may talk to the server at all: the right Host, the right Origin; and what the browser may do with the answers. */
import type { MiddlewareHandler } from 'hono';
import { secureHeaders } from 'hono/secure-headers';
import { refuse } from '../answer.ts';
import type { Env } from '../env.ts';

/** No inline script or style, nothing from elsewhere, in nobody's frame. `data:` and `blob:` are for pictures alone. */
export const headers: MiddlewareHandler<Env> = secureHeaders({
  contentSecurityPolicy: {
    defaultSrc: ["'none'"],
    scriptSrc: ["'self'"],
    styleSrc: ["'self'"],
    fontSrc: ["'self'"],
    imgSrc: ["'self'", 'data:', 'blob:'],
    connectSrc: ["'self'"],
    workerSrc: ["'self'"],
    manifestSrc: ["'self'"],
    baseUri: ["'none'"],
    formAction: ["'none'"],
    frameAncestors: ["'none'"],
  },
  xFrameOptions: 'DENY',
  // Plain HTTP on a laptop: there is no certificate to insist on.
  strictTransportSecurity: false,
});

/**
 * A page elsewhere can point its own name at this address (rebinding), but it cannot make the browser say another Host.
 * @param hosts every `name:port` under which the server is meant to be reached
 */
export const hostCheck =
  (hosts: ReadonlySet<string>): MiddlewareHandler<Env> =>
  async (c, next) => {
    const host = c.req.header('host')?.toLowerCase();
    if (host !== undefined && hosts.has(host)) return next();
    return refuse(c, 421, {
      path: 'host',
      expected: `one of ${[...hosts].join(', ')}`,
      received: host ?? 'nothing',
      suggestion: 'open the address that the server printed at its start',
    });
  };

/** Requests that another page made are refused; those without an Origin come from no page, or from our own. */
export const originCheck: MiddlewareHandler<Env> = async (c, next) => {
  const own = `http://${c.req.header('host')?.toLowerCase()}`;
  const origin = c.req.header('origin')?.toLowerCase() ?? own;
  const site = c.req.header('sec-fetch-site') ?? 'same-origin';
  if (origin === own && (site === 'same-origin' || site === 'none')) return next();
  return refuse(c, 403, { path: 'origin', expected: own, received: origin === own ? site : origin });
};
