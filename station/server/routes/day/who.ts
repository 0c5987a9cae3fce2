/** Which role of the day asks, and which name its link has. */
import { type DayRole, type DayState, LAPTOP } from '@hoopwright/wire/day';
import type { Who } from '../../env.ts';

export interface Asker {
  readonly role: DayRole;
  /** Asked by the laptop's own page, which may open the screen of every role. */
  readonly own: boolean;
  /** Name that the link was made for. */
  readonly name?: string;
  /** Id under which it holds the director's role, if it does. */
  readonly id: string;
}

/** One directs at a time: the laptop, or the link to which the role was handed over. */
export function askerOf(who: Who, { about, crew }: DayState): Asker {
  if (who.kind !== 'token')
    return { role: crew.held === LAPTOP ? 'director' : 'note taker', own: who.kind === 'own', id: LAPTOP };
  const { id, role, label: name, record } = who.token;
  const given = { own: false, name, id };
  // One of the crew of another day looks on.
  if (record !== undefined && record !== about.record) return { role: 'viewer', ...given };
  if (crew.held === id) return { role: 'director', ...given };
  switch (role) {
    case 'director':
    case 'note taker':
      return { role: 'note taker', ...given };
    case 'pump':
      return { role: 'pump', ...given };
    case 'viewer':
    case 'writer':
    case 'source':
      return { role: 'viewer', ...given };
  }
}
