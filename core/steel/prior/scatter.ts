/**
 * How much steel differs from steel: scatter of the four factors between grades' typical values, heats, plates of one
 * heat, and places of one plate. Each level is stated as a relative standard deviation at the four strains.
 *
 * What is published: one 90-ton heat of 304 yielded between 183 and 395 MPa as received in its products, and between
 * 172 and 186 after all were annealed again (ORNL, J. Eng. Mater. Technol. 97 (1975) 343), so most of the scatter is the
 * working of the product and not its melt. Eight bars of one stock of 304L yielded at 215 to 235 MPa (3.3 %), a second
 * stock of small bars lies 16 % higher at 2 % strain and 2 % higher at 40 %, with 3 to 6 % between its bars (Karlson et
 * al. 2023). Typical values of one grade differ by 13 % in yield and 12 % in Rm between 1 and 15 mm (producer data).
 * The figures below are this project's choice within those limits: scatter dies away with strain, as both stocks show.
 */
import { FACTORS, KNOTS } from './shape.ts';

export type Level = 'grade' | 'heat' | 'plate' | 'place';

/** Relative standard deviations at 0.2, 2, 10 and 40 % plastic strain. */
export const SCATTER: Record<Level, readonly [number, number, number, number]> = {
  /** Typical value of the grade and form against the row it is read from. */
  grade: [0.06, 0.05, 0.04, 0.03],
  /** Melt to melt. */
  heat: [0.05, 0.045, 0.035, 0.025],
  /** Plate to plate of one heat: rolling, annealing, levelling. The certificate's specimen is of another such plate. */
  plate: [0.08, 0.07, 0.05, 0.02],
  /** Place to place of one plate, or bar to bar of one stock: what one coupon says of the next. Its own size is learnt. */
  place: [0.047, 0.045, 0.034, 0.015],
};

/** The grade has no typical values of its own; those of a neighbour stand in. */
export const BORROWED = 1.6;

/**
 * Distance in ln(strain) over which two factors lose their common scatter by e. Differences between the bars named above
 * keep their sign from 0.2 to 20 %; 8 gives a correlation of 0.75 from 0.2 to 2 % and 0.52 from 0.2 to 40 %.
 */
const COMMON_LENGTH = 8;

/** Covariance of the logarithms of the factors at one level, 4 x 4 row by row. */
export const scatterOf = (level: Level, times = 1): Float64Array => {
  const sd = SCATTER[level];
  const covariance = new Float64Array(FACTORS * FACTORS);
  for (let i = 0; i < FACTORS; i++)
    for (let j = 0; j < FACTORS; j++) {
      const apart = Math.abs(Math.log(KNOTS[i] / KNOTS[j]));
      covariance[FACTORS * i + j] = times * times * sd[i] * sd[j] * Math.exp(-apart / COMMON_LENGTH);
    }
  return covariance;
};

/**
 * Size of the scatter within one plate against the table: unknown, learnt where several coupons are given. Five equal
 * shares of a log-normal distribution about 1; their logarithms lie as the means of the fifths do, and spread by 0.5.
 */
export const PLACE_SIZES = [0.478, 0.755, 1, 1.324, 2.094] as const;

/** Share of coupons that say something else than their plate (mixed up, bent, badly cut), and how much wider they lie. */
export const BAD_SHARE = 0.05;
export const BAD_TIMES = 4;

/**
 * A barrel averages over all of its plate, a coupon over a few grams: the barrel strays from the plate's mean by a
 * quarter of what a coupon does. Our estimate, no source.
 */
export const BARREL_SHARE = 0.25;
