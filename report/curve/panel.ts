/** One chart: a box on the sheet, its axes, and what is clipped to them. */
import {
  area,
  type Fill,
  lettering,
  type Mark,
  type Point,
  SMALL,
  stroke,
  type Stroke,
} from '../sheet/mark.ts';
import type { LineType } from '../sheet/line.ts';
import type { Axis } from './axis.ts';

export interface Panel {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly x: Axis;
  readonly y: Axis;
}

/** Growth or volume, and pressure; inside units. */
export type Place = readonly [x: number, pressure: number];

export const xOf = (panel: Panel, value: number): number =>
  panel.left + ((panel.right - panel.left) * value) / panel.x.most;

export const yOf = (panel: Panel, value: number): number =>
  panel.bottom - ((panel.bottom - panel.top) * value) / panel.y.most;

export const onPanel = (panel: Panel, [x, y]: Place): Point => [xOf(panel, x), yOf(panel, y)];

const TICK = 4;

/** Axes, ticks with their figures, faint grid. Without `y` the pressures are read on the panel to the left. */
export function axisMarks(panel: Panel, titles: { readonly x: string; readonly y?: string }): Mark[] {
  const { left, right, top, bottom } = panel;
  const faint = (points: Point[]): Stroke => ({ ...stroke('grid', points, 'grid'), tone: 'faint' });
  return [
    ...panel.x.ticks.slice(1).map(({ at }) =>
      faint([
        [xOf(panel, at), bottom],
        [xOf(panel, at), top],
      ]),
    ),
    ...panel.y.ticks.slice(1).map(({ at }) =>
      faint([
        [left, yOf(panel, at)],
        [right, yOf(panel, at)],
      ]),
    ),
    stroke(
      'narrow',
      [
        [left, top],
        [left, bottom],
        [right, bottom],
      ],
      'axes',
    ),
    ...panel.x.ticks.flatMap(({ at, text }) => [
      stroke(
        'narrow',
        [
          [xOf(panel, at), bottom],
          [xOf(panel, at), bottom + TICK],
        ],
        'tick',
      ),
      lettering([xOf(panel, at), bottom + TICK + 11], text, { size: SMALL, anchor: 'middle', of: 'x tick' }),
    ]),
    ...panel.y.ticks.flatMap(({ at, text }) => [
      stroke(
        'narrow',
        [
          [left - TICK, yOf(panel, at)],
          [left, yOf(panel, at)],
        ],
        'tick',
      ),
      ...(titles.y === undefined
        ? []
        : [
            lettering([left - TICK - 3, yOf(panel, at) + 3.8], text, {
              size: SMALL,
              anchor: 'end',
              of: 'y tick',
            }),
          ]),
    ]),
    lettering([right, bottom + TICK + 27], titles.x, { anchor: 'end', of: 'x title' }),
    ...(titles.y === undefined ? [] : [lettering([left - 30, top - 12], titles.y, { of: 'y title' })]),
  ];
}

/** Line through places, cut where it leaves the panel; undefined where nothing of it is inside. */
export function lineOn(
  panel: Panel,
  line: LineType,
  places: readonly Place[],
  of: string,
): Stroke | undefined {
  const inside = clipped(panel, places);
  return inside.length < 2
    ? undefined
    : stroke(
        line,
        inside.map((p) => onPanel(panel, p)),
        of,
      );
}

/** Places up to where the line first passes the right end or the top of the panel, that point included. */
export function clipped({ x: { most: right }, y: { most: top } }: Panel, places: readonly Place[]): Place[] {
  const kept: Place[] = [];
  for (const place of places) {
    const last = kept[kept.length - 1];
    const over = Math.max((place[0] - right) / right, (place[1] - top) / top);
    if (over <= 1e-12) {
      kept.push(place);
      continue;
    }
    if (last !== undefined) {
      const fx = place[0] > right ? (right - last[0]) / (place[0] - last[0]) : 1;
      const fy = place[1] > top ? (top - last[1]) / (place[1] - last[1]) : 1;
      const f = Math.min(fx, fy);
      kept.push([last[0] + f * (place[0] - last[0]), last[1] + f * (place[1] - last[1])]);
    }
    break;
  }
  return kept;
}

/** Area between a lower and an upper line, e.g. a range, cut at the edges of the panel. */
export const between = (
  panel: Panel,
  fill: Fill,
  low: readonly Place[],
  high: readonly Place[],
  of: string,
): Mark => {
  const whole = [...low, ...[...high].reverse()];
  const cut = cutAt(cutAt(whole, 0, panel.x.most), 1, panel.y.most);
  return area(
    fill,
    cut.map((place) => onPanel(panel, place)),
    of,
  );
};

/** Polygon cut at a largest value of x (0) or pressure (1): Sutherland & Hodgman, Comm. ACM 17 (1974) 32. */
function cutAt(polygon: readonly Place[], side: 0 | 1, most: number): Place[] {
  return polygon.flatMap((here, i): Place[] => {
    const before = polygon[(i + polygon.length - 1) % polygon.length];
    const [a, b] = [before[side] <= most, here[side] <= most];
    const f = (most - before[side]) / (here[side] - before[side]);
    const crossing: Place = [before[0] + f * (here[0] - before[0]), before[1] + f * (here[1] - before[1])];
    return [...(a === b ? [] : [crossing]), ...(b ? [here] : [])];
  });
}
