/**
 * Elastic bending at the edge of a long cylinder, thin-shell theory, for checks of the shell and for first looks.
 * Source key: timoshenko-shells (§§114-118); distances x along the cylinder from the edge, stresses MPa.
 */

export interface Edge {
  /** Mid-surface. */
  readonly radius: number;
  readonly wall: number;
  readonly young: number;
  readonly poisson: number;
  readonly pressure: number;
}

/** 1/mm: bending dies as exp(-decay x). */
export const decayOf = ({ radius, wall, poisson }: Pick<Edge, 'radius' | 'wall' | 'poisson'>): number =>
  (3 * (1 - poisson ** 2)) ** 0.25 / Math.sqrt(radius * wall);

/** Meridional stresses of membrane heads at their equator, and how much less they swell there than the cylinder. */
export type EdgeHead =
  | { readonly kind: 'hemispherical' }
  /** Half axes: radius and depth of the mid-surface. */
  | { readonly kind: 'semi-ellipsoidal'; readonly depth: number };

/** Bending moment per length at the clamped edge of a closed cylinder, N (positive: tension inside). */
export const clampedMoment = (edge: Edge): number =>
  (edge.pressure * (1 - edge.poisson / 2)) / (2 * decayOf(edge) ** 2);

/** Radial displacement of a closed cylinder clamped at x = 0, mm. */
export const clampedDisplacement = (edge: Edge, x: number): number => {
  const free = freeDisplacement(edge);
  const bx = decayOf(edge) * x;
  return free * (1 - Math.exp(-bx) * (Math.cos(bx) + Math.sin(bx)));
};

const freeDisplacement = ({ pressure, radius, wall, young, poisson }: Edge): number =>
  ((pressure * radius ** 2) / (young * wall)) * (1 - poisson / 2);

export interface EdgeStress {
  /** Along the meridian and around the hoop, at the inside and outside face. */
  readonly meridionalInside: number;
  readonly meridionalOutside: number;
  readonly hoopInside: number;
  readonly hoopOutside: number;
}

/**
 * Stresses in a cylinder at x from the junction with a head of the same wall. The two edges share the difference of
 * their free displacements equally and no moment passes (both shells have the same stiffness at the edge).
 */
export const junctionStress = (edge: Edge, head: EdgeHead, x: number): EdgeStress => {
  const { pressure: p, radius: a, wall: t, young: E, poisson: nu } = edge;
  const beta = decayOf(edge);
  const bx = beta * x;
  const fade = Math.exp(-bx);
  // Free displacements differ by p a^2/(E t) times this share: 1/2 for a sphere, a^2/(2 b^2) for an ellipsoid.
  const share = head.kind === 'hemispherical' ? 0.5 : a ** 2 / (2 * head.depth ** 2);
  const half = (share * p * a ** 2) / (2 * E * t);
  const displacement = freeDisplacement(edge) - half * fade * Math.cos(bx);
  const stiffness = (E * t ** 3) / (12 * (1 - nu ** 2));
  const moment = 2 * beta ** 2 * stiffness * half * fade * Math.sin(bx);
  const axial = (p * a) / (2 * t);
  const bending = (6 * moment) / t ** 2;
  const hoop = (E * displacement) / a + nu * axial;
  return {
    meridionalInside: axial - bending,
    meridionalOutside: axial + bending,
    hoopInside: hoop - nu * bending,
    hoopOutside: hoop + nu * bending,
  };
};

/** Membrane stresses of a half ellipsoid (half axes a, b of the mid-surface) at the pole and at the equator, MPa. */
export const ellipsoidMembrane = (
  pressure: number,
  axes: { readonly a: number; readonly b: number },
  wall: number,
): { readonly pole: number; readonly equatorHoop: number; readonly equatorMeridional: number } => {
  const { a, b } = axes;
  const unit = (pressure * a) / wall;
  return {
    pole: (unit * a) / (2 * b),
    equatorHoop: unit * (1 - a ** 2 / (2 * b ** 2)),
    equatorMeridional: unit / 2,
  };
};
