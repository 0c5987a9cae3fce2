/** Left panel: pressure against growth of girth. */
import { saySigned, say } from '../figure/figure.ts';
import type { Manner } from '../figure/manner.ts';
import { lettering, type Mark, SMALL, type Text } from '../sheet/mark.ts';
import { sentenceRuns } from '../sheet/runs.ts';
import { endLabels } from './endLabels.ts';
import { settle } from '../sheet/settle.ts';
import { sentence } from '../words/sentence.ts';
import { type Ceiling, ceilingMarks } from './ceiling.ts';
import { bandMarks, type Ranges } from './band.ts';
import { levelLines, levelPlaces, levelsOf } from './level.ts';
import { axisMarks, clipped, lineOn, onPanel, type Panel, xOf } from './panel.ts';
import {
  type Branches,
  branchesOf,
  byGirth,
  byLargest,
  type CurveForecast,
  holdsOf,
  placesOf,
} from './path.ts';
import { type Labelled, labelledPoint, together } from './pointLabel.ts';

/** What is drawn: the forecast, the names of its girths, its range where there is one. */
export interface GirthChart {
  readonly forecast: CurveForecast;
  readonly tank: { readonly girths: readonly { readonly name: string }[] };
  readonly ranges?: Ranges;
}

export function girthMarks(panel: Panel, chart: GirthChart, ceiling: Ceiling, manner: Manner): Mark[] {
  const { forecast, ranges } = chart;
  const branches = branchesOf(forecast);
  const levels = levelsOf(forecast, manner);
  const points = pointLabels(panel, forecast, manner);
  const holds = holdLabels(panel, branches, manner);
  const edge = ceilingMarks(panel, ceiling, recoveryOf(forecast), manner);
  const words = levelPlaces(
    panel,
    levels.filter(({ of }) => of !== 'stretch pressure'),
    ({ pressure }) => {
      const x = besideCurve(panel, branches, pressure);
      return [0, 130, 160, 180, 200, 220, 260, 300].map((aside) => x + aside);
    },
  );
  return [
    ...axisMarks(panel, {
      x: sentence(manner, 'axisGrowth', { unit: panel.x.unit }),
      y: sentence(manner, 'axisPressure', { unit: panel.y.unit }),
    }),
    ...edge,
    ...levelLines(panel, levels),
    ...(ranges === undefined ? [] : bandMarks(panel, ranges.growth)),
    ...girthLines(panel, chart, branches, manner),
    ...points.marks,
    ...holds.marks,
    ...settle([...points.places, ...holds.places, ...words], panel, wordsOfCeiling(edge)),
  ];
}

const wordsOfCeiling = (marks: readonly Mark[]): Text[] => marks.filter((mark) => mark.kind === 'text');

/** Growth that comes back for each MPa that is let out: of the release, or of the first elastic step. */
function recoveryOf({ path, held, arrived, released }: CurveForecast): number {
  const turn = held ?? arrived;
  if (turn !== undefined && released !== undefined && turn.pressure > 0)
    return (turn.largest.growth - released.left.largest.growth) / turn.pressure;
  const [first] = path;
  return first === undefined || first.pressure <= 0 ? 0 : first.largest.growth / first.pressure;
}

/** Words under the curve begin right of it. */
function besideCurve(panel: Panel, { up }: Branches, pressure: number): number {
  const under = up.filter((m) => m.pressure <= pressure * 1.06).map((m) => m.largest.growth);
  return xOf(panel, Math.max(0, ...under)) + 10;
}

/** Each girth thin, the largest bold; names at the right end of their lines. */
function girthLines(
  panel: Panel,
  { forecast, tank }: GirthChart,
  branches: Branches,
  manner: Manner,
): Mark[] {
  const turn = forecast.held ?? forecast.arrived ?? forecast.path[forecast.path.length - 1];
  const lines = [
    ...tank.girths.map(({ name }, k) => ({ name, at: byGirth(k), line: 'narrow' as const, bold: false })),
    {
      name:
        turn === undefined
          ? ''
          : sentence(manner, 'largestAt', { height: say(manner, 'place', turn.largest.at) }),
      at: byLargest,
      line: 'bold' as const,
      bold: true,
    },
  ];
  const ends = lines.map(({ at, name, bold }) => {
    const way = clipped(panel, placesOf([...branches.up, ...branches.on], at, true));
    return { name, bold, at: onPanel(panel, way[way.length - 1] ?? [0, 0]) };
  });
  return [
    ...lines.flatMap(({ at, line, name }) => [
      lineOn(panel, line, placesOf(branches.up, at, true), name),
      lineOn(panel, 'narrow', placesOf(branches.on, at, false), `${name}, on`),
      lineOn(panel, line, placesOf(branches.down, at, false), `${name}, release`),
    ]),
    ...endLabels(panel, ends),
  ].filter((mark) => mark !== undefined);
}

/** Holds: an end mark at both ends, how long, how much. */
function holdLabels(panel: Panel, { up }: Branches, manner: Manner): Labelled {
  const parts = holdsOf(up).map(({ from, to }): Labelled => {
    const [a, b] = [from, to].map((m) => onPanel(panel, byLargest(m)));
    const grown = saySigned(manner, 'growth', to.largest.growth - from.largest.growth);
    const words = sentenceRuns(manner, 'holdLabel', {
      minutes: { quantity: 'minutes', value: to.time - from.time },
    });
    const small = { size: SMALL, clear: true, of: 'hold' };
    return {
      marks: [a, b].map((at): Mark => ({ kind: 'ring', at, radius: 2, line: 'narrow', of: 'hold' })),
      places: [
        [
          [
            lettering([a[0] - 5, a[1] - 5], words, { ...small, anchor: 'end' }),
            lettering([a[0] + 4, a[1] + SMALL + 3], grown, small),
          ],
          [
            lettering([a[0] - 5, a[1] - 8 - SMALL], words, { ...small, anchor: 'end' }),
            lettering([a[0] - 5, a[1] - 5], grown, { ...small, anchor: 'end' }),
          ],
          [
            lettering([b[0] + 6, b[1] + SMALL + 3], words, small),
            lettering([b[0] + 6, b[1] + 2 * SMALL + 6], grown, small),
          ],
        ],
      ],
    };
  });
  return together(parts);
}

/** Where it is released, and what is left. */
function pointLabels(panel: Panel, forecast: CurveForecast, manner: Manner): Labelled {
  const turn = forecast.held ?? forecast.arrived;
  const left = forecast.released?.left.largest.growth;
  return together([
    ...(turn === undefined
      ? []
      : [
          labelledPoint(
            onPanel(panel, byLargest(turn)),
            [sentenceRuns(manner, 'underPoint', { growth: growthAt(turn.largest.growth) })],
            'below',
            'under pressure',
          ),
        ]),
    ...(left === undefined
      ? []
      : [
          labelledPoint(
            onPanel(panel, [left, 0]),
            [sentenceRuns(manner, 'leftPoint', { growth: growthAt(left) })],
            'above',
            'left',
          ),
        ]),
  ]);
}

const growthAt = (value: number) => ({ quantity: 'growth', value }) as const;
