/** How far the quick tank behind the range is off the shell, and how far tests carry the curve it runs on. */
import { LAW_REACHES } from '@hoopwright/core/steel';
import { type Manner, USUAL_MANNER } from '../figure/manner.ts';
import { fixed, say } from '../figure/figure.ts';
import { sentence } from '../words/sentence.ts';
import { filled } from './filled.ts';

export interface QuickSaid {
  readonly steels: number;
  /** Percent of pressure from 1 % growth up, on shell solutions that were not fitted. */
  readonly error: { readonly held: number; readonly rms_percent: number; readonly most_percent: number };
}

export const quickText = ({ steels, error }: QuickSaid, manner: Manner = USUAL_MANNER): string =>
  filled('quick', {
    steels: String(steels),
    held: String(error.held),
    rms: `${fixed(manner, error.rms_percent, 2)} %`,
    most: `${fixed(manner, error.most_percent, 2)} %`,
  });

/** Up to which strain tests carry the flow curve. */
export const reachText = (manner: Manner = USUAL_MANNER): string =>
  sentence(manner, 'answerSurvivesOnContinuation', { strain: say(manner, 'strain', LAW_REACHES) });
