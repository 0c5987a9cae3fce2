/** What is known of a steel before anyone has tested this plate: typical values, and figures no tensile test can give. */
import { minimaOf, typicalOf } from '../grade/grade.ts';
import type { Grade, ProductForm, Typical } from '../grade/row.ts';
import { FACTORS, KNOTS } from './shape.ts';
import { logProof, logStrength, PROOF10_PLASTIC, UNIFORM_PLASTIC } from './figures.ts';
import { BORROWED } from './scatter.ts';

/** A figure with its standard deviation and its reason. */
export interface Assumed {
  readonly mean: number;
  readonly deviation: number;
  readonly reason: string;
}

/**
 * Factor on the flow stress for closed-end loading. Yield criteria put plane strain at 0.933 (average shear stress),
 * 0.943 and 0.967 (Hosford, exponents 8 and 6; W. F. Hosford, J. Appl. Mech. 39 (1972) 607) to 1 (von Mises) of von
 * Mises; 0.97 +/- 0.03 (one standard deviation) covers them all within 90 %. No tensile test narrows it.
 */
export const BIAXIAL: Assumed = {
  mean: 0.97,
  deviation: 0.03,
  reason: 'yield criteria in plane strain differ between 0.93 and 1.00 of von Mises',
};

/**
 * Rise of flow stress for e times the strain rate, MPa; spread is of its logarithm. The small bars of Karlson et al. 2023
 * give 2.4 to 3.5 between 1 and 20 % strain over two decades of rate; a hold runs three decades slower still.
 */
export const RATE: Assumed = {
  mean: 2.9,
  deviation: 0.25,
  reason: 'small bars of annealed 304L pulled at 1e-4 and 1e-2 1/s: 2.4 to 3.5 MPa per e-fold',
};

/** Near first yield the rate effect is larger (6.1 MPa at 0.2 % in the same bars): factor on RATE at a plastic strain. */
export const rateShare = (ep: number): number => 1 + 1.5 * Math.exp(-ep / 0.004);

/**
 * Relative change of flow stress per kelvin. EN 10028-7 lets Rp0.2 of 1.4307 fall from 200 to 180 MPa between 20 and
 * 50 °C (from memory, middling) and Rm by 0.2 % per kelvin; warm water also makes less martensite (Materials 10 (2017) 1331).
 */
export const WARMTH: Assumed = {
  mean: -0.0025,
  deviation: 0.0012,
  reason: 'proof stress tables fall 0.2 to 0.35 % per kelvin from 20 to 50 °C (from memory)',
};

/** °C at which tensile tests are taken to be made where nothing is said. */
export const ROOM = 20;

/** Flow stress of the seam over that of the plate. */
export const SEAM: Assumed = {
  mean: 1,
  deviation: 0.1,
  reason: 'no seam coupon: a matching seam within 10 % (common practice, no source)',
};

/** Wall against the tank file where nothing was measured. */
export const WALL: Assumed = {
  mean: 1,
  deviation: 0.025,
  reason: 'wall not measured: 2 mm cold-rolled sheet keeps to about 5 % (common practice, no source)',
};

/** Two standard deviations: nineteen of twenty sheets keep to the tolerance they were bought to. Our choice, no source. */
export const wallWithin = (tolerance: number, wall: number): Assumed => ({
  mean: 1,
  deviation: tolerance / wall / 2,
  reason: 'wall not measured: nineteen of twenty sheets keep to the stated tolerance (our choice)',
});

/** A strength that the tank file states, as loosely as where it states none. */
export const seamAbout = (strength: number): Assumed => ({
  mean: strength,
  deviation: SEAM.deviation,
  reason: 'no seam coupon: strength as the tank file states it, within 10 % (common practice, no source)',
});

/**
 * Plastic strain that rolling left on average through the wall, over t/(4R). Computed (core/steel/rolling) for 2 mm on
 * 600 mm: 1.0 bent once past its radius, 1.3 where it was rolled 14 % too tight and opened again; flattening adds to it.
 */
export const ROLLING_SHARE: Assumed = {
  mean: 1.2,
  deviation: 0.4,
  reason: 'plate bent past its radius and sprung back; no rolling note',
};

export interface PlateKind {
  readonly grade: Grade;
  readonly form: ProductForm;
  /** Nominal, mm. */
  readonly thickness: number;
}

export interface PlatePrior {
  /** Logarithms of the four factors. */
  readonly factors: readonly number[];
  /** On the scatter of the grade's typical values. */
  readonly wider: number;
  /** MPa; the least Rp0.2 the standard allows, where one is known. */
  readonly least?: number;
  readonly reason: string;
}

/** Grades without typical values of their own, and whose stand in. */
const NEIGHBOUR: Partial<Record<Grade, Grade>> = {
  '1.4306': '1.4307',
  '1.4311': '1.4307',
  'ASTM 304': '1.4301',
  'ASTM 304L': '1.4307',
  'ASTM 316L': '1.4404',
};

/** Typical values of the grade at this thickness, read as factors on the shape. */
export const platePrior = (kind: PlateKind): PlatePrior => {
  const neighbour = NEIGHBOUR[kind.grade];
  const rows = typicalOf(neighbour ?? kind.grade);
  const lift = neighbour === undefined ? 0 : liftOver(kind, neighbour);
  const of = (read: (row: Typical) => number): number =>
    Math.log(atThickness(rows, kind.thickness, read) + lift);
  const early = of((row) => row.proof02) - logProof(NO_FACTORS, KNOTS[0]);
  const knee = of((row) => row.proof10) - logProof(NO_FACTORS, PROOF10_PLASTIC);
  const late = of((row) => row.strength) - logStrength(NO_FACTORS).log;
  const least = minimaOf(kind.grade, kind.form).map((row) => row.proof02);
  return {
    factors: KNOTS.map((ep) => throughThree(ep, [early, knee, late])),
    wider: neighbour === undefined ? 1 : BORROWED,
    ...(least.length > 0 ? { least: Math.min(...least) } : {}),
    reason: reasonOf(kind, neighbour),
  };
};

const NO_FACTORS = Array.from({ length: FACTORS }, () => 0);

/** Difference of the stated minima of a grade and the one that stands in for it, MPa; 0 where they cannot be compared. */
const liftOver = (kind: PlateKind, neighbour: Grade): number => {
  const own = minimaOf(kind.grade, kind.form)[0];
  const other = minimaOf(neighbour, kind.form)[0];
  if (own === undefined || other === undefined || kind.grade.startsWith('ASTM')) return 0;
  return own.proof02 - other.proof02;
};

/** Straight in ln(thickness) between the rows, the end rows beyond them. */
const atThickness = (rows: readonly Typical[], thickness: number, read: (row: Typical) => number): number => {
  const last = rows.length - 1;
  if (thickness <= rows[0].thickness) return read(rows[0]);
  if (thickness >= rows[last].thickness) return read(rows[last]);
  const k = rows.findIndex((row) => row.thickness > thickness);
  const [thin, thick] = [rows[k - 1], rows[k]];
  const part = Math.log(thickness / thin.thickness) / Math.log(thick.thickness / thin.thickness);
  return read(thin) + part * (read(thick) - read(thin));
};

/** Factors at 0.2 %, 1 % and uniform strain, straight in ln(strain) between. */
const throughThree = (ep: number, [early, knee, late]: readonly [number, number, number]): number => {
  const straight = (a: number, b: number, from: number, to: number): number =>
    a + ((b - a) * Math.log(ep / from)) / Math.log(to / from);
  return ep < PROOF10_PLASTIC
    ? straight(early, knee, KNOTS[0], PROOF10_PLASTIC)
    : straight(knee, late, PROOF10_PLASTIC, UNIFORM_PLASTIC);
};

const reasonOf = (kind: PlateKind, neighbour: Grade | undefined): string => {
  const of = neighbour === undefined ? kind.grade : `${neighbour}, for want of any of ${kind.grade}`;
  return `typical values of ${of} at ${kind.thickness} mm, ${kind.form} (producer data page)`;
};
