/** What a range adds to the answer. Without one it is said that the steel is assumed. */
import type { StretchRange } from '@hoopwright/core/stretch';
import { say } from '../figure/figure.ts';
import type { Manner } from '../figure/manner.ts';
import { reachText } from '../steel/quick.ts';
import { sentence } from '../words/sentence.ts';

export const steelBasis = (range: StretchRange | undefined, manner: Manner): string =>
  range === undefined
    ? sentence(manner, 'answerSteelAssumed')
    : sentence(manner, 'answerSteelRange', { steels: String(range.draws) });

/** Growth and its range after the stated holds, and after a final hold until the tank has settled. */
export function growthRange(range: StretchRange | undefined, manner: Manner): string[] {
  if (range === undefined) return [];
  const { stated, settled } = range;
  const growth = (x: number): string =>
    Number.isFinite(x) ? say(manner, 'growth', x) : sentence(manner, 'answerBurst');
  return [
    sentence(manner, 'answerGrowthRange', {
      low: growth(stated.growth.wide[0]),
      median: growth(stated.growth.median),
      high: growth(stated.growth.wide[1]),
      settledLow: growth(settled.growth.wide[0]),
      settledHigh: growth(settled.growth.wide[1]),
    }),
    ...(settled.bursts > 0
      ? [sentence(manner, 'answerBursts', { share: say(manner, 'share', settled.bursts) })]
      : []),
  ];
}

/** The pressure that 99 of 100 such tanks survive, and how far so many steels, and the tests of them, carry that. */
export function survival(range: StretchRange | undefined, manner: Manner): string[] {
  if (range === undefined) return [];
  const { value, assured } = range.settled.survived;
  const pressure = say(manner, 'pressure', value);
  return [
    assured === undefined
      ? sentence(manner, 'answerSurvives', { pressure })
      : sentence(manner, 'answerSurvivesAssured', {
          pressure,
          assured: say(manner, 'pressure', assured),
          steels: String(range.draws),
        }),
    reachText(manner),
  ];
}
