/** The line over one head, pole first, with the tangent line at z = 0: its curves, its walls, its boss. */
import { piecewise } from '../../math/piecewise.ts';
import type { Head } from '../../tank/tank.ts';
import { arc, type Curve, line, quarterEllipse } from './curve.ts';
import type { Part, Span } from './span.ts';

/** @param inside radius of the barrel inside, mm */
export function headSpans(head: Head, part: Part, inside: number, referenceWall: number): Span[] {
  const curves = headCurves(head, inside, referenceWall / 2);
  const whole = curves.reduce((sum, curve) => sum + curve.length, 0);
  let run = 0;
  const spans = curves.map((curve): Span => {
    const start = run;
    run += curve.length;
    return {
      part,
      curve,
      from: 0,
      to: curve.length,
      steel: head.steel,
      wet: true,
      ...wallAlong(head, referenceWall, (s) => (start + s) / whole),
      ...(head.formingStrain === undefined ? {} : { formed: head.formingStrain }),
    };
  });
  return head.boss === undefined
    ? spans
    : withBoss(spans, head.boss.diameter / 2, head.boss.thickness, referenceWall);
}

/** Curves of the line, `h` outside the inside contour. */
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
    case 'conical':
      return coneCurves(shape.halfAngle, shape.knuckleRadius, inside, h);
    case 'flat':
      return [line([0, -h], [inside + h, -h]), line([inside + h, -h], [inside + h, 0])];
  }
}

/** Cap of the knuckle radius, cone, knuckle. */
function coneCurves(halfAngle: number, r: number, inside: number, h: number): Curve[] {
  const slope = Math.PI / 2 - halfAngle;
  const knuckle = arc([inside - r, 0], r + h, slope, Math.PI / 2);
  const start = knuckle.at(0);
  const tipR = (r + h) * Math.sin(slope);
  const along = (start.r - tipR) / Math.cos(slope);
  const tip: [number, number] = [tipR, start.z - along * Math.sin(slope)];
  const cap = arc([0, tip[1] + (r + h) * Math.cos(slope)], r + h, 0, slope);
  return [cap, line(tip, [start.r, start.z]), knuckle];
}

/** Wall of a head flush inside: as measured, straight between the places (share of the way from pole to tangent line). */
function wallAlong(
  { wall, measuredWalls }: Head,
  referenceWall: number,
  share: (s: number) => number,
): Pick<Span, 'wall' | 'offset' | 'extra'> {
  const plain = { wall, offset: (wall - referenceWall) / 2 };
  if (measuredWalls === undefined) return plain;
  return { ...plain, extra: (s) => piecewise(measuredWalls, share(s)) - wall };
}

/** Thickens the spans inside radius `edge`, flush inside. A boss is machined: neither measured as sheet nor formed. */
function withBoss(spans: Span[], edge: number, thickness: number, referenceWall: number): Span[] {
  const bossed = ({ extra: _extra, formed: _formed, ...span }: Span): Span => ({
    ...span,
    wall: thickness,
    offset: (thickness - referenceWall) / 2,
  });
  return spans.flatMap((span): Span[] => {
    if (span.curve.at(span.to).r <= edge) return [bossed(span)];
    if (span.curve.at(span.from).r >= edge) return [span];
    const cut = arcLengthAtRadius(span, edge);
    return [bossed({ ...span, to: cut }), { ...span, from: cut }];
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
