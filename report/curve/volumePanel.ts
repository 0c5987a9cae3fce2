/** Right panel: the same pressures against the volume that the tank has grown and that the pump has pushed in. */
import type { Manner } from '../figure/manner.ts';
import { lettering, type Mark } from '../sheet/mark.ts';
import { sentenceRuns } from '../sheet/runs.ts';
import { sentence } from '../words/sentence.ts';
import { bandMarks, type Ranges } from './band.ts';
import { endLabels } from './endLabels.ts';
import { levelLines, levelsOf, levelWords } from './level.ts';
import { axisMarks, clipped, lineOn, onPanel, type Panel } from './panel.ts';
import { branchesOf, byGrown, byPumped, type CurveForecast, placesOf } from './path.ts';

export interface VolumeChart {
  readonly forecast: CurveForecast;
  readonly ranges?: Ranges;
}

export function volumeMarks(panel: Panel, { forecast, ranges }: VolumeChart, manner: Manner): Mark[] {
  const branches = branchesOf(forecast);
  const levels = levelsOf(forecast, manner);
  const lines = [
    { name: sentence(manner, 'lineGrown'), at: byGrown, line: 'narrow' as const },
    { name: sentence(manner, 'linePumped'), at: byPumped, line: 'bold' as const },
  ];
  const ends = lines.map(({ name, at, line }) => {
    const way = clipped(panel, placesOf([...branches.up, ...branches.on], at, true));
    return { name, bold: line === 'bold', at: onPanel(panel, way[way.length - 1] ?? [0, 0]) };
  });
  return [
    ...axisMarks(panel, { x: sentence(manner, 'axisVolume', { unit: panel.x.unit }) }),
    ...levelLines(panel, levels),
    ...(ranges?.pumped === undefined ? [] : bandMarks(panel, ranges.pumped)),
    ...lines
      .flatMap(({ name, at, line }) => [
        lineOn(panel, line, placesOf(branches.up, at, true), name),
        lineOn(panel, 'narrow', placesOf(branches.on, at, false), `${name}, on`),
        lineOn(panel, line, placesOf(branches.down, at, false), `${name}, release`),
      ])
      .filter((mark) => mark !== undefined),
    ...endLabels(panel, ends),
    ...levelWords(
      panel,
      levels.filter(({ of }) => of === 'stretch pressure'),
      () => panel.left + 8,
    ),
    ...pointMarks(panel, forecast, manner),
  ];
}

function pointMarks(panel: Panel, forecast: CurveForecast, manner: Manner): Mark[] {
  const turn = forecast.held ?? forecast.arrived;
  const marks: Mark[] = [];
  const volume = (value: number) => ({ quantity: 'volume', value }) as const;
  if (turn !== undefined) {
    const at = onPanel(panel, byPumped(turn));
    marks.push(
      { kind: 'ring', at, radius: 3, line: 'narrow', filled: true, of: 'release' },
      lettering(
        [at[0] + 8, at[1] + 15],
        sentenceRuns(manner, 'pumpedPoint', { volume: volume(turn.pumped.all) }),
        {
          clear: true,
          of: 'pumped',
        },
      ),
      lettering(
        [at[0] + 8, at[1] + 30],
        sentenceRuns(manner, 'grownPoint', { volume: volume(turn.growth) }),
        {
          clear: true,
          of: 'grown',
        },
      ),
    );
  }
  if (forecast.released !== undefined) {
    const { growth } = forecast.released.left;
    const at = onPanel(panel, [growth, 0]);
    marks.push(
      { kind: 'ring', at, radius: 3, line: 'narrow', filled: true, of: 'left' },
      lettering([at[0] + 8, at[1] - 7], sentenceRuns(manner, 'leftVolume', { volume: volume(growth) }), {
        clear: true,
        of: 'left',
      }),
    );
  }
  return marks;
}
