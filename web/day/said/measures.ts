/** Measures in words and figures. */
import type { Manner } from '@hoopwright/report/figure';
import type { Measure } from '@hoopwright/wire/day';
import type { ChannelReads } from '@hoopwright/wire/reading';
import { say } from '../../words/day/say.ts';
import type { Prompt } from '../tells/measures.ts';
import { channelText } from './figures.ts';

/** The reading whose unit and digits a measure has. */
export const MEASURE_READS = {
  girth: 'girth',
  wall: 'wall',
  height: 'girth',
  mass: 'weight',
  fill: 'litres',
} as const satisfies Readonly<Record<Measure['what'], ChannelReads>>;

export function promptText({ what, place = '' }: Prompt): string {
  switch (what) {
    case 'girth':
      return say('measureGirth', { place });
    case 'wall':
      return say('measureWall', { place });
    case 'height':
      return say('measureHeight');
    case 'mass':
      return say('measureMass');
    case 'fill':
      return say('measureFill');
  }
}

export const howText = ({ what }: Prompt): string => say(HOW[what]);

const HOW = {
  girth: 'measureHowGirth',
  wall: 'measureHowWall',
  height: 'measureHowHeight',
  mass: 'measureHowMass',
  fill: 'measureHowFill',
} as const;

export const measureText = (measure: Measure | undefined, manner: Manner): string =>
  measure === undefined ? '–' : channelText(manner, MEASURE_READS[measure.what], measure.value);
