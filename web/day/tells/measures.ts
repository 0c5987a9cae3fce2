/** What is measured at no pressure, in the order in which a team goes round the tank. */
import type { DayState, Measure } from '@hoopwright/wire/day';

export interface Prompt {
  readonly what: Measure['what'];
  readonly place?: string;
}

/** Girths that the plan reads, wall at each, height, mass, litres to fill. */
export function promptsOf({ plan, channels }: DayState): Prompt[] {
  const planned = plan?.plan.places.filter(({ reads }) => reads === 'girth').map(({ name }) => name);
  const girths =
    planned ?? channels.filter(({ channel }) => channel.reads === 'girth').map(({ channel }) => channel.name);
  return [
    ...girths.map((place): Prompt => ({ what: 'girth', place })),
    ...girths.map((place): Prompt => ({ what: 'wall', place })),
    { what: 'height' },
    { what: 'mass' },
    { what: 'fill' },
  ];
}

/** The last one counts: a measure that is taken again stands beside the first, and is not taken for it. */
export const measured = (
  state: DayState,
  { what, place }: Prompt,
  when: Measure['when'],
): Measure | undefined =>
  state.measures.findLast((one) => one.what === what && one.place === place && one.when === when);

export const nextPrompt = (state: DayState, when: Measure['when']): Prompt | undefined =>
  promptsOf(state).find((prompt) => measured(state, prompt, when) === undefined);
