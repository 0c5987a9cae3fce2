/** Lower panel: the whole way, so that the margin to the maximum is seen. */
import type { Limit } from '@hoopwright/core/stretch';
import type { Manner } from '../figure/manner.ts';
import { area, hatch, lettering, type Mark, type Run, SMALL, stroke } from '../sheet/mark.ts';
import { runsWidth } from '../sheet/measure.ts';
import { sentenceRuns } from '../sheet/runs.ts';
import type { Key } from '../words/english.ts';
import { sentence } from '../words/sentence.ts';
import { axisMarks, lineOn, onPanel, type Panel, xOf, yOf } from './panel.ts';
import { branchesOf, byLargest, type CurveForecast, placesOf } from './path.ts';

export const LIMIT_WORDS: Readonly<Record<Limit['kind'], Key>> = {
  'pressure maximum': 'maximumPressure',
  'local necking': 'maximumNecking',
  seam: 'maximumSeam',
};

export function wholeMarks(
  panel: Panel,
  stretch: Panel,
  { forecast }: { readonly forecast: CurveForecast },
  manner: Manner,
): Mark[] {
  const { up, on } = branchesOf(forecast);
  const box = [
    [0, stretch.y.most],
    [stretch.x.most, stretch.y.most],
    [stretch.x.most, 0],
  ] as const;
  return [
    ...axisMarks(panel, {
      x: sentence(manner, 'axisWhole', { unit: panel.x.unit }),
      y: sentence(manner, 'axisPressure', { unit: panel.y.unit }),
    }),
    lettering([panel.left + 110, panel.top - 12], [{ text: sentence(manner, 'wholeTitle'), bold: true }], {
      of: 'whole title',
    }),
    stroke(
      'hidden',
      box.map((place) => onPanel(panel, place)),
      'stretch box',
    ),
    ...[
      lineOn(panel, 'bold', placesOf(up, byLargest, true), 'up to release'),
      lineOn(panel, 'narrow', placesOf(on, byLargest, false), 'on to the maximum'),
    ].filter((mark) => mark !== undefined),
    ...maximumMarks(panel, forecast, manner),
  ];
}

const STRIP = 12;

function maximumMarks(panel: Panel, { maximum, target }: CurveForecast, manner: Manner): Mark[] {
  if (maximum === undefined)
    return [
      lettering([panel.right - 6, panel.bottom - 8], sentence(manner, 'maximumNone'), {
        size: SMALL,
        anchor: 'end',
      }),
    ];
  const at = onPanel(panel, [maximum.growth, maximum.pressure]);
  const x = xOf(panel, maximum.growth);
  const edge = Math.min(x + STRIP, panel.right);
  const low = yOf(panel, 0);
  return [
    area(
      hatch('forbidden'),
      [
        [x, at[1]],
        [edge, at[1]],
        [edge, low],
        [x, low],
      ],
      'beyond the maximum',
    ),
    stroke(
      'narrow',
      [
        [x, at[1]],
        [x, low],
      ],
      'maximum',
    ),
    { kind: 'ring', at, radius: 3, line: 'narrow', filled: true, of: 'maximum' },
    ...limitWords(panel, { x, edge, low }, maximumLines(maximum, target, manner)),
  ];
}

function maximumLines(maximum: Limit, target: number | undefined, manner: Manner): Run[][] {
  const margin =
    target === undefined ? [] : [{ quantity: 'ratio', value: maximum.pressure / target } as const];
  return [
    sentenceRuns(manner, LIMIT_WORDS[maximum.kind], {
      pressure: { quantity: 'pressure', value: maximum.pressure },
    }),
    sentenceRuns(manner, 'maximumGrowth', { growth: { quantity: 'growth', value: maximum.growth } }),
    ...margin.map((ratio) => sentenceRuns(manner, 'marginLabel', { ratio })),
  ];
}

/** Left of the limit, or right of it where there is no room. */
function limitWords(
  panel: Panel,
  { x, edge, low }: { readonly x: number; readonly edge: number; readonly low: number },
  lines: readonly (readonly Run[])[],
): Mark[] {
  const width = Math.max(...lines.map((runs) => runsWidth({ runs, size: SMALL })));
  const before = x - 7 - width > panel.left + 8;
  return lines.map((runs, i) =>
    lettering([before ? x - 7 : edge + 6, low - 8 - (lines.length - 1 - i) * (SMALL + 4)], runs, {
      size: SMALL,
      clear: true,
      ...(before ? { anchor: 'end' } : {}),
      of: `maximum: line ${i + 1}`,
    }),
  );
}
