/** What is foreseen now of the end of the final hold, out of the record's last forecast. */
import type { Manner } from '@hoopwright/report/figure';
import type { DayState } from '@hoopwright/wire/day';
import { say } from '../../words/day/say.ts';
import { growthText } from './figures.ts';

/** Undefined before anything is foreseen, or where half of such tanks give way. */
export function foreseenNow({ foresight }: DayState, manner: Manner): string | undefined {
  const body = foresight?.body['growth_percent'];
  if (typeof body !== 'object' || body === null || !('median' in body) || !('wide' in body)) return undefined;
  const { median, wide } = body;
  if (typeof median !== 'number' || !Array.isArray(wide)) return undefined;
  const [low, high] = wide;
  const growth = growthText(manner, median);
  if (typeof low !== 'number') return say('foreseenEnd', { growth });
  return typeof high === 'number'
    ? say('foreseenEndRange', { growth, low: growthText(manner, low), high: growthText(manner, high) })
    : say('foreseenEndOpen', { growth, low: growthText(manner, low) });
}
