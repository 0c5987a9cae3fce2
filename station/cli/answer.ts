/** What a forecast says in words and pictures, made by `report`. */
import type { Forecast } from '@hoopwright/core/stretch';
import { curveSvg, drawingSvg, remarkSentence, standingNotes, tenLines } from '@hoopwright/report/answer';
import { USUAL_MANNER } from '@hoopwright/report/figure';
import { type RangeFile, rangeFile } from '@hoopwright/wire/forecast';
import { issueLine } from '@hoopwright/wire/issue';
import type { SteelRange } from '../range/steelRange.ts';

export interface Answer {
  readonly lines: readonly string[];
  readonly warnings: readonly string[];
  readonly notes: readonly string[];
  readonly range?: RangeFile;
  drawing(): string;
  curve(): string;
}

export function answerOf(result: Forecast, notes: readonly string[], steel?: SteelRange): Answer {
  const stretch = steel?.stretch;
  return {
    lines: tenLines(result, USUAL_MANNER, stretch),
    warnings: [
      ...result.remarks.map((remark) => remarkSentence(remark)),
      ...(steel?.read.issues ?? []).map(issueLine),
    ],
    notes: [...notes, ...standingNotes()],
    ...(stretch === undefined ? {} : { range: rangeFile(stretch) }),
    drawing: () => drawingSvg(result),
    curve: () => curveSvg(result, stretch === undefined ? {} : { range: stretch }),
  };
}
