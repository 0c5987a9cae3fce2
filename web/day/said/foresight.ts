/** What is foreseen now of the end of the final hold, out of the record's last forecast. */
import type { Manner } from '@hoopwright/report/figure';
import { figuresFor } from '@hoopwright/report/plan';
import type { DayState } from '@hoopwright/wire/day';
import { say } from '../../words/day/say.ts';
import { growthText } from './figures.ts';

interface Told {
  readonly median: number;
  readonly low: number | undefined;
  readonly high: number | undefined;
}

/** A range of the forecast; undefined where it has none, or where half of such tanks give way. */
function toldIn({ foresight }: DayState, key: string): Told | undefined {
  const range = foresight?.body[key];
  if (typeof range !== 'object' || range === null || !('median' in range) || !('wide' in range))
    return undefined;
  const { median, wide } = range;
  if (typeof median !== 'number' || !Array.isArray(wide)) return undefined;
  const [low, high] = wide.map((end: unknown) => (typeof end === 'number' ? end : undefined));
  return { median, low, high };
}

/** Undefined before anything is foreseen, or where half of such tanks give way. */
export function foreseenNow(state: DayState, manner: Manner): string | undefined {
  const told = toldIn(state, 'growth_percent');
  if (told === undefined) return undefined;
  const { median, low, high } = told;
  const growth = growthText(manner, median);
  if (low === undefined) return say('foreseenEnd', { growth });
  return high === undefined
    ? say('foreseenEndOpen', { growth, low: growthText(manner, low) })
    : say('foreseenEndRange', { growth, low: growthText(manner, low), high: growthText(manner, high) });
}

/** The same of the long seam; undefined for a tank without one. */
export function seamForeseen(state: DayState, manner: Manner): string | undefined {
  const told = toldIn(state, 'seam_percent');
  if (told === undefined) return undefined;
  const { median, low = 0, high } = told;
  const percent = (strain: number): string => `${figuresFor(manner).plain(strain, 1)} %`;
  const figures = { strain: percent(median), low: percent(low) };
  return high === undefined
    ? say('foreseenSeamOpen', figures)
    : say('foreseenSeam', { ...figures, high: percent(high) });
}
