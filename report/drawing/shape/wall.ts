/**
 * The wall of the tank as welded, for drawing: the inside contour from the bottom pole to the top pole, piece by piece,
 * with its outward normal and its wall. Parts of different wall are flush inside.
 */
import type { Head, Tank } from '@hoopwright/core/tank';

export interface WallPoint {
  /** Inside face, mm; heights from the bottom tangent line. */
  readonly r: number;
  readonly z: number;
  /** Outward normal; longer than one at a corner, so that both faces meet. */
  readonly nr: number;
  readonly nz: number;
  readonly wall: number;
  /** Entry of the profile that stands nearest, where one was used. */
  readonly place?: number;
}

/** A piece of one wall. Joints between pieces are seen as lines. */
export interface WallPiece {
  readonly part: 'bottom head' | 'barrel' | 'top head';
  /** `thick`: bosses and plates so much thicker than the barrel that they are drawn by a factor of their own. */
  readonly kind: 'head' | 'thick' | 'course';
  /** Counts from the bottom: hatching changes its lean from piece to piece. */
  readonly number: number;
  readonly points: readonly WallPoint[];
}

export function wallOf(tank: Tank): WallPiece[] {
  const bottom = headPieces(tank.heads.bottom, tank, 'bottom head');
  const top = headPieces(tank.heads.top, tank, 'top head').map(turnedOver(tank.length)).reverse();
  return [...bottom, ...courses(tank), ...top].map((piece, number) => ({ ...piece, number }));
}

type Bare = Omit<WallPiece, 'number'>;
type Line = readonly Omit<WallPoint, 'wall'>[];

/** Depth inside, tangent line to pole. */
export const depthOf = (head: Head, insideDiameter: number): number =>
  -insideLine(head, insideDiameter / 2)[0].z;

/** Head as at the bottom: pole first, straight flange last. */
function headPieces(head: Head, tank: Tank, part: WallPiece['part']): Bare[] {
  const inside = tank.insideDiameter / 2;
  const flange: Line =
    head.straightFlange > 0
      ? straight(inside, 0, head.straightFlange, tank.insideDiameter / 60).slice(1)
      : [];
  const line = [...insideLine(head, inside), ...flange];
  const edge = (head.boss?.diameter ?? 0) / 2;
  const after = line.findIndex((p) => p.r > edge);
  if (head.boss === undefined || after < 1)
    return [{ part, kind: kindOf(head, tank), points: line.map((p) => ({ ...p, wall: head.wall })) }];
  const joint = between(line[after - 1], line[after], edge);
  const { thickness } = head.boss;
  return [
    { part, kind: 'thick', points: [...line.slice(0, after), joint].map((p) => ({ ...p, wall: thickness })) },
    {
      part,
      kind: kindOf(head, tank),
      points: [joint, ...line.slice(after)].map((p) => ({ ...p, wall: head.wall })),
    },
  ];
}

/** A head over three times as thick as the barrel is a thick plate. */
const kindOf = (head: Head, tank: Tank): 'head' | 'thick' =>
  head.wall > 3 * Math.min(...tank.courses.map((course) => course.wall)) ? 'thick' : 'head';

function between(a: Line[number], b: Line[number], r: number): Line[number] {
  const f = (r - a.r) / (b.r - a.r);
  const mix = (x: number, y: number): number => x + f * (y - x);
  return { r, z: mix(a.z, b.z), nr: mix(a.nr, b.nr), nz: mix(a.nz, b.nz) };
}

const turnedOver =
  (height: number) =>
  (piece: Bare): Bare => ({
    ...piece,
    points: piece.points.map((p) => ({ ...p, z: height - p.z, nz: -p.nz })).reverse(),
  });

function courses(tank: Tank): Bare[] {
  const low = tank.heads.bottom.straightFlange;
  const high = tank.length - tank.heads.top.straightFlange;
  const pieces: Bare[] = [];
  let foot = 0;
  for (const course of tank.courses) {
    const [from, to] = [Math.max(foot, low), Math.min(foot + course.length, high)];
    foot += course.length;
    if (to - from < 1e-9) continue;
    const points = straight(tank.insideDiameter / 2, from, to, tank.insideDiameter / 60);
    pieces.push({ part: 'barrel', kind: 'course', points: points.map((p) => ({ ...p, wall: course.wall })) });
  }
  return pieces;
}

const STEPS = 48;
const steps = Array.from({ length: STEPS + 1 }, (_, i) => i / STEPS);

/** Inside line of a head, bottom pole to tangent line at z = 0. */
function insideLine({ shape }: Head, inside: number): Line {
  switch (shape.kind) {
    case 'semi-ellipsoidal':
      return ellipse(inside, shape.depth);
    case 'hemispherical':
      return ellipse(inside, inside);
    case 'torispherical': {
      const { crownRadius: R, knuckleRadius: r } = shape;
      const meet = Math.asin((inside - r) / (R - r));
      return [
        ...arc(0, (R - r) * Math.cos(meet), R, 0, meet),
        ...arc(inside - r, 0, r, meet, Math.PI / 2).slice(1),
      ];
    }
    case 'conical':
      return cone(inside, shape.halfAngle, shape.knuckleRadius);
    case 'flat':
      return [
        ...steps.slice(0, -1).map((f) => ({ r: inside * f, z: 0, nr: 0, nz: -1 })),
        { r: inside, z: 0, nr: 1, nz: -1 },
        { r: inside, z: 0, nr: 1, nz: 0 },
      ];
  }
}

/** Cone with a knuckle, closed at the tip by a cap of the knuckle radius. */
function cone(inside: number, halfAngle: number, r: number): Line {
  const slope = Math.PI / 2 - halfAngle;
  const knuckle = arc(inside - r, 0, r, slope, Math.PI / 2);
  const [start] = knuckle;
  const tipR = r * Math.sin(slope);
  const tipZ = start.z - (start.r - tipR) * Math.tan(slope);
  const cap = arc(0, tipZ + r * Math.cos(slope), r, 0, slope);
  const side = steps.slice(1, -1).map((f) => ({
    ...start,
    r: tipR + f * (start.r - tipR),
    z: tipZ + f * (start.z - tipZ),
  }));
  return [...cap, ...side, ...knuckle];
}

/** Quarter of an ellipse, pole to side. */
const ellipse = (radius: number, depth: number): Line =>
  steps.map((f) => {
    const u = (f * Math.PI) / 2;
    const [nr, nz] = [depth * Math.sin(u), -radius * Math.cos(u)];
    const length = Math.hypot(nr, nz);
    return { r: radius * Math.sin(u), z: -depth * Math.cos(u), nr: nr / length, nz: nz / length };
  });

/** Arc about (r, z), angles from the downward axis. */
const arc = (r: number, z: number, radius: number, from: number, to: number): Line =>
  steps.map((f) => {
    const angle = from + f * (to - from);
    const [nr, nz] = [Math.sin(angle), -Math.cos(angle)];
    return { r: r + radius * nr, z: z + radius * nz, nr, nz };
  });

function straight(r: number, from: number, to: number, stride: number): Line {
  const n = Math.max(1, Math.ceil((to - from) / stride));
  return Array.from({ length: n + 1 }, (_, i) => ({ r, z: from + ((to - from) * i) / n, nr: 1, nz: 0 }));
}
