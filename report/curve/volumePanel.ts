/** Right panel: the same pressures against the volume that the tank has grown and that the pump has pushed in. */
import type { Manner } from '../figure/manner.ts';
import type { Mark, Point } from '../sheet/mark.ts';
import { boxOf, overlap } from '../sheet/measure.ts';
import { sentenceRuns } from '../sheet/runs.ts';
import { type Places, settle } from '../sheet/settle.ts';
import { sentence } from '../words/sentence.ts';
import { bandMarks, type Ranges } from './band.ts';
import { endLabels } from './endLabels.ts';
import { levelLines, levelPlaces, levelsOf } from './level.ts';
import { axisMarks, clipped, lineOn, onPanel, type Panel } from './panel.ts';
import { type Labelled, labelledPoint, together } from './pointLabel.ts';
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
  const points = pointLabels(panel, forecast, manner);
  const turn = turnOf(forecast);
  const words = levelPlaces(
    panel,
    levels.filter(({ of }) => of === 'stretch pressure'),
    () => [panel.left + 8, panel.left + 200],
  ).map((places) => (turn === undefined ? places : clearOf(places, onPanel(panel, byPumped(turn)))));
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
    ...points.marks,
    ...settle([...points.places, ...words], panel),
  ];
}

const turnOf = ({ held, arrived }: CurveForecast) => held ?? arrived;

/** Room that a hand on the curve takes around its point. */
const HAND = 9;

/** Of some places for a line of text those that a hand on the point would not cover; all where it covers each. */
function clearOf(places: Places, [x, y]: Point): Places {
  const hand = { left: x - HAND, right: x + HAND, top: y - HAND, bottom: y + HAND };
  const free = places.filter((place) => !place.some((text) => overlap(boxOf(text), hand)));
  return free.length > 0 ? free : places;
}

function pointLabels(panel: Panel, forecast: CurveForecast, manner: Manner): Labelled {
  const turn = turnOf(forecast);
  const left = forecast.released?.left.growth;
  return together([
    ...(turn === undefined
      ? []
      : [
          labelledPoint(
            onPanel(panel, byPumped(turn)),
            [
              sentenceRuns(manner, 'pumpedPoint', { volume: volume(turn.pumped.all) }),
              sentenceRuns(manner, 'grownPoint', { volume: volume(turn.growth) }),
            ],
            'below',
            'under pressure',
          ),
        ]),
    ...(left === undefined
      ? []
      : [
          labelledPoint(
            onPanel(panel, [left, 0]),
            [sentenceRuns(manner, 'leftVolume', { volume: volume(left) })],
            'above',
            'left',
          ),
        ]),
  ]);
}

const volume = (value: number) => ({ quantity: 'volume', value }) as const;
