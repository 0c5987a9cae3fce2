/** Lettering with figures in it: the unit set lighter, the value kept so that a page can edit it in place. */
import { type Figure, figure, statedFigure } from '../figure/figure.ts';
import type { Manner } from '../figure/manner.ts';
import type { Key } from '../words/english.ts';
import { cut } from '../words/sentence.ts';
import type { Editable, Run } from './mark.ts';

/** `stated`: as somebody wrote it, no zeros added. Otherwise with the fixed digits of its quantity. */
export interface Shown extends Editable {
  readonly stated?: boolean;
  /** Without its unit, where the next figure of the sentence carries it. */
  readonly bare?: boolean;
}

/** "600 mm", the unit faint. */
export function figureRuns(manner: Manner, shown: Shown): Run[] {
  const { quantity, value, path } = shown;
  const text = (shown.stated === true ? statedFigure : figure)(manner, quantity, value);
  const number: Run = {
    text: text.text,
    figure: { quantity, value, ...(path === undefined ? {} : { path }) },
  };
  return shown.bare === true ? [number] : [number, ...unitRuns(text)];
}

export const unitRuns = ({ unit }: Figure): Run[] =>
  unit === '' ? [] : [{ text: unit === '°' ? unit : ` ${unit}`, tone: 'faint' }];

/** A sentence of the catalogue with figures, or plain texts, in its placeholders. */
export function sentenceRuns(
  manner: Manner,
  key: Key,
  filling: Readonly<Record<string, Shown | string>> = {},
): Run[] {
  return cut(manner, key).flatMap((piece): Run[] => {
    if ('text' in piece) return [{ text: piece.text }];
    const given = filling[piece.hole];
    if (given === undefined)
      throw new Error(`the sentence "${key}" wants {${piece.hole}}, which was not given`);
    return typeof given === 'string' ? [{ text: given }] : figureRuns(manner, given);
  });
}
