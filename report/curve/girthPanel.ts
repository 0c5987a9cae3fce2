/** Left panel: pressure against growth of girth. */
import { saySigned, say } from '../figure/figure.ts';
import type { Manner } from '../figure/manner.ts';
import { lettering, type Mark, SMALL } from '../sheet/mark.ts';
import { sentenceRuns } from '../sheet/runs.ts';
import { endLabels } from './endLabels.ts';
import { sentence } from '../words/sentence.ts';
import { type Ceiling, ceilingMarks } from './ceiling.ts';
import { bandMarks, type Ranges } from './band.ts';
import { levelLines, levelsOf, levelWords } from './level.ts';
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
  return [
    ...axisMarks(panel, {
      x: sentence(manner, 'axisGrowth', { unit: panel.x.unit }),
      y: sentence(manner, 'axisPressure', { unit: panel.y.unit }),
    }),
    ...ceilingMarks(panel, ceiling, recoveryOf(forecast), manner),
    ...levelLines(panel, levels),
    ...(ranges === undefined ? [] : bandMarks(panel, ranges.growth)),
    ...girthLines(panel, chart, branches, manner),
    ...levelWords(
      panel,
      levels.filter(({ of }) => of !== 'stretch pressure'),
      ({ pressure }) => besideCurve(panel, branches, pressure),
    ),
    ...holdMarks(panel, branches, manner),
    ...pointMarks(panel, forecast, manner),
  ];
}

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

/** Holds: an end mark at both ends and how long, how much. */
function holdMarks(panel: Panel, { up }: Branches, manner: Manner): Mark[] {
  return holdsOf(up).flatMap(({ from, to }): Mark[] => {
    const ends = [from, to].map((m) => onPanel(panel, byLargest(m)));
    const grown = to.largest.growth - from.largest.growth;
    const words = sentenceRuns(manner, 'holdLabel', {
      minutes: { quantity: 'minutes', value: to.time - from.time },
    });
    return [
      ...ends.map((at): Mark => ({ kind: 'ring', at, radius: 2, line: 'narrow', of: 'hold' })),
      lettering([ends[0][0] - 5, ends[0][1] - 5], words, {
        size: SMALL,
        anchor: 'end',
        clear: true,
        of: 'hold label',
      }),
      lettering([ends[0][0] + 4, ends[0][1] + SMALL + 3], saySigned(manner, 'growth', grown), {
        size: SMALL,
        clear: true,
        of: 'hold growth',
      }),
    ];
  });
}

/** Where it is released, and what is left. */
function pointMarks(panel: Panel, forecast: CurveForecast, manner: Manner): Mark[] {
  const turn = forecast.held ?? forecast.arrived;
  const marks: Mark[] = [];
  if (turn !== undefined) {
    const at = onPanel(panel, byLargest(turn));
    marks.push(
      { kind: 'ring', at, radius: 3, line: 'narrow', filled: true, of: 'release' },
      lettering(
        [at[0] + 8, at[1] + 15],
        sentenceRuns(manner, 'underPoint', { growth: growthAt(turn.largest.growth) }),
        {
          clear: true,
          of: 'under pressure',
        },
      ),
    );
  }
  if (forecast.released !== undefined) {
    const { growth } = forecast.released.left.largest;
    const at = onPanel(panel, [growth, 0]);
    marks.push(
      { kind: 'ring', at, radius: 3, line: 'narrow', filled: true, of: 'left' },
      lettering([at[0] + 8, at[1] - 7], sentenceRuns(manner, 'leftPoint', { growth: growthAt(growth) }), {
        clear: true,
        of: 'left',
      }),
    );
  }
  return marks;
}

const growthAt = (value: number) => ({ quantity: 'growth', value }) as const;
