/** How old a reading is, and whether anybody may go by it. */
import type { DayOnScreen } from '../state/live.ts';

export interface Aged {
  readonly age_s: number;
  /** Too old to go by, or nobody knows whether it is. */
  readonly old: boolean;
}

/** Age of a reading: too old when past its limit, or while the laptop is not heard. */
export const agedAt = (
  reading: { readonly wall_ms: number; readonly fresh_s: number },
  now_ms: number,
  link: DayOnScreen['link'],
): Aged => {
  const age_s = Math.max(0, (now_ms - reading.wall_ms) / 1000);
  return { age_s, old: age_s > reading.fresh_s || link === 'lost' || link === 'opening' };
};
