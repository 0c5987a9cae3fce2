/** How the tank is laid on the sheet: scale, place, and how many times walls and growth are drawn. */
import type { Tank } from '@hoopwright/core/tank';
import type { Point } from '../../sheet/mark.ts';
import type { WallPiece, WallPoint } from './wall.ts';

export interface View {
  /** x of the centre line, y of the bottom tangent line. */
  readonly axis: number;
  readonly base: number;
  /** Sheet units per mm of tank. */
  readonly perMm: number;
  /** Millimetres of tank per millimetre of paper. */
  readonly scale: number;
  readonly walls: number;
  readonly thick: number;
}

/** Radius and height, mm. */
export interface Spot {
  readonly r: number;
  readonly z: number;
}

/** Section half, to the right. */
export const onRight = (view: View, { r, z }: Spot): Point => [
  view.axis + r * view.perMm,
  view.base - z * view.perMm,
];

/** Outside half, to the left. */
export const onLeft = (view: View, { r, z }: Spot): Point => [
  view.axis - r * view.perMm,
  view.base - z * view.perMm,
];

/** Outside face as drawn: the wall outward from the inside face, some times as thick. */
export function outsideOf(
  point: WallPoint,
  kind: WallPiece['kind'],
  view: Pick<View, 'walls' | 'thick'>,
): Spot {
  const thick = point.wall * (kind === 'thick' ? view.thick : view.walls);
  return { r: Math.max(0, point.r + point.nr * thick), z: point.z + point.nz * thick };
}

export interface Extent {
  readonly r: number;
  readonly low: number;
  readonly high: number;
}

/** What the drawn walls and skirts reach to, mm. */
export function extentOf(
  walls: readonly (readonly WallPiece[])[],
  tank: Tank,
  drawn: Pick<View, 'walls' | 'thick'>,
): Extent {
  const spots = walls.flat().flatMap((piece) => piece.points.map((p) => outsideOf(p, piece.kind, drawn)));
  const skirt = (end: 'top' | 'bottom'): number =>
    Math.max(0, ...tank.skirts.filter((s) => s.end === end).map((s) => s.length));
  const skirtWall = Math.max(0, ...tank.skirts.map((s) => s.wall));
  return {
    r: Math.max(...spots.map((s) => s.r), tank.insideDiameter / 2 + skirtWall * drawn.walls),
    low: Math.min(-skirt('bottom'), ...spots.map((s) => s.z)),
    high: Math.max(tank.length + skirt('top'), ...spots.map((s) => s.z)),
  };
}

/** Round scales; ISO 5455 has 1, 2, 5 and 10, the others use the sheet better and are as easy to measure by. */
export const SCALES: readonly number[] = [
  0.1, 0.2, 0.5, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100, 150, 200, 500,
];

const TIMES = [1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100];

/** Least drawn wall, sheet units: room for two outlines and hatching between them. */
const LEAST_WALL = 5.2;
/** Thick parts are drawn at most so many times as thick as the thinnest wall. */
const MOST_THICK = 4.5;

/** How many times the walls must be drawn to show hatching, and the thick parts so that they do not swell. */
export function wallTimes(
  thinnest: number,
  thickest: number,
  perMm: number,
): { walls: number; thick: number } {
  const walls = TIMES.find((times) => times * thinnest * perMm >= LEAST_WALL) ?? 100;
  const fits = (times: number): boolean => thickest * times <= MOST_THICK * thinnest * walls;
  return { walls, thick: TIMES.filter((times) => times <= walls && fits(times)).pop() ?? 1 };
}
