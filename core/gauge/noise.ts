/** What a reading is worth: the spread of one reading, of a slope through many, and the smallest change that stands out. */

export interface Reader {
  /** Smallest step that can be read. */
  readonly resolution: number;
  /** Standard deviation of one reading beside that. */
  readonly noise: number;
}

/**
 * Standard deviation of one reading: its noise, and the even spread over one step of the scale, resolution/sqrt(12).
 * Source: JCGM 100:2008 (GUM), 4.3.7.
 */
export const readingSpread = ({ resolution, noise }: Reader): number =>
  Math.hypot(noise, resolution / Math.sqrt(12));

/**
 * Standard deviation of the slope of a straight line through readings taken evenly over `time`. Noise averages out with
 * their number n as sqrt(12 (n - 1)/(n (n + 1)))/time; the step of the scale does not (a slow value stands on one step
 * for long): it counts as at two readings, the first and the last.
 */
export function slopeSpread(reader: Reader, every: number, time: number): number {
  const n = Math.max(2, Math.floor(time / every + 1e-9) + 1);
  const byNoise = (reader.noise * Math.sqrt((12 * (n - 1)) / (n * (n + 1)))) / time;
  const byStep = ((reader.resolution / Math.sqrt(12)) * Math.SQRT2) / time;
  return Math.hypot(byNoise, byStep);
}

/**
 * Smallest value that is told from nothing, over the standard deviation: false call and miss 5 % each, 2 x 1.645.
 * Source: Currie, Anal. Chem. 40 (1968) 586.
 */
export const DETECTION = 3.29;

/** Half width of the 90 % range over the standard deviation. */
export const NINETY = 1.645;
