/** Where in the crew's pages this window is: /days, or /day/RECORD/SCREEN, a replay with ?replay. */
import type { DayRole } from '@hoopwright/wire/day';
import { create } from 'zustand';

export interface DayPlace {
  readonly record?: string | undefined;
  /** Screen that was chosen at the laptop; absent: that of the link. */
  readonly screen?: DayRole | undefined;
  readonly replay: boolean;
}

const SCREENS: Readonly<Record<string, DayRole>> = {
  director: 'director',
  notes: 'note taker',
  pump: 'pump',
  viewer: 'viewer',
};

const nameOf = (role: DayRole): string => (role === 'note taker' ? 'notes' : role);

export function placeOf(path: string, query: string): DayPlace {
  const [, day, record, screen = ''] = path.split('/');
  if (day !== 'day' || record === undefined || record === '') return { replay: false };
  return { record: decodeURIComponent(record), screen: SCREENS[screen], replay: /^\?replay\b/.test(query) };
}

export function addressOf({ record, screen, replay }: DayPlace): string {
  if (record === undefined) return '/days';
  const end = screen === undefined ? '' : `/${nameOf(screen)}`;
  return `/day/${encodeURIComponent(record)}${end}${replay ? '?replay' : ''}`;
}

export const usePlace = create<DayPlace>(() => placeOf(window.location.pathname, window.location.search));

window.addEventListener('popstate', () =>
  usePlace.setState(placeOf(window.location.pathname, window.location.search), true),
);

export function goTo(place: DayPlace): void {
  window.history.pushState(undefined, '', addressOf(place));
  usePlace.setState(place, true);
}
