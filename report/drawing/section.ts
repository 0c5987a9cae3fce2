/** Right half: the wall cut and hatched, baffles cut, what is seen behind the cut. */
import type { Tank } from '@hoopwright/core/tank';
import { area, hatch, type Mark, PAPER, type Patch, type Point, stroke } from '../sheet/mark.ts';
import { carriedBranch } from './shape/formed.ts';
import type { BranchPlace } from './shape/stance.ts';
import { onRight, outsideOf, type Spot, type View } from './shape/view.ts';
import type { WallPiece } from './shape/wall.ts';

/** The cut wall, piece by piece; hatching leans the other way from piece to piece (ISO 128-3). */
export const cutMarks = (view: View, pieces: readonly WallPiece[]): Mark[] =>
  pieces.flatMap((piece) => hatchedFace(piece, ringOf(view, piece)));

export const outlineMarks = (view: View, pieces: readonly WallPiece[]): Mark[] =>
  pieces.map((piece) => ({
    ...stroke('outline', ringOf(view, piece), 'section outline'),
    closed: true,
  }));

const hatchedFace = (piece: WallPiece, ring: readonly Point[]): Mark[] => [
  area(PAPER, ring, 'cut face'),
  area(hatch(leanOf(piece)), ring, 'section'),
];

const leanOf = (piece: WallPiece): 'left' | 'right' => (piece.number % 2 === 0 ? 'right' : 'left');

/** Inside face up, outside face down. */
function ringOf(view: View, piece: WallPiece): Point[] {
  const inside = piece.points.map((p) => onRight(view, p));
  const outside = piece.points.map((p) => onRight(view, outsideOf(p, piece.kind, view)));
  return [...inside, ...outside.reverse()];
}

/** The inside face alone: on this half the initial outline is drawn with it. */
export const insideFace = (view: View, pieces: readonly WallPiece[]): Point[] =>
  pieces.flatMap((piece) => piece.points.map((p) => onRight(view, p)));

/** Pieces of wall to point at and to colour. */
export function patchesOf(view: View, before: readonly WallPiece[], now: readonly WallPiece[]): Patch[] {
  return now.flatMap((piece, k) =>
    piece.points.slice(1).map((b, i): Patch => {
      const a = piece.points[i];
      const place = a.place ?? b.place;
      return {
        part: piece.part,
        z: 0.5 * (before[k].points[i].z + before[k].points[i + 1].z),
        ...(place === undefined ? {} : { place }),
        points: [
          onRight(view, a),
          onRight(view, b),
          onRight(view, outsideOf(b, piece.kind, view)),
          onRight(view, outsideOf(a, piece.kind, view)),
        ],
      };
    }),
  );
}

/** Baffles: cut on this side, and their far half seen behind up to the centre line. */
export function baffleMarks(view: View, tank: Tank, branches: readonly BranchPlace[], times: number): Mark[] {
  const inside = tank.insideDiameter / 2;
  return tank.baffles.flatMap((baffle) => {
    const half = 0.5 * baffle.thickness * view.walls;
    const root = carriedBranch(branches, inside, baffle.at, times);
    const edge = carriedBranch(branches, inside - baffle.width, baffle.at, times);
    const up = (spot: Spot, by: number): Spot => ({ r: spot.r, z: spot.z + by });
    const cutFace = [up(edge, -half), up(root, -half), up(root, half), up(edge, half)].map((s) =>
      onRight(view, s),
    );
    const behind = (by: number): Mark =>
      stroke(
        'narrow',
        [onRight(view, { r: 0, z: edge.z + by }), onRight(view, up(edge, by))],
        'baffle behind',
      );
    return [
      behind(-half),
      behind(half),
      area({ kind: 'tone', tone: 'paper' }, cutFace),
      area(hatch('right'), cutFace, 'baffle section'),
      { ...stroke('outline', cutFace, 'baffle outline'), closed: true },
    ];
  });
}

/** Skirts, cut. They stand on the outside of the head, so they are drawn before it. */
export function skirtMarks(view: View, tank: Tank, branches: readonly BranchPlace[], times: number): Mark[] {
  return tank.skirts.flatMap((skirt) => {
    const ring = skirtRing(tank, skirt, branches, times, view.walls).map((s) => onRight(view, s));
    return [
      area(hatch('left'), ring, 'skirt section'),
      { ...stroke('outline', ring, 'skirt outline'), closed: true },
    ];
  });
}

const SKIRT_STEPS = 16;

/** Inside face and outside face of a skirt as drawn, mm. */
export function skirtRing(
  tank: Tank,
  skirt: Tank['skirts'][number],
  branches: readonly BranchPlace[],
  times: number,
  walls: number,
): Spot[] {
  const root = skirt.end === 'bottom' ? 0 : tank.length;
  const away = skirt.end === 'bottom' ? -1 : 1;
  const line = Array.from({ length: SKIRT_STEPS + 1 }, (_, i) =>
    carriedBranch(branches, tank.insideDiameter / 2, root + (away * skirt.length * i) / SKIRT_STEPS, times),
  );
  const thick = skirt.wall * walls;
  return [...line, ...line.map(({ r, z }) => ({ r: r + thick, z })).reverse()];
}
