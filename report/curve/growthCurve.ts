/**
 * The growth curve on a drawing sheet: pressure against girth growth and, beside it on the same pressures, against
 * volume; below, the whole way to the maximum. A pure function from values to a scene.
 */
import type { Tank } from '@hoopwright/core/tank';
import { sayStated } from '../figure/figure.ts';
import { type Manner, USUAL_MANNER } from '../figure/manner.ts';
import { FRAME, frame, SHEET_HEIGHT, SHEET_WIDTH } from '../sheet/frame.ts';
import { LARGE, lettering, type Mark, type Scene, SMALL } from '../sheet/mark.ts';
import { BLOCK_HEIGHT, BLOCK_WIDTH, type TitleBlock, titleBlock } from '../sheet/titleBlock.ts';
import { noteList } from '../sheet/noteList.ts';
import { sentence } from '../words/sentence.ts';
import { axisFor } from './axis.ts';
import type { Ranges } from './band.ts';
import { type Ceiling, PUBLISHED_CEILING } from './ceiling.ts';
import { girthMarks } from './girthPanel.ts';
import type { Panel } from './panel.ts';
import { type CurveForecast, whereReached } from './path.ts';
import { volumeMarks } from './volumePanel.ts';
import { wholeMarks } from './wholePanel.ts';

export interface CurveSheet {
  readonly forecast: CurveForecast;
  readonly tank: Pick<Tank, 'girths'>;
  /** Foreseen range, where one was computed. */
  readonly ranges?: Ranges;
  /** Growth left that published practice does not pass. */
  readonly ceiling?: Ceiling;
  readonly block: TitleBlock;
  readonly manner?: Manner;
}

const TOP = FRAME.top + 92;
const BOTTOM = 520;

export function growthCurve(sheet: CurveSheet): Scene {
  const manner = sheet.manner ?? USUAL_MANNER;
  const ceiling = sheet.ceiling ?? PUBLISHED_CEILING;
  const panels = panelsFor(sheet.forecast, ceiling, manner);
  const column = { left: FRAME.right - BLOCK_WIDTH + 4, width: BLOCK_WIDTH - 20 };
  const title = sentence(manner, 'curveTitle', { tank: sheet.block.title });
  return {
    width: SHEET_WIDTH,
    height: SHEET_HEIGHT,
    title,
    patches: [],
    marks: [
      ...frame(),
      ...heading(sheet, manner),
      ...girthMarks(panels.girth, sheet, ceiling, manner),
      ...volumeMarks(panels.volume, sheet, manner),
      ...wholeMarks(panels.whole, panels.girth, sheet, manner),
      ...noteList(column, FRAME.bottom - BLOCK_HEIGHT - 12, notesOf(sheet, ceiling, manner)).marks,
      ...titleBlock(
        sheet.block,
        { documentType: sentence(manner, 'curveType'), scale: '–', sheet: '1/1' },
        manner,
        [FRAME.right, FRAME.bottom],
      ),
    ],
  };
}

/** Boxes and round axes. The upper two show the stretch, the lower one the whole way. */
export function panelsFor(
  forecast: CurveForecast,
  ceiling: Ceiling,
  manner: Manner,
): { girth: Panel; volume: Panel; whole: Panel } {
  const way = forecast.path.filter((m) => m.phase !== 'release');
  const turn = forecast.held ?? forecast.arrived;
  const growth = axisFor(
    manner,
    'growth',
    Math.max(1.12 * ceiling.growth, 1.5 * (turn?.largest.growth ?? 0)),
    8,
  );
  const reach = (of: (m: CurveForecast['path'][number]) => number): number =>
    whereReached(way, (m) => m.largest.growth, growth.most, of);
  // Girths that grow a little less than the largest still leave through the right edge, where their names stand.
  const girths = forecast.path[0]?.girths.map((_, k) =>
    whereReached(
      way,
      (m) => m.girths[k].growth,
      growth.most,
      (m) => m.pressure,
    ),
  );
  const top = reach((m) => m.pressure);
  const near = (girths ?? []).filter((p) => p < 1.3 * top);
  const pressure = axisFor(manner, 'pressure', Math.max(top, 1.1 * (forecast.target ?? 0), ...near), 8);
  const volume = axisFor(
    manner,
    'volume',
    Math.max(
      reach((m) => m.pumped.all),
      1.1 * (turn?.pumped.all ?? 0),
    ),
    6,
  );
  const most = (of: (m: CurveForecast['path'][number]) => number): number => Math.max(0, ...way.map(of));
  const box = { top: TOP, bottom: BOTTOM };
  return {
    girth: { ...box, left: FRAME.left + 56, right: 560, x: growth, y: pressure },
    volume: { ...box, left: 690, right: 1080, x: volume, y: pressure },
    whole: {
      left: FRAME.left + 56,
      right: 560,
      top: 626,
      bottom: FRAME.bottom - 46,
      x: axisFor(
        manner,
        'growth',
        Math.max(
          most((m) => m.largest.growth),
          growth.most,
        ),
        6,
      ),
      y: axisFor(
        manner,
        'pressure',
        Math.max(
          most((m) => m.pressure),
          pressure.most,
        ),
        4,
      ),
    },
  };
}

function heading(sheet: CurveSheet, manner: Manner): Mark[] {
  const [x, y] = [FRAME.left + 16, FRAME.top + 14 + LARGE];
  const under = sentence(manner, sheet.ranges === undefined ? 'curveOneSteel' : 'curveRanges');
  return [
    lettering([x, y], [{ text: sentence(manner, 'curveHeading'), bold: true }], {
      size: LARGE,
      of: 'heading',
    }),
    lettering([x, y + LARGE + 2], under, { size: SMALL + 2, of: 'subheading' }),
  ];
}

const notesOf = (sheet: CurveSheet, ceiling: Ceiling, manner: Manner): string[] => [
  sentence(manner, 'noteUnder'),
  sentence(manner, 'noteCeiling', { source: ceiling.source }),
  sentence(manner, 'noteOutsideStandards', {
    from: sayStated(manner, 'length', 1),
    to: sayStated(manner, 'length', 3),
  }),
  ...(sheet.forecast.maximum?.extrapolated === true ? [sentence(manner, 'noteExtrapolated')] : []),
  sentence(manner, 'noteBulging'),
  sentence(manner, 'noteCaution'),
];
