/**
 * Left of the tank: what stands at which height over the bottom tangent line, by one running dimension (ISO 129-1) from
 * a common origin. Names are moved apart where they would touch.
 */
import type { Tank } from '@hoopwright/core/tank';
import type { Manner } from '../figure/manner.ts';
import { lettering, type Mark, type Point, type Run, SMALL, stroke, TEXT } from '../sheet/mark.ts';
import { runsWidth } from '../sheet/measure.ts';
import { figureRuns, sentenceRuns } from '../sheet/runs.ts';
import { spread } from '../sheet/spread.ts';
import { arrow, PAST } from './dimension.ts';
import { onLeft, outsideOf, type Spot, type View } from './view.ts';
import type { WallPiece } from './wall.ts';

export interface Level {
  readonly kind: 'girth' | 'girth seam' | 'baffle' | 'opening' | 'tangent line';
  readonly of: string;
  /** As welded, mm. */
  readonly z: number;
  readonly name: readonly Run[];
  readonly height: readonly Run[];
  /** Of a baffle, mm. */
  readonly thickness?: number;
}

export function levelsOf(tank: Tank, manner: Manner): Level[] {
  const height = (value: number, path?: string): Run[] =>
    figureRuns(manner, { quantity: 'length', value, stated: true, ...(path === undefined ? {} : { path }) });
  const length = (value: number, path: string) =>
    ({ quantity: 'length', value, stated: true, path }) as const;
  const wall = (value: number, path: string) => ({ quantity: 'wall', value, stated: true, path }) as const;
  const levels: Level[] = [
    {
      kind: 'tangent line',
      of: 'bottom tangent line',
      z: 0,
      name: sentenceRuns(manner, 'bottomTangent').map((run) => ({ ...run, tone: 'faint' })),
      height: [{ text: '0' }],
    },
    ...tank.girths.map(
      ({ name, at }, i): Level => ({
        kind: 'girth',
        of: `girth ${name}`,
        z: at,
        name: [{ text: name, bold: true }],
        height: height(at, `girths[${i}].at_mm`),
      }),
    ),
    ...tank.girthSeams.map(
      ({ at, width }, i): Level => ({
        kind: 'girth seam',
        of: `girth seam ${i + 1}`,
        z: at,
        name: sentenceRuns(manner, 'girthSeam', { width: length(width, `seams.girth[${i}].width_mm`) }),
        height: height(at, `seams.girth[${i}].at_mm`),
      }),
    ),
    ...tank.baffles.map(
      ({ at, width, thickness }, i): Level => ({
        kind: 'baffle',
        of: `baffle ${i + 1}`,
        z: at,
        name: sentenceRuns(manner, 'baffle', {
          width: { ...length(width, `baffles[${i}].width_mm`), bare: true },
          thickness: wall(thickness, `baffles[${i}].thickness_mm`),
        }),
        height: height(at, `baffles[${i}].at_mm`),
        thickness,
      }),
    ),
    ...tank.openings.flatMap(({ part, at, diameter }, i): Level[] =>
      part !== 'barrel' || at === undefined
        ? []
        : [
            {
              kind: 'opening',
              of: `opening ${i + 1}`,
              z: at,
              name: sentenceRuns(manner, 'opening', {
                diameter: length(diameter, `openings[${i}].diameter_mm`),
              }),
              height: height(at, `openings[${i}].at_mm`),
            },
          ],
    ),
  ];
  return levels.sort((a, b) => b.z - a.z);
}

const LINE_OFF = 26;
const DOGLEG = 14;
const GAP = 10;

const nameWidth = (levels: readonly Level[]): number =>
  Math.max(
    0,
    ...levels
      .filter(({ kind }) => kind !== 'tangent line')
      .map(({ name }) => runsWidth({ runs: name, size: TEXT })),
  );

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
  return tight || nameWidth(levels) + 16 > half ? 'beside' : 'on the tank';
}

/** Room that the running dimension takes to the left of the tank. */
export const levelsWidth = (levels: readonly Level[], stand: NamesStand): number =>
  LINE_OFF + DOGLEG + 4 + heightWidth(levels) + (stand === 'beside' ? GAP + nameWidth(levels) : 0);

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
  const gap = Math.min(TEXT + 4, (room.bottom - room.top) / Math.max(1, levels.length - 1));
  const size = gap < TEXT + 2 ? Math.max(6, gap - 1.5) : TEXT;
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

/** Names stand on their line; a baffle is as thick as it is drawn. */
const nameLift = ({ thickness }: Level, view: View): number =>
  4 + 0.5 * (thickness ?? 0) * view.walls * view.perMm;

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
