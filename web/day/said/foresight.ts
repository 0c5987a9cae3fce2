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

/** Undefined before anything is foreseen, or where half of such tanks give way. With the long seam, where there is one. */
export function foreseenNow(state: DayState, manner: Manner): string | undefined {
  const told = toldIn(state, 'growth_percent');
  if (told === undefined) return undefined;
  const { median, low, high } = told;
  const growth = growthText(manner, median);
  if (low === undefined) return say('foreseenEnd', { growth });
  if (high === undefined) return say('foreseenEndOpen', { growth, low: growthText(manner, low) });
  const seam = toldIn(state, 'seam_percent');
  if (seam?.low === undefined || seam.high === undefined)
    return say('foreseenEndRange', { growth, low: growthText(manner, low), high: growthText(manner, high) });
  const { plain } = figuresFor(manner);
  return say('foreseenSeam', {
    growth,
    low: plain(low, 2),
    high: plain(high, 2),
    strain: `${plain(seam.median, 1)} %`,
    least: plain(seam.low, 1),
    most: plain(seam.high, 1),
  });
}
