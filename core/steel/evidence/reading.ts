/** The form that certificates, coupons and test tanks all take before they are weighed: straight lines in the unknowns. */
import type { Origin } from './evidence.ts';
import type { Factors } from '../prior/shape.ts';

/** Unknowns besides the factors of plates, each standard normal before any evidence. */
export const SHARED = ['rate', 'biaxial', 'warmth'] as const;
export type Shared = (typeof SHARED)[number];
export const SHARED_COUNT = SHARED.length;
export const [RATE_AT, BIAXIAL_AT, WARMTH_AT] = [0, 1, 2] as const;

/**
 * `rows` figures, all logarithms of stresses: observed = design x factors of the plate + shared x shared unknowns + error.
 * Matrices row by row.
 */
export interface Reading {
  readonly origin: Origin;
  readonly kind: 'certificate' | 'coupon' | 'trial';
  /** Number of the plate among the plates of the evidence. */
  readonly plate: number;
  readonly rows: number;
  /** What the shape (all factors zero, all shared unknowns zero) leaves of the figures. */
  readonly observed: Float64Array;
  readonly design: Float64Array;
  readonly shared: Float64Array;
  /** Covariance of errors of measurement. */
  readonly noise: Float64Array;
  /** What was tested stands for its plate as one coupon does, or as a whole barrel does. */
  readonly piece: 'coupon' | 'barrel';
  /** Where the figures are not quite straight lines: `observed` as it follows from the unknowns. */
  readonly exact?: (factors: Factors, shared: Factors) => Float64Array;
}

/** Covariance with one common error: adds error x error' to the matrix, in place. */
export const addCommon = (noise: Float64Array, error: Float64Array | readonly number[]): void => {
  const n = error.length;
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) noise[n * i + j] += error[i] * error[j];
};

/** Adds independent errors, in place. */
export const addOwn = (noise: Float64Array, deviation: Float64Array | readonly number[]): void => {
  const n = deviation.length;
  for (let i = 0; i < n; i++) noise[n * i + i] += deviation[i] ** 2;
};
