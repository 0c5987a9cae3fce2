/** Giving an order, and what was said of it. */
import type { Order } from '@hoopwright/wire/day';
import { create } from 'zustand';
import { ServerRefusal } from '../../state/server/server.ts';
import { say } from '../../words/day/say.ts';
import { dayServer } from './api.ts';
import { useDay } from './live.ts';

/** What the person is told after an order: that it was refused, and why. */
export const useTold = create<{ readonly told?: string | undefined }>(() => ({}));
export const tell = (told: string | undefined): void => useTold.setState({ told });

/** Undefined where it was refused: the person has been told. */
export async function give(order: Order): Promise<number | undefined> {
  try {
    const { seq } = await dayServer.order(useDay.getState().record, order);
    tell(undefined);
    return seq;
  } catch (error) {
    tell(refusal(error));
    return undefined;
  }
}

/** Why it was refused, in a sentence. */
export function refusal(error: unknown): string {
  if (!(error instanceof ServerRefusal)) return say('unreachable');
  const [first] = error.issues;
  if (first === undefined) return say('unreachable');
  const { expected, received, suggestion } = first;
  return suggestion === undefined
    ? say('refused', { expected, received })
    : say('refusedDo', { expected, received, suggestion });
}

const NAME = 'hoopwright name';

/** Who writes at this screen: the name of the link, the one typed here, or the one the day knows. */
export function useName(): string {
  const { name, state, role } = useDay();
  const typed = useTyped((t) => t.name);
  return name ?? typed ?? crewName(state?.crew, role) ?? say(`role ${role}`);
}

const useTyped = create<{ readonly name: string | undefined }>(() => ({
  name: localStorage.getItem(NAME) ?? undefined,
}));

export function nameMyself(name: string): void {
  const trimmed = name.trim();
  useTyped.setState({ name: trimmed === '' ? undefined : trimmed });
  if (trimmed === '') localStorage.removeItem(NAME);
  else localStorage.setItem(NAME, trimmed);
}

type Crew = NonNullable<ReturnType<typeof useDay.getState>['state']>['crew'];

const crewName = (crew: Crew | undefined, role: string): string | undefined =>
  role === 'director'
    ? crew?.director
    : role === 'note taker'
      ? crew?.noteTaker
      : role === 'pump'
        ? crew?.pump
        : undefined;
