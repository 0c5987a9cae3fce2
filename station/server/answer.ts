/** What the server answers when it cannot do what was asked: always a list of issues, never a stack. */
import type { Issue } from '@hoopwright/wire/issue';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import { Trouble, type TroubleKind } from '../driver/base.ts';
import type { Asked } from './env.ts';

export const refuse = (c: Asked, status: ContentfulStatusCode, ...issues: readonly Issue[]): Response =>
  c.json({ issues }, status);

export const missing = (c: Asked, what: string): Response =>
  refuse(c, 404, {
    path: c.req.path,
    expected: `${what} that is there`,
    received: 'nothing under this name',
    suggestion: 'it was deleted or the address is mistyped; open the list of projects',
  });

const TROUBLES: Readonly<
  Record<TroubleKind, { status: ContentfulStatusCode; expected: string; received: string }>
> = {
  full: { status: 507, expected: 'room on the disk', received: 'a full disk' },
  locked: { status: 503, expected: 'the project base for itself', received: 'a base that is held' },
  'read-only': { status: 500, expected: 'a base that can be written', received: 'one that cannot' },
  broken: { status: 500, expected: 'a whole project base', received: 'a damaged one' },
};

/** A trouble of the base is told with what to do; a mistake of the program goes to `log` and is only owned up to here. */
export const failed = (error: unknown, c: Asked, log: (error: unknown) => void): Response => {
  if (error instanceof Trouble) {
    const { status, expected, received } = TROUBLES[error.kind];
    return refuse(c, status, { path: 'the project base', expected, received, suggestion: error.message });
  }
  log(error);
  return refuse(c, 500, {
    path: c.req.path,
    expected: 'an answer',
    received: 'a mistake in the program',
    suggestion: 'nothing was saved; see the window in which the server runs',
  });
};
