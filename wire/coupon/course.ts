/** The rough course of a test, before anything is trusted: slope of the first part, highest stress, last strain. */
import type { Picked } from './pick.ts';

export interface Course {
  /** Slope of load over stretch; absent where the first part gives none. */
  readonly slope?: number;
  /** The slope is only that of the chord to a point at or beyond yield: the elastic one is steeper. */
  readonly chord: boolean;
  readonly high: number;
  readonly far: number;
}

/** The same in MPa and 1. */
export interface Scaled {
  readonly modulus?: number;
  readonly chord: boolean;
  readonly high: number;
  readonly far: number;
}

/** Third largest, so that one or two wrong figures do not set the scale. */
const highOf = (values: readonly number[]): number =>
  values.toSorted((a, b) => b - a)[Math.min(2, values.length - 1)];

/** Parts of the highest load between which the first rise is taken as nearly elastic. */
const FROM = 0.05;
const TO = 0.3;

export const courseOf = (stretch: readonly number[], load: readonly number[]): Course => {
  const high = highOf(load);
  const passed = load.findIndex((value, k) => value > TO * high && (load[k + 1] ?? value) > TO * high);
  const near = load.map((_, k) => k).filter((k) => k < passed && load[k] >= FROM * high);
  const sure = slopeThrough(near.map((k) => [stretch[k], load[k]]));
  const slope = sure ?? (load[passed] - load[0]) / (stretch[passed] - stretch[0]);
  const ends = { chord: sure === undefined, high, far: highOf(stretch) };
  return slope > 0 && Number.isFinite(slope) ? { ...ends, slope } : ends;
};

/** Most points that the slope is taken through: pairs grow with the square. */
const MOST_POINTS = 60;
/** Fewer pairs, or pairs whose middle half spreads by more than this factor, are shaken readings and no slope. */
const FEWEST_PAIRS = 10;
const SPREAD = 3;

/** Middle of the slopes between all pairs of points, which a few wrong figures do not turn (Theil, 1950; Sen, 1968). */
const slopeThrough = (points: readonly (readonly [x: number, y: number])[]): number | undefined => {
  const every = Math.max(1, Math.ceil(points.length / MOST_POINTS));
  const some = points.filter((_, k) => k % every === 0);
  const slopes = some
    .flatMap(([x, y], k) => some.slice(k + 1).flatMap(([x2, y2]) => (x2 === x ? [] : [(y2 - y) / (x2 - x)])))
    .toSorted((a, b) => a - b);
  const [low, middle, high] = [0.25, 0.5, 0.75].map((part) => slopes[Math.floor(part * slopes.length)]);
  return slopes.length >= FEWEST_PAIRS && low > 0 && high < SPREAD * low ? middle : undefined;
};

export const scaledBy = (
  { slope, chord, high, far }: Course,
  { strainFactor, stressFactor }: { strainFactor: number; stressFactor: number },
): Scaled => ({
  chord,
  high: high * stressFactor,
  far: far * strainFactor,
  ...(slope !== undefined && { modulus: (slope * stressFactor) / strainFactor }),
});

/** Wide enough for a coarse or slipping beginning, narrow enough to part MPa from ksi and mm from inches. */
const MODULUS = [60_000, 450_000] as const;
/** A chord to a point beyond yield is flatter than the elastic part, never steeper. */
const MODULUS_OF_CHORD = [5_000, 450_000] as const;
/** Travel of the crosshead holds the give of the machine: a tenth or less of the steel's slope. */
const MODULUS_OF_TRAVEL = [800, 100_000] as const;
/** Highest stress of austenitic steel, from a test stopped after first yield to hard-rolled strip. */
const HIGHEST = [170, 1700] as const;
/** A test pulled well beyond yield has passed this stress. */
const PULLED_FAR = 0.1;
const HIGHEST_PULLED_FAR = 350;
const FURTHEST = [0.002, 1.2] as const;

/** Whether a reading suits a tensile test of austenitic steel. */
export const fits = (
  { modulus, chord, high, far }: Scaled,
  { stretch }: Pick<Picked, 'stretch'>,
): boolean => {
  const within = (value: number, [low, top]: readonly [number, number]): boolean =>
    value >= low && value <= top;
  const slopes = stretch.meaning === 'crosshead' ? MODULUS_OF_TRAVEL : chord ? MODULUS_OF_CHORD : MODULUS;
  const slopeFits = modulus === undefined || within(modulus, slopes);
  return (
    slopeFits &&
    within(high, HIGHEST) &&
    within(far, FURTHEST) &&
    (far < PULLED_FAR || high > HIGHEST_PULLED_FAR)
  );
};
