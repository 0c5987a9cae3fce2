/** The drawing sheet: A3 lying, frame and centring marks after ISO 5457, margin for filing on the left. */
import { type Mark, type Point, stroke } from './mark.ts';

export const SHEET_WIDTH = 1200;
/** 297 mm on 420 mm of width is 848.6. */
export const SHEET_HEIGHT = 848;

/** Sheet units in a millimetre of paper. */
export const PER_MM = SHEET_WIDTH / 420;

const MARGIN = 10 * PER_MM;
const FILING = 20 * PER_MM;

export const FRAME = {
  left: FILING,
  right: SHEET_WIDTH - MARGIN,
  top: MARGIN,
  bottom: SHEET_HEIGHT - MARGIN,
} as const;

export function frame(): Mark[] {
  const { left, right, top, bottom } = FRAME;
  const [x, y] = [SHEET_WIDTH / 2, SHEET_HEIGHT / 2];
  const tick = 5 * PER_MM;
  const centring = (a: Point, b: Point): Mark => stroke('outline', [a, b], 'centring mark');
  return [
    {
      ...stroke('outline', [
        [left, top],
        [right, top],
        [right, bottom],
        [left, bottom],
      ]),
      closed: true,
      of: 'frame',
    },
    centring([x, top - tick], [x, top + tick / 2]),
    centring([x, bottom + tick], [x, bottom - tick / 2]),
    centring([left - tick, y], [left + tick / 2, y]),
    centring([right + tick, y], [right - tick / 2, y]),
  ];
}
