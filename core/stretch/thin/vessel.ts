/**
 * Membrane closed forms: a long closed-ended cylinder and a sphere under pressure, elastic-plastic, with thinning.
 *
 * In both the ratio of the two stresses never changes (hoop 2 : 1 along the axis, or 1 : 1), so the plastic strains
 * grow in a fixed ratio as well and the incremental J2 law integrates exactly: one number, the equivalent plastic
 * strain, gives the whole state. Strains are logarithmic, the plastic part keeps the volume, the elastic part is
 * Hooke's law between logarithmic strain and stress.
 *
 * Which stress: the flow curve and Hooke's law hold for the Kirchhoff stress (Cauchy stress times the volume ratio),
 * as in the shell. Independent solid finite elements say so: their thin-wall limit, 4.41619417 MPa for the cylinder
 * and 8.12955023 MPa for the sphere, is met to all digits with Kirchhoff and missed by 0.28 % and 0.34 % with Cauchy
 * stress (checks/vessel/thin-vessel.ts). Pressure acts on the mid-surface. An infinite Young's modulus makes it rigid-plastic.
 */
import { peak, root } from '../../math/root.ts';
import type { Metal } from '../../steel/plane.ts';

export interface ThinVessel {
  readonly kind: 'long cylinder' | 'sphere';
  /** Of the mid-surface, at zero pressure. */
  readonly radius: number;
  readonly wall: number;
  readonly metal: Metal;
}

export interface ThinState {
  /** Equivalent plastic strain. */
  readonly plastic: number;
  /** Von Mises equivalent Kirchhoff stress. */
  readonly equivalent: number;
  /** Logarithmic strains. */
  readonly hoop: number;
  readonly axial: number;
  readonly through: number;
  /** Of the mid-surface, now. */
  readonly radius: number;
  readonly wall: number;
  /** Cauchy stress. */
  readonly hoopStress: number;
  readonly pressure: number;
  /** Enclosed volume (inside surface) over that at zero pressure, less one. */
  readonly volumeGrowth: number;
}

export const longCylinder = (metal: Metal, radius: number, wall: number): ThinVessel => ({
  kind: 'long cylinder',
  radius,
  wall,
  metal,
});

export const sphere = (metal: Metal, radius: number, wall: number): ThinVessel => ({
  kind: 'sphere',
  radius,
  wall,
  metal,
});

/** What the shape does: all in terms of the hoop stress and the equivalent plastic strain. */
interface Shape {
  /** p = lift x hoop stress x wall / radius. */
  readonly lift: number;
  readonly hoopPerEquivalent: number;
  readonly axialPerHoop: number;
  /** Plastic strains per equivalent plastic strain. */
  readonly hoopFlow: number;
  readonly axialFlow: number;
}

const SHAPES: Record<ThinVessel['kind'], Shape> = {
  'long cylinder': {
    lift: 1,
    hoopPerEquivalent: 2 / Math.sqrt(3),
    axialPerHoop: 0.5,
    hoopFlow: Math.sqrt(3) / 2,
    axialFlow: 0,
  },
  sphere: { lift: 2, hoopPerEquivalent: 1, axialPerHoop: 1, hoopFlow: 0.5, axialFlow: 0.5 },
};

/** State at an equivalent plastic strain under an equivalent stress; under first yield `plastic` is 0. */
export const thinState = (vessel: ThinVessel, plastic: number, equivalent: number): ThinState => {
  const shape = SHAPES[vessel.kind];
  const { young: E, poisson: nu } = vessel.metal;
  const kirchhoff = shape.hoopPerEquivalent * equivalent;
  const m = shape.axialPerHoop;
  const hoop = shape.hoopFlow * plastic + ((1 - nu * m) * kirchhoff) / E;
  const axial = shape.axialFlow * plastic + ((m - nu) * kirchhoff) / E;
  const through = -(shape.hoopFlow + shape.axialFlow) * plastic - (nu * (1 + m) * kirchhoff) / E;
  const radius = vessel.radius * Math.exp(hoop);
  const wall = vessel.wall * Math.exp(through);
  const hoopStress = kirchhoff * Math.exp(-(hoop + axial + through));
  return {
    plastic,
    equivalent,
    hoop,
    axial,
    through,
    radius,
    wall,
    hoopStress,
    pressure: (shape.lift * hoopStress * wall) / radius,
    volumeGrowth: volumeRatio(vessel, radius, wall, axial) - 1,
  };
};

const volumeRatio = (vessel: ThinVessel, radius: number, wall: number, axial: number): number => {
  const inside = (radius - wall / 2) / (vessel.radius - vessel.wall / 2);
  return vessel.kind === 'sphere' ? inside ** 3 : inside ** 2 * Math.exp(axial);
};

const scratch = new Float64Array(2);

/** State on the flow curve at an equivalent plastic strain, without rate effect. */
export const yieldingState = (vessel: ThinVessel, plastic: number): ThinState => {
  vessel.metal.flow.at(plastic, scratch);
  return thinState(vessel, plastic, scratch[0]);
};

export interface Summit extends ThinState {
  /** True where the flow curve is used beyond its evidence. */
  readonly extrapolated: boolean;
}

/** Plastic strain beyond which no maximum is looked for: the wall is then a thirtieth of what it was. */
const FARTHEST = 4;

/** The largest pressure that the vessel can carry, or undefined where it still rises at plastic strain 4. */
export const pressureMaximum = (vessel: ThinVessel): Summit | undefined => {
  const pressure = (plastic: number): number => yieldingState(vessel, plastic).pressure;
  const trial = plasticLadder();
  let best = 0;
  for (let i = 1; i < trial.length; i++) if (pressure(trial[i]) > pressure(trial[best])) best = i;
  if (best === trial.length - 1) return undefined;
  const { x } = peak(pressure, trial[Math.max(best - 1, 0)], trial[best + 1]);
  const plastic = pressure(x) > pressure(trial[best]) ? x : trial[best];
  return { ...yieldingState(vessel, plastic), extrapolated: plastic > vessel.metal.flow.evidence };
};

/** Zero, then from 1e-5 by steps of a tenth up to the farthest strain. */
const plasticLadder = (): number[] => {
  const trial = [0];
  for (let x = 1e-5; x < FARTHEST; x *= 1.1) trial.push(x);
  trial.push(FARTHEST);
  return trial;
};

/**
 * Where the wall may begin to neck along a line: d(hoop stress)/d(hoop strain) = hoop stress (Considère in the hoop).
 * Undefined where the curve hardens faster than that up to plastic strain 4.
 */
export const localNecking = (vessel: ThinVessel): Summit | undefined => {
  const surplus = (plastic: number): number =>
    hoopHardening(vessel, plastic) - yieldingState(vessel, plastic).hoopStress;
  const trial = plasticLadder();
  const passed = trial.findIndex((plastic) => surplus(plastic) <= 0);
  if (passed < 0) return undefined;
  const plastic = passed === 0 ? 0 : root(surplus, trial[passed - 1], trial[passed]);
  return { ...yieldingState(vessel, plastic), extrapolated: plastic > vessel.metal.flow.evidence };
};

/** d(Cauchy hoop stress)/d(logarithmic hoop strain) along the path. */
const hoopHardening = (vessel: ThinVessel, plastic: number): number => {
  const shape = SHAPES[vessel.kind];
  const { young: E, poisson: nu, flow } = vessel.metal;
  flow.at(plastic, scratch);
  const slope = shape.hoopPerEquivalent * scratch[1];
  const m = shape.axialPerHoop;
  const state = thinState(vessel, plastic, scratch[0]);
  const dilation = ((1 - 2 * nu) * (1 + m) * slope) / E;
  const perPlastic =
    slope * (state.hoopStress / (shape.hoopPerEquivalent * scratch[0])) - state.hoopStress * dilation;
  return perPlastic / (shape.hoopFlow + ((1 - nu * m) * slope) / E);
};

export type Carried =
  | { readonly kind: 'held'; readonly state: ThinState }
  /** The pressure is over what the vessel can carry. */
  | { readonly kind: 'burst'; readonly maximum: ThinState };

/** State under a pressure on the way up, without rate effect. */
export const underPressure = (vessel: ThinVessel, pressure: number): Carried => {
  const first = yieldingState(vessel, 0);
  if (pressure <= first.pressure) return { kind: 'held', state: elasticState(vessel, 0, pressure) };
  const maximum = pressureMaximum(vessel) ?? yieldingState(vessel, FARTHEST);
  if (pressure > maximum.pressure) return { kind: 'burst', maximum };
  const excess = (plastic: number): number => yieldingState(vessel, plastic).pressure - pressure;
  const trial = plasticLadder();
  const reached = trial.findIndex((plastic) => plastic > maximum.plastic || excess(plastic) >= 0);
  const plastic = root(excess, trial[reached - 1], Math.min(trial[reached], maximum.plastic));
  return { kind: 'held', state: yieldingState(vessel, plastic) };
};

/** State at a pressure with the plastic strain fixed: loading before yield, release, reloading. */
export const elasticState = (vessel: ThinVessel, plastic: number, pressure: number): ThinState =>
  thinState(vessel, plastic, equivalentUnder(vessel, plastic, pressure));

/** Equivalent Kirchhoff stress that carries a pressure at a plastic strain. */
export const equivalentUnder = (vessel: ThinVessel, plastic: number, pressure: number): number => {
  const shape = SHAPES[vessel.kind];
  const { young: E, poisson: nu } = vessel.metal;
  const m = shape.axialPerHoop;
  // ln p = ln s - give s - (2 a + b) plastic + ln(p / s at zero strain); Newton on s, which converges at once.
  const give = (shape.hoopPerEquivalent * (1 - nu * m + nu * (1 + m) + (1 - 2 * nu) * (1 + m))) / E;
  const thinning = 2 * shape.hoopFlow + shape.axialFlow;
  const stiff =
    ((pressure * vessel.radius) / (shape.lift * shape.hoopPerEquivalent * vessel.wall)) *
    Math.exp(thinning * plastic);
  let s = stiff;
  for (let i = 0; i < 50; i++) {
    const next = s - (s - stiff * Math.exp(give * s)) / (1 - give * stiff * Math.exp(give * s));
    if (Math.abs(next - s) <= 1e-14 * Math.abs(s)) return next;
    s = next;
  }
  throw new Error(
    `no elastic stress carries ${pressure} MPa in a ${vessel.kind} of radius ${vessel.radius} mm`,
  );
};

/** State on the flow curve at a hoop strain (logarithmic), without rate effect. */
export const atHoopStrain = (vessel: ThinVessel, hoop: number): ThinState => {
  const first = yieldingState(vessel, 0);
  if (hoop <= first.hoop) return elasticAtHoop(vessel, hoop);
  const shape = SHAPES[vessel.kind];
  return yieldingState(
    vessel,
    // A hair over the rigid answer, where the elastic strain is nothing and rounding decides the sign.
    root((plastic) => yieldingState(vessel, plastic).hoop - hoop, 0, (1 + 1e-12) * (hoop / shape.hoopFlow)),
  );
};

const elasticAtHoop = (vessel: ThinVessel, hoop: number): ThinState => {
  const shape = SHAPES[vessel.kind];
  const { young: E, poisson: nu } = vessel.metal;
  if (E === Infinity) return yieldingState(vessel, 0);
  return thinState(vessel, 0, (hoop * E) / ((1 - nu * shape.axialPerHoop) * shape.hoopPerEquivalent));
};

/** How the hoop strain follows the plastic strain at constant pressure: exact derivatives for the hold. */
export const underHold = (vessel: ThinVessel, equivalent: number): { stress: number; hoop: number } => {
  const shape = SHAPES[vessel.kind];
  const { young: E, poisson: nu } = vessel.metal;
  const m = shape.axialPerHoop;
  const give = (shape.hoopPerEquivalent * (1 - nu * m + nu * (1 + m) + (1 - 2 * nu) * (1 + m))) / E;
  const stress = (2 * shape.hoopFlow + shape.axialFlow) / (1 / equivalent - give);
  return { stress, hoop: shape.hoopFlow + ((1 - nu * m) * shape.hoopPerEquivalent * stress) / E };
};
