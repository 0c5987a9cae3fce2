/** Collapse of the barrel under suction: what draining with a shut vent does. Source key: windenburg-trilling-1934. */
import { ATMOSPHERE } from '../../units.ts';

export interface CollapseBarrel {
  readonly diameter: number;
  /** Between stiff ends, mm. */
  readonly length: number;
  readonly wall: number;
  readonly young: number;
  readonly poisson: number;
}

/**
 * Outside pressure (MPa) at which a thin barrel between stiff ends collapses elastically, Windenburg & Trilling 1934:
 * 2.42 E/(1 - nu²)^0.75 (t/D)^2.5/[L/D - 0.45 sqrt(t/D)]. For a round barrel; dents and a flat lower it.
 */
export const collapsePressure = (barrel: CollapseBarrel): number => {
  const { diameter: D, length: L, wall: t, young: E, poisson: nu } = barrel;
  const short = L / D - 0.45 * Math.sqrt(t / D);
  if (!(short > 0)) throw new Error(`a barrel ${L} mm long of ${D} mm diameter is too short for the formula`);
  return (((2.42 * E) / (1 - nu ** 2) ** 0.75) * (t / D) ** 2.5) / short;
};

export interface Draining {
  readonly collapse: number;
  /** Collapse pressure over the most suction there can be, one atmosphere. */
  readonly margin: number;
  /** True: an open vent is a matter of life for this tank, not of tidiness. */
  readonly ventMustBeOpen: boolean;
}

/**
 * Factor on the collapse pressure under which draining with a shut vent is called a danger. The published tests scatter
 * by a quarter, and stretching leaves a barrel less round: 3, as codes take for outside pressure (from memory).
 */
const COLLAPSE_FACTOR = 3;

export const draining = (barrel: CollapseBarrel): Draining => {
  const collapse = collapsePressure(barrel);
  const margin = collapse / ATMOSPHERE;
  return { collapse, margin, ventMustBeOpen: margin < COLLAPSE_FACTOR };
};
