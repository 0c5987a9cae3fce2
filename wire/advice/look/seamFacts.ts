/** What the long seam is strained by, now and at the end, by what is known of steel, seam and growth. */
import { largestWith, type QuickPath, type SeamForesight } from '@hoopwright/core/stretch';
import type { Facts, Read } from '../facts.ts';
import { bodyOf } from '../forecastBody.ts';

export interface SeamGivens {
  readonly seam: SeamForesight;
  /** Of a likely steel: how girths part hardly changes from steel to steel. */
  readonly path: QuickPath;
  /** Girths as they were last read, percent, and the names of those of the tank in its order. */
  readonly girths: readonly Read[];
  readonly names: readonly string[];
}

/** Undefined before a girth was read. The seam runs along the whole barrel: the place that has grown most counts. */
export function seamFacts({ seam, path, girths, names }: SeamGivens): Pick<Facts, 'seam'> {
  const [most] = girths
    .map(({ channel, value }) => ({
      channel,
      growth_percent: value,
      largest: largestWith(path, names.indexOf(channel), value / 100),
    }))
    .sort((a, b) => b.largest - a.largest);
  if (most === undefined || !(most.largest > 0)) return {};
  const { channel, growth_percent, largest } = most;
  return {
    seam: { channel, growth_percent, now: inPercent(seam.at(largest)), end: inPercent(seam.end) },
  };
}

const inPercent = (range: SeamForesight['end']) => bodyOf(range, (strain) => 100 * strain);
