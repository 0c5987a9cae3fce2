/**
 * The meridian of a tank: the line the shell is built on, from the bottom pole up to the top pole, span by span.
 *
 * The line runs half a reference wall outside the inside contour. Parts of another wall are flush inside, so their
 * mid-surface lies off the line by `offset`; the element carries that eccentricity.
 */
import type { Course, Head, Tank } from '../../tank/tank.ts';
import { barrelSpans } from './barrelSpans.ts';
import { branchesOf } from './branches.ts';
import { mirrored } from './curve.ts';
import { headSpans } from './headSpans.ts';
import type { Branch, Span } from './span.ts';

export interface Meridian {
  /** Bottom pole to top pole. */
  readonly spans: readonly Span[];
  readonly branches: readonly Branch[];
  readonly referenceWall: number;
  /** Both halves are alike: only the bottom half needs solving. */
  readonly symmetric: boolean;
  readonly height: number;
}

export function meridianOf(tank: Tank): Meridian {
  const referenceWall = longestCourse(tank).wall;
  const inside = tank.insideDiameter / 2;
  const spans = [
    ...headSpans(tank.heads.bottom, 'bottom head', inside, referenceWall),
    ...barrelSpans(tank, inside, referenceWall),
    ...headSpans(tank.heads.top, 'top head', inside, referenceWall).map(upsideDown(tank.length)).reverse(),
  ];
  return {
    spans,
    branches: branchesOf(tank, inside, referenceWall),
    referenceWall,
    symmetric: isSymmetric(tank),
    height: tank.length,
  };
}

export const longestCourse = (tank: Tank): Course =>
  tank.courses.reduce((best, course) => (course.length > best.length ? course : best));

const upsideDown =
  (height: number) =>
  (span: Span): Span => {
    const { curve, extra } = span;
    return {
      ...span,
      curve: mirrored(curve, height),
      from: curve.length - span.to,
      to: curve.length - span.from,
      ...(extra === undefined ? {} : { extra: (s: number) => extra(curve.length - s) }),
    };
  };

/** Alike about mid-height in everything that the shell sees; a part at mid-height itself needs the whole tank. */
function isSymmetric(tank: Tank): boolean {
  if (tank.stand?.axis === 'upright') return false;
  if (tank.baffles.length > 0 || tank.skirts.length > 0 || tank.girthSeams.length > 0) return false;
  if (tank.courses.length > 1) return false;
  return seenOf(tank.heads.top) === seenOf(tank.heads.bottom);
}

/** What the shell sees of a head. */
const seenOf = ({ shape, wall, straightFlange, steel, boss, formingStrain, measuredWalls }: Head): string =>
  JSON.stringify([shape, wall, straightFlange, steel, boss, formingStrain, measuredWalls]);
