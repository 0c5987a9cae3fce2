/**
 * Pressure maximum of thin vessels of true stress = K strain^n, rigid-plastic, in closed form; first yield of a closed
 * tube. Source keys: hosford-caddell, zhu-leis, svensson-1958.
 */
import { root } from '../../math/root.ts';

/** Which stress counts: von Mises, Tresca, or the mean of the two (average shear stress, Zhu & Leis). */
export type Criterion = 'von Mises' | 'Tresca' | 'average shear';

export interface Instability {
  /** Logarithmic hoop strain at the maximum. */
  readonly hoop: number;
  /** Pressure times initial radius over initial wall, as a share of Rm. */
  readonly strength: number;
}

/** Stress of a closed cylinder over that of a tensile bar at the same work: 2/sqrt3 for von Mises. */
const CRITERION_FACTOR: Record<Criterion, number> = {
  'von Mises': 2 / Math.sqrt(3),
  Tresca: 1,
  'average shear': 0.5 + 1 / Math.sqrt(3),
};

/** Closed cylinder: hoop strain n/2, p = (C/2)^(n+1) 4 (t0/D0) Rm. */
export const cylinderInstability = (n: number, criterion: Criterion = 'von Mises'): Instability => ({
  hoop: n / 2,
  strength: 2 * (CRITERION_FACTOR[criterion] / 2) ** (n + 1),
});

/** Sphere, von Mises: hoop strain n/3, p = 2 (2/3)^n Rm t0/r0. */
export const sphereInstability = (n: number): Instability => ({ hoop: n / 3, strength: 2 * (2 / 3) ** n });

/** Svensson's engineering form for a closed cylinder of outside and inside radius, MPa. */
export const svenssonPressure = (
  n: number,
  Rm: number,
  radii: { readonly inside: number; readonly outside: number },
): number => ((Rm * 0.25) / (n + 0.227)) * (Math.E / n) ** n * Math.log(radii.outside / radii.inside);

export interface ClosedTube {
  readonly radius: number;
  readonly wall: number;
  readonly yieldStress: number;
  /** Force on the ends besides the pressure, N; tension positive. */
  readonly endForce: number;
}

/** Pressure at which a thin closed tube first yields, MPa (Hosford & Caddell, Metal Forming, example 2.2). */
export const tubeYieldPressure = (tube: ClosedTube, criterion: 'von Mises' | 'Tresca'): number => {
  const { radius: r, wall: t, yieldStress: Y, endForce } = tube;
  const own = endForce / (2 * Math.PI * r * t);
  const excess = (p: number): number => {
    const [hoop, axial] = [(p * r) / t, (p * r) / (2 * t) + own];
    if (criterion === 'von Mises') return Math.sqrt(hoop ** 2 - hoop * axial + axial ** 2) - Y;
    return Math.max(hoop, axial, 0) - Math.min(hoop, axial, 0) - Y;
  };
  if (excess(0) >= 0)
    throw new Error(`the end force alone, ${endForce} N, gives ${own} MPa and yields the tube`);
  return root(excess, 0, (2 * Y * t) / r + Math.abs((2 * own * t) / r));
};

/** Volume of a cylinder that grows in diameter at constant length, over what it was, less one. */
export const volumeGrowthAtConstantLength = (diameterGrowth: number): number => (1 + diameterGrowth) ** 2 - 1;
