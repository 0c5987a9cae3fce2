/** The tank as welded: the noun in the centre. Inside units (mm, MPa, t/mm³). Heights count from the bottom tangent line. */
import type { Steel } from '../steel/steel.ts';

/** Inside contour of a head. */
export type HeadShape =
  /** Half an ellipse; `depth` from tangent line to pole, inside. */
  | { readonly kind: 'semi-ellipsoidal'; readonly depth: number }
  | { readonly kind: 'torispherical'; readonly crownRadius: number; readonly knuckleRadius: number }
  | { readonly kind: 'hemispherical' }
  /** Cone of half apex angle (rad) with a knuckle; the tip is closed by a spherical cap of the knuckle radius. */
  | { readonly kind: 'conical'; readonly halfAngle: number; readonly knuckleRadius: number }
  | { readonly kind: 'flat' };

/** Thickened disc at the pole, flush inside, where the fitting is welded or screwed. */
export interface Boss {
  readonly diameter: number;
  readonly thickness: number;
}

export interface Head {
  readonly shape: HeadShape;
  readonly wall: number;
  /** Cylindrical part of the head within the barrel length, with the head's wall. */
  readonly straightFlange: number;
  readonly steel: Steel;
  readonly boss?: Boss;
  /** Plate or heat the head was made of. */
  readonly plate?: string;
  /** Mean true plastic strain that spinning or pressing left: the flow curve begins there. */
  readonly formingStrain?: number;
  /** Walls measured at equal distances along the inside, pole to tangent line; `wall` is their mean. */
  readonly measuredWalls?: readonly number[];
}

/** One rolled and welded ring of sheet. Courses stack from the bottom tangent line up. */
export interface Course {
  readonly length: number;
  readonly wall: number;
  readonly steel: Steel;
  readonly plate?: string;
  /** Plastic strain and residual stress of rolling, from the inside to the outside of the wall. */
  readonly layers?: readonly LayerState[];
}

/** State that a layer of sheet brings along. `depth` from -1 (inside face) to +1 (outside face). */
export interface LayerState {
  readonly depth: number;
  /** Equivalent plastic strain. */
  readonly plastic: number;
  /** Residual Kirchhoff stresses, MPa: along the meridian, around the hoop. */
  readonly meridional: number;
  readonly hoop: number;
}

/** A girth seam: a ring of weld metal of its own curve. */
export interface GirthSeam {
  readonly at: number;
  readonly width: number;
  readonly steel: Steel;
  /** Where its steel is that of the course around it times a factor: the factor. Absent: a curve of its own, or 1. */
  readonly strength?: number;
}

/** A long seam: a strip in series under the hoop force of the plate beside it. */
export interface LongSeam {
  readonly width: number;
  /** Flow stress of the seam over that of the plate. */
  readonly strength: number;
}

/** Annular plate inside the barrel, wetted on both faces. */
export interface Baffle {
  readonly at: number;
  readonly width: number;
  readonly thickness: number;
  readonly steel: Steel;
}

/** Cylindrical skirt outside, at a tangent line. */
export interface Skirt {
  readonly end: 'top' | 'bottom';
  readonly length: number;
  readonly wall: number;
  readonly steel: Steel;
}

/** A place where the tape or wire goes round. */
export interface Girth {
  readonly name: string;
  readonly at: number;
}

/** Hole off the pole: checked by area replacement, not part of the path. */
export interface Opening {
  readonly part: 'barrel' | 'top' | 'bottom';
  readonly diameter: number;
  readonly at?: number;
  readonly padThickness?: number;
  readonly padWidth?: number;
}

export interface Stand {
  readonly axis: 'upright' | 'lying';
  /** Height of the pressure gauge over the bottom tangent line. */
  readonly gauge: number;
}

export interface Water {
  readonly temperature: number;
  /** Volume of trapped air at filling (atmospheric), mm³. */
  readonly trappedAir: number;
}

export interface Tank {
  readonly name: string;
  readonly serial?: string;
  readonly insideDiameter: number;
  /** Tangent line to tangent line. */
  readonly length: number;
  /** Bottom to top; lengths sum to `length`. */
  readonly courses: readonly Course[];
  readonly heads: { readonly top: Head; readonly bottom: Head };
  readonly girthSeams: readonly GirthSeam[];
  readonly longSeam?: LongSeam;
  readonly baffles: readonly Baffle[];
  readonly skirts: readonly Skirt[];
  readonly girths: readonly Girth[];
  readonly openings: readonly Opening[];
  readonly stand?: Stand;
  readonly water: Water;
}

/** What the tank is for, and how it is stretched. */
export interface Duty {
  /** MPa gauge. */
  readonly workingPressure: number;
  readonly stretchFactor: number;
  /** mm³/s; absent: the stretch is taken at the rate of the flow curve. */
  readonly pump?: number;
  readonly holds: readonly Hold[];
}

export interface Hold {
  readonly pressure: number;
  /** s. */
  readonly time: number;
  readonly valve: 'open' | 'shut';
}

/** Pressure at which the tank is released, MPa gauge. */
export const stretchPressure = (duty: Duty): number => duty.workingPressure * duty.stretchFactor;
