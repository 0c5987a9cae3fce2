/** The record of one tensile test and the curves taken from it. Inside units: fractions, MPa, s. */

/** One tensile test in engineering measures, in the order of the record; the arrays are equally long and finite. */
export interface CouponTest {
  /** Extension over gauge length. */
  readonly strain: readonly number[];
  /** Force over the first cross-section, MPa. */
  readonly stress: readonly number[];
  /** s. */
  readonly time?: readonly number[];
  /** `crosshead`: the machine's travel, which holds the give of machine and grips. Default `gauge`. */
  readonly extension?: 'gauge' | 'crosshead';
}

export interface CouponCurve {
  readonly strain: readonly number[];
  readonly stress: readonly number[];
  /** Place of each point in the test as given. */
  readonly at: readonly number[];
}

/** A curve that ends where the specimen broke, or where the record ends. */
export interface CouponRecord extends CouponCurve {
  readonly broke: boolean;
}

/** Modulus of austenitic steel at 20 °C, MPa (EN 10088-1, from memory, high confidence). */
export const NOMINAL_YOUNG = 200_000;

/** A figure under its key, or nothing: what is missing is absent, never 0 or NaN. */
export const given = <Key extends string>(key: Key, value: number | undefined): { [K in Key]?: number } =>
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- the compiler widens a computed key to any string
  value === undefined ? {} : ({ [key]: value } as { [K in Key]?: number });
