/** Plane curves of which a meridian is made: straight lines, arcs and quarter ellipses, run by their arc length. */

/** Point of a meridian: radius, height, and the angle of the tangent from the r axis (rad). */
export interface MeridianPoint {
  readonly r: number;
  readonly z: number;
  readonly angle: number;
}

export interface Curve {
  readonly length: number;
  /** Point at arc length s from the start, 0 <= s <= length. */
  at(s: number): MeridianPoint;
}

export function line(from: readonly [number, number], to: readonly [number, number]): Curve {
  const [r0, z0] = from;
  const length = Math.hypot(to[0] - r0, to[1] - z0);
  const angle = Math.atan2(to[1] - z0, to[0] - r0);
  return {
    length,
    at: (s) => ({ r: r0 + s * Math.cos(angle), z: z0 + s * Math.sin(angle), angle }),
  };
}

/** Arc that turns left (convex outward for a meridian run upwards) from tangent angle `start` to `end`, rad. */
export function arc(centre: readonly [number, number], radius: number, start: number, end: number): Curve {
  return {
    length: radius * (end - start),
    at: (s) => {
      const angle = start + s / radius;
      return { r: centre[0] + radius * Math.sin(angle), z: centre[1] - radius * Math.cos(angle), angle };
    },
  };
}

const PANELS = 64;
// Gauss-Legendre, 5 points on [-1, 1] (Abramowitz & Stegun table 25.4).
const NODES = [-0.906179845938664, -0.538469310105683, 0, 0.538469310105683, 0.906179845938664];
const WEIGHTS = [
  0.236926885056189, 0.478628670499366, 0.568888888888889, 0.478628670499366, 0.236926885056189,
];

/**
 * Quarter ellipse from its bottom (r = 0, z = -depth) to its side (r = radius, z = 0).
 * Arc length by 5-point Gauss on 64 panels: error under 1e-12 of the length down to depth/radius 0.1.
 */
export function quarterEllipse(radius: number, depth: number): Curve {
  const speed = (u: number): number => Math.hypot(radius * Math.cos(u), depth * Math.sin(u));
  const span = (from: number, to: number): number => {
    const half = 0.5 * (to - from);
    let sum = 0;
    for (let i = 0; i < 5; i++) sum += WEIGHTS[i] * speed(from + half * (1 + NODES[i]));
    return half * sum;
  };
  const step = Math.PI / 2 / PANELS;
  const run = new Float64Array(PANELS + 1);
  for (let i = 0; i < PANELS; i++) run[i + 1] = run[i] + span(i * step, (i + 1) * step);
  const parameterAt = (s: number): number => {
    let panel = 0;
    while (panel < PANELS - 1 && run[panel + 1] < s) panel++;
    let u = (panel + 0.5) * step;
    for (let turn = 0; turn < 20; turn++) {
      const miss = s - run[panel] - span(panel * step, u);
      u += miss / speed(u);
      if (Math.abs(miss) < 1e-13 * run[PANELS]) break;
    }
    return Math.min(Math.max(u, 0), Math.PI / 2);
  };
  return {
    length: run[PANELS],
    at: (s) => {
      const u = parameterAt(s);
      return {
        r: radius * Math.sin(u),
        z: -depth * Math.cos(u),
        angle: Math.atan2(depth * Math.sin(u), radius * Math.cos(u)),
      };
    },
  };
}

/** The same curve mirrored about the plane z = height/2 and run the other way: a bottom head becomes a top head. */
export function mirrored(curve: Curve, height: number): Curve {
  return {
    length: curve.length,
    at: (s) => {
      const p = curve.at(curve.length - s);
      return { r: p.r, z: height - p.z, angle: Math.PI - p.angle };
    },
  };
}
