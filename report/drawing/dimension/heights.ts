/**
 * Left of the tank: what stands at which height over the bottom tangent line, by one running dimension (ISO 129-1) from
 * a common origin. Names are moved apart where they would touch.
 */
import type { Tank } from '@hoopwright/core/tank';
import { lettering, type Mark, type Point, SMALL, stroke, TEXT } from '../../sheet/mark.ts';
import { runsWidth } from '../../sheet/measure.ts';
import { spread } from '../../sheet/spread.ts';
import { arrow, PAST } from './dimension.ts';
import type { Level } from './levels.ts';
import { onLeft, outsideOf, type Spot, type View } from '../shape/view.ts';
import type { WallPiece } from '../shape/wall.ts';

const LINE_OFF = 26;
const DOGLEG = 14;
const GAP = 10;

const nameWidth = (levels: readonly Level[], size: number): number =>
  Math.max(
    0,
    ...levels
      .filter(({ kind }) => kind !== 'tangent line')
      .map(({ name }) => runsWidth({ runs: name, size })),
  );

/** Many names are written smaller, for they push the tank aside. */
const besideSize = (levels: readonly Level[]): number => (levels.length > 10 ? SMALL : TEXT);

/** Heights and, in small lettering under the origin, what it is. */
const heightWidth = (levels: readonly Level[]): number =>
  Math.max(
    ...levels.map(({ kind, name, height }) =>
      Math.max(
        runsWidth({ runs: height, size: TEXT }),
        kind === 'tangent line' ? runsWidth({ runs: name, size: SMALL }) : 0,
      ),
    ),
  );

/** Where the names stand: on their own lines over the outside half, or, where there is no room, beside the heights. */
export type NamesStand = 'on the tank' | 'beside';

export function namesStand(view: Pick<View, 'perMm'>, tank: Tank, levels: readonly Level[]): NamesStand {
  const half = (tank.insideDiameter / 2) * view.perMm;
  const tight = levels.slice(1).some(({ z }, i) => (levels[i].z - z) * view.perMm < TEXT + 5);
  return tight || nameWidth(levels, SMALL) + 14 > half ? 'beside' : 'on the tank';
}

/** Room that the running dimension takes to the left of the tank. */
export const levelsWidth = (levels: readonly Level[], stand: NamesStand): number =>
  LINE_OFF +
  DOGLEG +
  4 +
  heightWidth(levels) +
  (stand === 'beside' ? GAP + nameWidth(levels, besideSize(levels)) : 0);

export interface LevelRoom {
  /** x of the leftmost part of the drawn tank. */
  readonly tankLeft: number;
  readonly top: number;
  readonly bottom: number;
  readonly names: NamesStand;
}

/** @param carried outside of the barrel as drawn now, for a height as welded */
export function levelMarks(
  view: View,
  levels: readonly Level[],
  room: LevelRoom,
  carried: (z: number) => Spot,
): Mark[] {
  const x = room.tankLeft - LINE_OFF;
  const y = (z: number): number => view.base - z * view.perMm;
  const usual = room.names === 'beside' ? besideSize(levels) : TEXT;
  const gap = Math.min(usual + 4, (room.bottom - room.top) / Math.max(1, levels.length - 1));
  const size = gap < usual + 2 ? Math.max(6, gap - 1.5) : usual;
  const placed = spread(
    levels.map(({ z }) => y(z)),
    gap,
    room.top,
    room.bottom,
  );
  const names = x - DOGLEG - 4 - heightWidth(levels) - GAP;
  const top = y(Math.max(...levels.map(({ z }) => z)));
  return [
    stroke(
      'narrow',
      [
        [x, y(0)],
        [x, top],
      ],
      'running dimension',
    ),
    { kind: 'ring', at: [x, y(0)], radius: 2.6, line: 'narrow', of: 'origin' },
    ...levels.flatMap((level, i): Mark[] => {
      const on = onLeft(view, carried(level.z));
      const text = placed[i] + 0.36 * size;
      if (level.kind === 'tangent line') return tangentMarks(level, on, x, y(0), placed[i]);
      return [
        ...lineOf(view, level, on, x, placed[i]),
        arrow([x, y(level.z)], [0, -1]),
        lettering([x - DOGLEG - 4, text], level.height, { size, anchor: 'end', of: `height: ${level.of}` }),
        room.names === 'on the tank'
          ? lettering([view.axis - 8, on[1] - nameLift(level, view)], level.name, {
              size: runsWidth({ runs: level.name, size: TEXT }) + 14 > view.axis - on[0] ? SMALL : TEXT,
              anchor: 'end',
              of: `name: ${level.of}`,
            })
          : lettering([names, text], level.name, { size, anchor: 'end', of: `name: ${level.of}` }),
      ];
    }),
  ];
}

/** The origin: its figure on the line, its name under it. */
function tangentMarks(level: Level, on: Point, x: number, y: number, placed: number): Mark[] {
  const end = x - DOGLEG - 4;
  return [
    stroke('narrow', [on, [x + 8, y], [x - PAST, y], [x - DOGLEG, placed]], level.of),
    lettering([end, placed + 0.36 * TEXT], level.height, { anchor: 'end', of: `height: ${level.of}` }),
    lettering([end, placed + 0.36 * TEXT + SMALL + 1], level.name, {
      size: SMALL,
      anchor: 'end',
      of: `name: ${level.of}`,
    }),
  ];
}

/** Names stand on their line, clear of what is drawn on it. */
const nameLift = ({ kind, thick = 0 }: Level, view: View): number =>
  4 + 0.5 * thick * view.perMm * (kind === 'baffle' ? view.walls : 1) + (kind === 'opening' ? 4 : 0);

/** From the tank to the running dimension and on to the figure; the line of a girth goes over the tank as well. */
function lineOf(view: View, level: Level, on: Point, x: number, placed: number): Mark[] {
  const wanted = view.base - level.z * view.perMm;
  const across: Point[] = level.kind === 'girth' ? [[view.axis, on[1]], on] : [on];
  const line = stroke(
    'narrow',
    [...across, [x + 8, wanted], [x - PAST, wanted], [x - DOGLEG, placed]],
    level.of,
  );
  if (level.kind !== 'girth') return [line];
  return [line, { kind: 'ring', at: on, radius: 2, line: 'narrow', filled: true, of: level.of }];
}

/** Outside of the barrel as drawn now, at a height as welded. */
export function carriedOutside(
  view: View,
  before: readonly WallPiece[],
  now: readonly WallPiece[],
  z: number,
): Spot {
  for (const [k, piece] of before.entries()) {
    for (let i = 1; i < piece.points.length; i++) {
      const [a, b] = [piece.points[i - 1], piece.points[i]];
      if (a.nr < 0.999 || b.nr < 0.999 || a.z > z + 1e-9 || b.z < z - 1e-9) continue;
      const f = b.z === a.z ? 0 : (z - a.z) / (b.z - a.z);
      const [from, to] = [i - 1, i].map((j) => outsideOf(now[k].points[j], piece.kind, view));
      return { r: from.r + f * (to.r - from.r), z: from.z + f * (to.z - from.z) };
    }
  }
  throw new Error(`no wall of the barrel at ${z} mm over the bottom tangent line`);
}
