/**
 * The meridian of a tank: the line the shell is built on, from the bottom pole up to the top pole, span by span.
 *
 * The line runs half a reference wall outside the inside contour. Parts of another wall are flush inside, so their
 * mid-surface lies off the line by `offset`; the element carries that eccentricity.
 */
import type { Steel } from '../steel/steel.ts';
import type { Course, GirthSeam, Head, LayerState, Tank } from '../tank/tank.ts';
import { arc, type Curve, line, mirrored, quarterEllipse } from './curve.ts';

export type Part = 'bottom head' | 'barrel' | 'top head' | 'baffle' | 'skirt' | 'link';

/** A stretch of meridian of one wall, one steel, one curve. */
export interface Span {
  readonly part: Part;
  readonly curve: Curve;
  readonly from: number;
  readonly to: number;
  readonly wall: number;
  /** Mid-surface outside the line, mm. */
  readonly offset: number;
  readonly steel: Steel;
  readonly layers?: readonly LayerState[];
  /** True where water presses on the inside. */
  readonly wet: boolean;
  /** Girth seam of this index, if the span is weld metal. */
  readonly seam?: number;
}

/** Spans that hang on the meridian at height z, run from their free edge to the line. */
export interface Branch {
  readonly at: number;
  readonly spans: readonly Span[];
}

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
    branches: branchesOf(tank, inside + referenceWall / 2, referenceWall),
    referenceWall,
    symmetric: isSymmetric(tank),
    height: tank.length,
  };
}

const longestCourse = (tank: Tank): Course =>
  tank.courses.reduce((best, course) => (course.length > best.length ? course : best));

/** Curves of the line over one head, pole first, tangent line at z = 0. */
function headCurves(head: Head, inside: number, h: number): Curve[] {
  const { shape } = head;
  switch (shape.kind) {
    case 'semi-ellipsoidal':
      return [quarterEllipse(inside + h, shape.depth + h)];
    case 'hemispherical':
      return [arc([0, 0], inside + h, 0, Math.PI / 2)];
    case 'torispherical': {
      const { crownRadius: R, knuckleRadius: r } = shape;
      const meet = Math.asin((inside - r) / (R - r));
      const crown = arc([0, (R - r) * Math.cos(meet)], R + h, 0, meet);
      return [crown, arc([inside - r, 0], r + h, meet, Math.PI / 2)];
    }
    case 'conical': {
      const { halfAngle, knuckleRadius: r } = shape;
      const slope = Math.PI / 2 - halfAngle;
      const knuckle = arc([inside - r, 0], r + h, slope, Math.PI / 2);
      const start = knuckle.at(0);
      const tipR = (r + h) * Math.sin(slope);
      const along = (start.r - tipR) / Math.cos(slope);
      const tip: [number, number] = [tipR, start.z - along * Math.sin(slope)];
      const cap = arc([0, tip[1] + (r + h) * Math.cos(slope)], r + h, 0, slope);
      return [cap, line(tip, [start.r, start.z]), knuckle];
    }
    case 'flat':
      return [line([0, -h], [inside + h, -h]), line([inside + h, -h], [inside + h, 0])];
  }
}

function headSpans(head: Head, part: Part, inside: number, referenceWall: number): Span[] {
  const plain = {
    part,
    wall: head.wall,
    offset: (head.wall - referenceWall) / 2,
    steel: head.steel,
    wet: true,
  };
  const spans = headCurves(head, inside, referenceWall / 2).map((curve) => ({
    ...plain,
    curve,
    from: 0,
    to: curve.length,
  }));
  return head.boss === undefined
    ? spans
    : withBoss(spans, head.boss.diameter / 2, head.boss.thickness, referenceWall);
}

/** Thickens the spans inside radius `edge`, flush inside. */
function withBoss(spans: Span[], edge: number, thickness: number, referenceWall: number): Span[] {
  const boss = { wall: thickness, offset: (thickness - referenceWall) / 2 };
  return spans.flatMap((span): Span[] => {
    if (span.curve.at(span.to).r <= edge) return [{ ...span, ...boss }];
    if (span.curve.at(span.from).r >= edge) return [span];
    const cut = arcLengthAtRadius(span, edge);
    return [
      { ...span, to: cut, ...boss },
      { ...span, from: cut },
    ];
  });
}

function arcLengthAtRadius(span: Span, radius: number): number {
  let low = span.from;
  let high = span.to;
  for (let i = 0; i < 60; i++) {
    const middle = 0.5 * (low + high);
    if (span.curve.at(middle).r < radius) low = middle;
    else high = middle;
  }
  return low;
}

const upsideDown =
  (height: number) =>
  (span: Span): Span => ({
    ...span,
    curve: mirrored(span.curve, height),
    from: span.curve.length - span.to,
    to: span.curve.length - span.from,
  });

/** Cuts the barrel at flanges, courses and girth seams, bottom to top. */
function barrelSpans(tank: Tank, inside: number, referenceWall: number): Span[] {
  const radius = inside + referenceWall / 2;
  const curve = line([radius, 0], [radius, tank.length]);
  const cuts = new Set<number>([0, tank.length]);
  const flangeTop = tank.length - tank.heads.top.straightFlange;
  cuts.add(tank.heads.bottom.straightFlange).add(flangeTop);
  for (const seam of tank.girthSeams) {
    cuts.add(Math.max(0, seam.at - seam.width / 2)).add(Math.min(tank.length, seam.at + seam.width / 2));
  }
  for (const edge of courseEdges(tank)) cuts.add(edge);
  for (const baffle of tank.baffles) cuts.add(baffle.at);
  const heights = [...cuts]
    .sort((a, b) => a - b)
    .filter((z, i, all) => i === 0 || z - all[i - 1] > SAME_PLACE);
  return heights.slice(1).map((to, i) => barrelSpan(tank, curve, heights[i], to, referenceWall));
}

/** Cuts nearer than this are one, mm: lengths that sum to the barrel's leave rounding. */
const SAME_PLACE = 1e-6;

function courseEdges(tank: Tank): number[] {
  let top = 0;
  return tank.courses.map((course) => (top += course.length));
}

function barrelSpan(tank: Tank, curve: Curve, from: number, to: number, referenceWall: number): Span {
  const middle = 0.5 * (from + to);
  const { bottom, top } = tank.heads;
  const course =
    tank.courses[
      Math.max(
        0,
        courseEdges(tank).findIndex((edge) => middle < edge),
      )
    ];
  const owner =
    middle < bottom.straightFlange ? bottom : middle > tank.length - top.straightFlange ? top : course;
  const seam = tank.girthSeams.findIndex((s: GirthSeam) => Math.abs(middle - s.at) < s.width / 2);
  return {
    part: 'barrel',
    curve,
    from,
    to,
    wall: owner.wall,
    offset: (owner.wall - referenceWall) / 2,
    steel: seam < 0 ? owner.steel : tank.girthSeams[seam].steel,
    wet: true,
    ...(owner === course && course.layers !== undefined ? { layers: course.layers } : {}),
    ...(seam < 0 ? {} : { seam }),
  };
}

/** Baffles start at the inside face; a short stiff link carries them to the line. */
function branchesOf(tank: Tank, radius: number, referenceWall: number): Branch[] {
  const baffles = tank.baffles.map((baffle): Branch => {
    const face = radius - referenceWall / 2;
    const z = baffle.at;
    const plate = line([face - baffle.width, z], [face, z]);
    const link = line([face, z], [radius, z]);
    const whole = { offset: 0, wet: false, steel: baffle.steel, wall: baffle.thickness, from: 0 };
    return {
      at: z,
      spans: [
        { ...whole, part: 'baffle', curve: plate, to: plate.length },
        { ...whole, part: 'link', curve: link, to: link.length },
      ],
    };
  });
  const skirts = tank.skirts.map((skirt): Branch => {
    const at = skirt.end === 'bottom' ? 0 : tank.length;
    const foot = skirt.end === 'bottom' ? -skirt.length : tank.length + skirt.length;
    const curve = line([radius, foot], [radius, at]);
    const { wall, steel } = skirt;
    return {
      at,
      spans: [{ part: 'skirt', curve, from: 0, to: curve.length, wall, offset: 0, steel, wet: false }],
    };
  });
  return [...baffles, ...skirts];
}

/** Alike about mid-height in everything that the shell sees; a part at mid-height itself needs the whole tank. */
function isSymmetric(tank: Tank): boolean {
  if (tank.stand?.axis === 'upright') return false;
  if (tank.baffles.length > 0 || tank.skirts.length > 0 || tank.girthSeams.length > 0) return false;
  if (tank.courses.length > 1) return false;
  const shape = (head: Head): string =>
    JSON.stringify([head.shape, head.wall, head.straightFlange, head.steel, head.boss]);
  return shape(tank.heads.top) === shape(tank.heads.bottom);
}
