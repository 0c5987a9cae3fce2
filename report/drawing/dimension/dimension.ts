/** Dimension lines after ISO 129-1: narrow, closed arrows, the figure above the line and readable from below or from the right. */
import {
  area,
  INK,
  lettering,
  type Mark,
  type Point,
  type Run,
  SMALL,
  stroke,
  TEXT,
} from '../../sheet/mark.ts';
import { runsWidth } from '../../sheet/measure.ts';

const ARROW = 9;
const ARROW_HALF = 1.5;
/** Extension lines begin off the outline and run past the dimension line. */
export const PAST = 5;
const ABOVE = 3.5;
/** Lettering of a figure that stands beside its line. */
const BESIDE = SMALL + 1;

/** Closed arrow with its tip at `tip`, pointing along (dx, dy). */
export function arrow(tip: Point, [dx, dy]: Point): Mark {
  const length = Math.hypot(dx, dy);
  const [ux, uy] = [dx / length, dy / length];
  const back: Point = [tip[0] - ARROW * ux, tip[1] - ARROW * uy];
  return area(
    INK,
    [
      tip,
      [back[0] - ARROW_HALF * uy, back[1] + ARROW_HALF * ux],
      [back[0] + ARROW_HALF * uy, back[1] - ARROW_HALF * ux],
    ],
    'arrow',
  );
}

export interface Span {
  /** y of its ends; `low` is nearer the bottom of the sheet. */
  readonly low: number;
  readonly high: number;
  readonly runs: readonly Run[];
  readonly of: string;
}

/** True where a figure stands between the arrows of a line so long. */
export const fitsBetween = (length: number, runs: readonly Run[]): boolean =>
  runsWidth({ runs, size: TEXT }) + 4 <= length;

/** Room that a figure beside its line takes. */
export const besideDimension = (runs: readonly Run[]): number => ABOVE + runsWidth({ runs, size: BESIDE });

/** Upright dimension line at x. A figure that does not fit between the arrows goes outside, with the arrows. */
export function uprightDimension(x: number, span: Span): Mark[] {
  const { low, high, runs, of } = span;
  const room = low - high;
  const inside = room >= 3 * ARROW;
  const middle = (low + high) / 2;
  const line = inside
    ? stroke(
        'narrow',
        [
          [x, low],
          [x, high],
        ],
        of,
      )
    : stroke(
        'narrow',
        [
          [x, low + 2 * ARROW],
          [x, high - 2 * ARROW],
        ],
        of,
      );
  const arrows = inside
    ? [arrow([x, high], [0, -1]), arrow([x, low], [0, 1])]
    : [arrow([x, high], [0, 1]), arrow([x, low], [0, -1])];
  const text = fitsBetween(room, runs)
    ? lettering([x - ABOVE, middle], runs, { anchor: 'middle', upright: true, of })
    : lettering([x + ABOVE, middle + 0.36 * BESIDE], runs, { size: BESIDE, of });
  return [line, ...arrows, text];
}

/** Level extension line from x0 to x1. */
export const extension = (y: number, x0: number, x1: number): Mark =>
  stroke(
    'narrow',
    [
      [x0, y],
      [x1 + PAST * Math.sign(x1 - x0), y],
    ],
    'extension line',
  );
