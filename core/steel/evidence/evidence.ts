/** What a team has in hand about the steel of one plate: each kind optional, each with its source. Inside units. */
import type { PlateKind } from '../prior/prior.ts';

/** Where a figure comes from: a file, a certificate number, a note. Labels tell which plate it speaks of. */
export interface Origin {
  readonly name: string;
  /** Plate or bar stock. Absent: taken to be the tank's plate (a coupon) or another plate of its heat (a certificate). */
  readonly plate?: string;
  /** Melt. Absent: the tank's, or with a foreign plate one that is not known. */
  readonly heat?: string;
  /** Why the test does not count. It stays in the list with its reason. */
  readonly excluded?: string;
}

/** Mill certificate: engineering stresses in MPa, elongation as a fraction. */
export interface Certificate extends Origin {
  readonly proof02?: number;
  readonly proof10?: number;
  readonly strength?: number;
  readonly elongation?: number;
}

/** One tensile test of plate: true stress against true plastic strain, up to uniform strain at most. */
export interface PlateCoupon extends Origin {
  readonly plastic: readonly number[];
  readonly stress: readonly number[];
  /** Strain rate, 1/s; absent: an ordinary test, 2.5e-4 within a factor of e. */
  readonly rate?: number;
  /** °C. */
  readonly temperature?: number;
}

/** One tensile test across a seam: its flow stress over that of the plate beside it, at the strains of the stretch. */
export interface SeamCoupon extends Origin {
  readonly strength: number;
}

/** Wall thickness measured at several places, mm. */
export interface WallReadings extends Origin {
  readonly points: readonly number[];
  /** Standard deviation of the gauge's own error, common to all points, mm. */
  readonly gauge: number;
}

/** How the barrel was rolled, as the plastic strain that rolling left on average through the wall. */
export interface RollingStrain extends Origin {
  readonly mean: number;
  readonly deviation: number;
}

/** A small tank stretched before: a closed cylinder, its mid-surface radius and wall before the stretch, mm. */
export interface TrialTank extends Origin {
  readonly radius: number;
  readonly wall: number;
  /** Relative standard deviation of that wall. Absent: 1 %. */
  readonly wallDeviation?: number;
  /** Pressure (MPa) and growth of the girth (fraction) under pressure, while it was being raised. */
  readonly points: readonly { readonly pressure: number; readonly growth: number }[];
  /** Pressure at which it burst, MPa. */
  readonly burst?: number;
  /** Hoop strain rate while stretching, 1/s. Absent: 2e-5. */
  readonly rate?: number;
  /** Relative standard deviation of the pressure gauge. Absent: 1 %. */
  readonly gaugeDeviation?: number;
  /** Standard deviation of one growth reading, fraction. Absent: 0.0005. */
  readonly growthDeviation?: number;
  /** °C of the water. */
  readonly temperature?: number;
}

/** The plate of the part that is to be forecast. */
export interface PlateInHand extends PlateKind {
  readonly plate?: string;
  readonly heat?: string;
  /** Mid-surface radius it is rolled to, mm; absent: not rolled. */
  readonly radius?: number;
  /** Wall in the tank file, mm: the draws' wall factor counts from it. */
  readonly wall: number;
  /** Tolerance that the wall was bought to, +/- mm; counts where nobody measured it. */
  readonly wallTolerance?: number;
  /** Flow stress of the long seam over that of the plate as the tank file states it. Absent: 1. */
  readonly seamStrength?: number;
  /** °C of the water in the stretch. Absent: 20. */
  readonly temperature?: number;
}

export interface Evidence {
  readonly plate: PlateInHand;
  readonly certificates: readonly Certificate[];
  readonly coupons: readonly PlateCoupon[];
  readonly seams: readonly SeamCoupon[];
  readonly walls: readonly WallReadings[];
  readonly rolling: readonly RollingStrain[];
  readonly trials: readonly TrialTank[];
}

/** No evidence but the grade. */
export const gradeOnly = (plate: PlateInHand): Evidence => ({
  plate,
  certificates: [],
  coupons: [],
  seams: [],
  walls: [],
  rolling: [],
  trials: [],
});
