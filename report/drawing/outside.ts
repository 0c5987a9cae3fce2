/** Left half: the tank from outside, its seams, girths and, hidden behind the wall, its baffles. */
import type { Tank } from '@hoopwright/core/tank';
import { type Mark, type Point, stroke } from '../sheet/mark.ts';
import { carriedBranch } from './shape/formed.ts';
import { skirtRing } from './section.ts';
import type { BranchPlace } from './shape/stance.ts';
import { onLeft, outsideOf, type Spot, type View } from './shape/view.ts';
import type { WallPiece } from './shape/wall.ts';

/** Outside contour as drawn, bottom pole to top pole, mm. */
export const outsideContour = (view: View, pieces: readonly WallPiece[]): Spot[] =>
  pieces.flatMap((piece) => piece.points.map((p) => outsideOf(p, piece.kind, view)));

export const outsideFace = (view: View, pieces: readonly WallPiece[]): Point[] =>
  outsideContour(view, pieces).map((s) => onLeft(view, s));

export function outsideMarks(
  view: View,
  tank: Tank,
  pieces: readonly WallPiece[],
  branches: readonly BranchPlace[],
  times: number,
): Mark[] {
  return [
    ...silhouette(view, tank, pieces),
    ...seamLines(view, pieces),
    ...hiddenBaffles(view, tank, branches, times),
    ...openingMarks(view, tank),
    ...tank.skirts.map((skirt) =>
      stroke('outline', skirtOutside(view, tank, skirt, branches, times), 'skirt outline'),
    ),
  ];
}

/** Visible where no skirt stands before it, dashed behind one. */
function silhouette(view: View, tank: Tank, pieces: readonly WallPiece[]): Mark[] {
  const reach = (end: 'top' | 'bottom'): number =>
    Math.max(0, ...tank.skirts.filter((s) => s.end === end).map((s) => s.length));
  const [low, high] = [reach('bottom'), reach('top')];
  const hidden = ({ z }: Spot): boolean =>
    (low > 0 && z < 0 && z > -low) || (high > 0 && z > tank.length && z < tank.length + high);
  const runs: { line: 'outline' | 'hidden'; points: Point[] }[] = [];
  let last: Point | undefined;
  for (const spot of outsideContour(view, pieces)) {
    const line = hidden(spot) ? 'hidden' : 'outline';
    const point = onLeft(view, spot);
    const run = runs[runs.length - 1];
    if (run?.line === line) run.points.push(point);
    else runs.push({ line, points: last === undefined ? [point] : [last, point] });
    last = point;
  }
  return runs.map(({ line, points }) => stroke(line, points, 'outside outline'));
}

/** Welds between pieces of wall: narrow lines across. */
const seamLines = (view: View, pieces: readonly WallPiece[]): Mark[] =>
  pieces.slice(1).map((piece, i) => {
    const before = pieces[i];
    const lower = outsideOf(before.points[before.points.length - 1], before.kind, view);
    const upper = outsideOf(piece.points[0], piece.kind, view);
    const edge = lower.r < upper.r ? lower : upper;
    return stroke('narrow', [onLeft(view, edge), onLeft(view, { r: 0, z: edge.z })], 'joint');
  });

function hiddenBaffles(view: View, tank: Tank, branches: readonly BranchPlace[], times: number): Mark[] {
  const inside = tank.insideDiameter / 2;
  return tank.baffles.flatMap((baffle) => {
    const half = 0.5 * baffle.thickness * view.walls;
    const root = carriedBranch(branches, inside, baffle.at, times);
    const edge = carriedBranch(branches, inside - baffle.width, baffle.at, times);
    const face = (by: number): Point[] => [
      onLeft(view, { r: root.r, z: root.z + by }),
      onLeft(view, { r: edge.r, z: edge.z + by }),
      onLeft(view, { r: 0, z: edge.z + by }),
    ];
    const hole = [-half, half].map((by) => onLeft(view, { r: edge.r, z: edge.z + by }));
    return [face(-half), face(half), hole].map((points) => stroke('hidden', points, 'hidden baffle'));
  });
}

/** Holes in the barrel. Where around the tank they are is not stated: they stand where they are seen. */
const openingMarks = (view: View, tank: Tank): Mark[] =>
  tank.openings.flatMap(({ part, at, diameter }): Mark[] => {
    if (part !== 'barrel' || at === undefined) return [];
    const [x, y] = onLeft(view, { r: 0.35 * tank.insideDiameter, z: at });
    const radius = 0.5 * diameter * view.perMm;
    const cross = radius + 4;
    return [
      { kind: 'ring', at: [x, y], radius, line: 'outline', of: 'opening' },
      stroke(
        'centre',
        [
          [x - cross, y],
          [x + cross, y],
        ],
        'centre of opening',
      ),
      stroke(
        'centre',
        [
          [x, y - cross],
          [x, y + cross],
        ],
        'centre of opening',
      ),
    ];
  });

/** From the tangent line down the outside of the skirt and along its foot to the centre line. */
function skirtOutside(
  view: View,
  tank: Tank,
  skirt: Tank['skirts'][number],
  branches: readonly BranchPlace[],
  times: number,
): Point[] {
  const ring = skirtRing(tank, skirt, branches, times, view.walls);
  const outside = ring.slice(ring.length / 2).reverse();
  const foot = outside[outside.length - 1];
  return [...outside, { r: 0, z: foot.z }].map((s) => onLeft(view, s));
}
