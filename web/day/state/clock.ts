/** The laptop's clock as this page carries it on: ages grow here, whether or not anything is heard. */
import { create } from 'zustand';
import { type DayOnScreen, useDay } from './live.ts';

/** How often ages are written anew, ms. */
const BEAT = 250;

const useBeat = create<{ readonly at: number }>(() => ({ at: performance.now() }));
setInterval(() => useBeat.setState({ at: performance.now() }), BEAT);

type Heard = Pick<DayOnScreen, 'heard_ms' | 'heardAt' | 'replay' | 'link' | 'speed' | 'live'>;

/** @param at monotonic clock of this page, ms */
export const nowOf = ({ heard_ms, heardAt, replay, link, speed, live }: Heard, at: number): number =>
  replay || !live || link === 'closed' ? heard_ms : heard_ms + speed * Math.max(0, at - heardAt);

/** ms since 1970 by the laptop's clock. */
export function useNow(): number {
  const at = useBeat((beat) => beat.at);
  return useDay((day) => nowOf(day, Math.max(at, day.heardAt)));
}

/** s since the laptop was last heard. */
export function useSilence(): number {
  const at = useBeat((beat) => beat.at);
  return useDay(({ heardAt }) => Math.max(0, at - heardAt) / 1000);
}
