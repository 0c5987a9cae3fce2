/** Girths that grow otherwise than the model of a sound tank has them grow beside one another. */
import { largestWith, type QuickPath, valueAt } from '../../quick/path.ts';

export interface PartedGivens {
  /** Growth of each girth now, as a fraction; undefined where not read. */
  readonly growths: readonly (number | undefined)[];
  readonly path: QuickPath;
  /** Standard deviations: of one reading as growth, and of the gain of one girth. */
  readonly blur: number;
  readonly gain: number;
}

export interface Parted {
  /** Place of the girth that stands out, in the order of the tank. */
  readonly girth: number;
  /** It has grown by so much more (or less) than the others say it should. */
  readonly by: number;
  /** In standard deviations of a sound tank. */
  readonly clear: number;
}

/** Share of the growth by which courses of one sound tank part, as a standard deviation: 1 % of flow stress. Our estimate. */
const COURSES = 0.012;
/** About yield the place that grows most moves: so much growth is nothing, as a standard deviation. Our estimate. */
const YIELD = 0.00008;
/** Standard deviations: with 4 some 16 of 1,000 sound tanks were called once in a day of looks. */
const CLEAR = 4.5;

/** The girth that stands out most; undefined where none does. Three girths or more say which; of two the larger one. */
export function partedGirth({ growths, path, blur, gain }: PartedGivens): Parted | undefined {
  const read = growths.flatMap((growth, girth) => (growth === undefined ? [] : [{ girth, growth }]));
  if (read.length < 2) return undefined;
  const largest = read.map(({ girth, growth }) => largestWith(path, girth, growth));
  const misses = read.map(({ girth, growth }, k): Parted => {
    const others = largest.filter((_, i) => i !== k).sort((a, b) => a - b);
    const usual = 0.5 * (others[(others.length - 1) >> 1] + others[others.length >> 1]);
    const by = growth - valueAt(path.growth, path.girths[girth], usual);
    const size = Math.min(Math.abs(growth), Math.abs(usual));
    const spread = Math.hypot(Math.SQRT2 * blur, Math.SQRT2 * gain * size, COURSES * size, YIELD);
    return { girth, by, clear: Math.abs(by) / spread };
  });
  const worst = misses.reduce((a, b) => (standing(b) > standing(a) ? b : a));
  return worst.clear > CLEAR ? worst : undefined;
}

/** Of two that part by the same, the one that grows more is looked at. */
const standing = ({ clear, by }: Parted): number => clear + (by > 0 ? 1e-6 : 0);
