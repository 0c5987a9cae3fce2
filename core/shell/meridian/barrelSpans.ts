/** The barrel from tangent line to tangent line, cut where its wall, its steel or its stiffness changes. */
import type { Course, Head, Tank } from '../../tank/tank.ts';
import { rootDepth } from './branches.ts';
import { type Curve, line } from './curve.ts';
import type { Span } from './span.ts';

/** Cuts nearer than this are one, mm: lengths that sum to the barrel's leave rounding. */
const SAME_PLACE = 1e-6;

/** @param inside radius of the barrel inside, mm */
export function barrelSpans(tank: Tank, inside: number, referenceWall: number): Span[] {
  const radius = inside + referenceWall / 2;
  const curve = line([radius, 0], [radius, tank.length]);
  const heights = cutsOf(tank)
    .map((z) => Math.min(Math.max(z, 0), tank.length))
    .sort((a, b) => a - b)
    .filter((z, i, all) => i === 0 || z - all[i - 1] > SAME_PLACE);
  return heights.slice(1).map((to, i) => barrelSpan(tank, curve, heights[i], to, referenceWall));
}

/** Heights at which something changes: ends, flanges, courses, girth seams, baffles and their feet. */
function cutsOf(tank: Tank): number[] {
  const { bottom, top } = tank.heads;
  return [
    0,
    tank.length,
    bottom.straightFlange,
    tank.length - top.straightFlange,
    ...courseEdges(tank),
    ...tank.girthSeams.flatMap(({ at, width }) => [at - width / 2, at + width / 2]),
    ...tank.baffles.flatMap(({ at, thickness }) => [at - thickness / 2, at, at + thickness / 2]),
  ];
}

function courseEdges(tank: Tank): number[] {
  let top = 0;
  return tank.courses.map((course) => (top += course.length));
}

function barrelSpan(tank: Tank, curve: Curve, from: number, to: number, referenceWall: number): Span {
  const middle = 0.5 * (from + to);
  const owner = ownerAt(tank, middle);
  const seam = tank.girthSeams.findIndex((s) => Math.abs(middle - s.at) < s.width / 2);
  const baffle = tank.baffles.find((b) => Math.abs(middle - b.at) < b.thickness / 2);
  const root = baffle === undefined ? 0 : rootDepth(baffle);
  return {
    part: 'barrel',
    curve,
    from,
    to,
    wall: owner.wall + root,
    offset: (owner.wall - referenceWall - root) / 2,
    steel: seam < 0 ? owner.steel : tank.girthSeams[seam].steel,
    wet: true,
    ...(owner.layers === undefined || seam >= 0 || root > 0 ? {} : { layers: owner.layers }),
    ...(owner.formed === undefined || seam >= 0 ? {} : { formed: owner.formed }),
    ...(seam < 0 ? {} : { seam }),
    ...(root > 0 ? { root } : {}),
  };
}

interface Owner extends Pick<Course, 'wall' | 'steel' | 'layers'> {
  readonly formed?: number;
}

/** Whose metal stands at a height: a head's straight flange, or a course. */
function ownerAt(tank: Tank, height: number): Owner {
  const { bottom, top } = tank.heads;
  if (height < bottom.straightFlange) return flangeOf(bottom);
  if (height > tank.length - top.straightFlange) return flangeOf(top);
  const course = courseEdges(tank).findIndex((edge) => height < edge);
  return tank.courses[Math.max(0, course)];
}

/** A straight flange has the wall measured at the tangent line, if there is one. */
const flangeOf = ({ wall, steel, measuredWalls, formingStrain }: Head): Owner => ({
  wall: measuredWalls?.at(-1) ?? wall,
  steel,
  ...(formingStrain === undefined ? {} : { formed: formingStrain }),
});
