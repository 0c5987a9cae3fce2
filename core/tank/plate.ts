/** A flat round plate under pressure: why a flat end is refused. Source key: timoshenko-plates; limit loads hodge-1963. */

export interface RoundPlate {
  readonly radius: number;
  readonly thickness: number;
  readonly edge: 'clamped' | 'free to turn';
}

/** Largest elastic bending stress, MPa: 3/4 p (a/t)^2 at a clamped edge, 3(3 + nu)/8 p (a/t)^2 in the middle else. */
export const plateStress = (plate: RoundPlate, pressure: number, poisson: number): number => {
  const slender = (plate.radius / plate.thickness) ** 2;
  return (plate.edge === 'clamped' ? 0.75 : (3 * (3 + poisson)) / 8) * pressure * slender;
};

/**
 * Plastic limit pressure in bending, MPa, for small deflections: 12.5 (clamped) or 6.51 (free to turn) times
 * M0/a^2 with M0 = Y t^2/4, von Mises. A thin plate carries more by dishing; then it is no flat end any more.
 */
export const plateLimitPressure = (plate: RoundPlate, yieldStress: number): number =>
  ((plate.edge === 'clamped' ? 12.5 : 6.51) * yieldStress * plate.thickness ** 2) / (4 * plate.radius ** 2);

/** Deflection of the middle, mm: p a^4/(64 D) clamped, times (5 + nu)/(1 + nu) where the edge is free to turn. */
export const plateDeflection = (
  plate: RoundPlate,
  pressure: number,
  steel: { young: number; poisson: number },
): number => {
  const { young: E, poisson: nu } = steel;
  const stiffness = (E * plate.thickness ** 3) / (12 * (1 - nu ** 2));
  const clamped = (pressure * plate.radius ** 4) / (64 * stiffness);
  return plate.edge === 'clamped' ? clamped : (clamped * (5 + nu)) / (1 + nu);
};
