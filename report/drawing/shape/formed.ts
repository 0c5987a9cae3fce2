/** The wall after some growth: each point of the inside face carried along by the profile, growth drawn some times over. */
import type { WallPlace } from '@hoopwright/core/shell';
import type { BranchPlace } from './stance.ts';
import type { WallPiece, WallPoint } from './wall.ts';

/** Moves the wall by `times` the growth of the profile. Thinning is never exaggerated. */
export function formedWall(
  pieces: readonly WallPiece[],
  profile: readonly WallPlace[],
  times: number,
): WallPiece[] {
  let last = 0;
  return pieces.map((piece) => {
    const carried = piece.points.map((point) => {
      const half = 0.5 * point.wall;
      const near = nearest(profile, point.r + half * point.nr, point.z + half * point.nz, last);
      last = near.place;
      return carriedPoint(point, near, times);
    });
    return { ...piece, points: carried.map((point, i) => turnedPoint(point, i, piece.points, carried)) };
  });
}

function carriedPoint(point: WallPoint, near: Near, times: number): WallPoint {
  const wall = point.wall * near.thinning;
  const inward = 0.5 * (point.wall - wall);
  // On the axis the wall can only rise; between the axis and the first place the radius grows in proportion.
  const radial = near.stretch * point.r + near.dr;
  return {
    ...point,
    r: point.r + times * (radial + inward * point.nr),
    z: point.z + times * (near.dz + inward * point.nz),
    wall,
    place: near.place,
  };
}

/** Turns the normal as much as the tangent has turned. */
function turnedPoint(
  point: WallPoint,
  i: number,
  before: readonly WallPoint[],
  after: readonly WallPoint[],
): WallPoint {
  if (before[i].r < 1e-9 || atCorner(before, i)) return point;
  const turn = tangent(after, i) - tangent(before, i);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return { ...point, nr: c * point.nr - s * point.nz, nz: s * point.nr + c * point.nz };
}

/** A corner has two normals at one place, and no tangent. */
const atCorner = (points: readonly WallPoint[], i: number): boolean =>
  [i - 1, i + 1].some((k) => {
    const other = points[k];
    return other !== undefined && Math.hypot(other.r - points[i].r, other.z - points[i].z) < 1e-9;
  });

function tangent(points: readonly WallPoint[], i: number): number {
  const a = points[Math.max(0, i - 1)];
  const b = points[Math.min(points.length - 1, i + 1)];
  return Math.atan2(b.z - a.z, b.r - a.r);
}

interface Near {
  readonly place: number;
  readonly thinning: number;
  /** Radial displacement is `dr` + `stretch` times the radius. */
  readonly dr: number;
  readonly stretch: number;
  readonly dz: number;
}

/** Points and places both run along the meridian: the next one is looked for not far from the last. */
const BACK = 15;
const ON = 60;

/** What the profile does at the place of the mid-surface nearest to (r, z) as welded. */
function nearest(profile: readonly WallPlace[], r: number, z: number, last: number): Near {
  const end = profile.length - 1;
  const [from, to] = [Math.max(0, last - BACK), Math.min(end, last + ON)];
  const near = nearestIn(profile, r, z, from, to);
  // Found at the edge of where it was looked for: it may lie beyond.
  const cut = (near.i === from && from > 0) || (near.i === to - 1 && to < end);
  return readAt(profile, cut ? nearestIn(profile, r, z, 0, end) : near);
}

interface Spot {
  readonly far: number;
  readonly i: number;
  readonly f: number;
}

function nearestIn(profile: readonly WallPlace[], r: number, z: number, from: number, to: number): Spot {
  let best: Spot = { far: Infinity, i: from, f: 0 };
  for (let i = from; i < to; i++) {
    const [a, b] = [profile[i], profile[i + 1]];
    const [er, ez] = [b.r0 - a.r0, b.z0 - a.z0];
    const f = Math.min(1, Math.max(0, ((r - a.r0) * er + (z - a.z0) * ez) / (er * er + ez * ez)));
    const far = (a.r0 + f * er - r) ** 2 + (a.z0 + f * ez - z) ** 2;
    if (far < best.far) best = { far, i, f };
  }
  return best;
}

function readAt(profile: readonly WallPlace[], { i, f }: Spot): Near {
  const [a, b] = [profile[i], profile[Math.min(i + 1, profile.length - 1)]];
  const atPole = (f === 0 && i === 0) || (f === 1 && i === profile.length - 2);
  const mix = (of: (place: WallPlace) => number): number => (1 - f) * of(a) + f * of(b);
  const radial = mix((p) => p.r - p.r0);
  return {
    place: f < 0.5 ? i : i + 1,
    thinning: mix((p) => p.wall / p.wall0),
    dz: mix((p) => p.z - p.z0),
    ...(atPole ? { dr: 0, stretch: radial / mix((p) => p.r0) } : { dr: radial, stretch: 0 }),
  };
}

/** Where a point of a baffle or skirt has gone; without places it stays. */
export function carriedBranch(
  branches: readonly BranchPlace[],
  r: number,
  z: number,
  times: number,
): { readonly r: number; readonly z: number } {
  let best: BranchPlace | undefined;
  let far = Infinity;
  for (const place of branches) {
    const distance = (place.r0 - r) ** 2 + (place.z0 - z) ** 2;
    if (distance < far) [best, far] = [place, distance];
  }
  if (best === undefined) return { r, z };
  return { r: r + times * (best.r - best.r0), z: z + times * (best.z - best.z0) };
}
