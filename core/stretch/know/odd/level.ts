/** Where the tank stands in the range that was foreseen before the day, and what may have put it there. */
import { normalBelow } from '../../../stats/normal.ts';
import { INPUTS, type SteelDraw } from '../../../steel/belief/draw.ts';
import type { QuickPath } from '../../quick/path.ts';
import type { Knowledge } from '../know.ts';
import { likenessOf } from '../likeness.ts';
import type { Seen } from '../seen.ts';
import { GAUGE, looseAt, STEEL, straySize, type Unknowns } from '../unknowns.ts';
import { type Explained, levelExplained } from './explain.ts';

export interface Level {
  /** In standard deviations of what was foreseen: above zero it carries more than the middle. */
  readonly clear: number;
  /** `quiet`: outside the 90 % range; `alarm`: beyond what one healthy test in a hundred shows. */
  readonly says: 'inside' | 'quiet' | 'alarm';
}

/** Nine of ten lie within at one look. */
const QUIET = 1.645;
/** Crossed by under one healthy test in a hundred, all its looks together: tuned on checks/knowing/level.ts, where 3.09 gave 5 of 400 and 3.5 gave 2 of 800. */
const ALARM = 3.5;

/**
 * @param foreseen logarithms of the pressure that equally likely tanks would show at the growth that was read
 * @param spread standard deviation of what the instruments add to it
 */
export function levelOf(foreseen: readonly number[], read: number, spread: number): Level {
  const n = foreseen.length;
  const mean = foreseen.reduce((sum, x) => sum + x, 0) / n;
  const variance = foreseen.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (n - 1);
  const clear = (read - mean) / Math.sqrt(variance + spread * spread);
  const off = Math.abs(clear);
  return { clear, says: off > ALARM ? 'alarm' : off > QUIET ? 'quiet' : 'inside' };
}

/** Chance that a healthy tank raises the alarm at one look. */
export const FALSE_ALARM = 2 * normalBelow(-ALARM);

export interface StandingGivens {
  /** Equally likely steels of the day before, and their paths. */
  readonly before: readonly { readonly draw: SteelDraw; readonly path: QuickPath }[];
  readonly unknowns: Unknowns;
  readonly seen: readonly Seen[];
}

/** Of the girth that has grown most at the last moment; undefined where too little was read, or before it grows. */
export function levelNow({
  before,
  unknowns,
  seen,
}: StandingGivens): (Level & { girth: number }) | undefined {
  const now = seen.at(-1);
  if (now === undefined || !(now.pressure > 0)) return undefined;
  const girth = now.girths.reduce(
    (most, one, i) => ((one?.growth ?? 0) > (now.girths[most]?.growth ?? 0) ? i : most),
    0,
  );
  const read = now.girths[girth];
  if (read === undefined || read.growth < GROWN) return undefined;
  const span = { before: seen.at(-2), now };
  const likes = before.flatMap(({ draw, path }) => likenessOf(path, draw, girth, span) ?? []);
  if (2 * likes.length < before.length) return undefined;
  const middle = likes[likes.length >> 1];
  const { gauge, girths } = unknowns.errors;
  const girthBlur = Math.hypot(read.blur, girths[girth].gain * read.growth, girths[girth].zero);
  const spread = Math.hypot(
    now.blur / now.pressure,
    gauge.gain,
    gauge.zero / now.pressure,
    middle.slope * girthBlur,
    middle.rateBlur,
    straySize(unknowns.strays, read.growth),
    looseAt(unknowns.strays, read.growth),
  );
  const foreseen = likes.map(({ pressure }) => pressure);
  return { ...levelOf(foreseen, Math.log(now.pressure), spread), girth };
}

/** Growth from which the wall has yielded for certain: before, blur and zero are as large as the growth. */
const GROWN = 0.002;

/** What carries the departure, by how far each has moved in its own standard deviations. */
export function levelBehind({ mean: before, root }: Unknowns, { cases }: Knowledge): Explained {
  const [likeliest] = [...cases].sort((a, b) => b.probability - a.probability);
  const z = likeliest.mean;
  const moved = (name: (typeof INPUTS)[number]): number => {
    const a = INPUTS.indexOf(name);
    let [sum, size] = [0, 0];
    for (let b = 0; b <= a; b++) {
      sum += root[a * STEEL + b] * z[b];
      size += root[a * STEEL + b] ** 2;
    }
    return size > 1e-12 ? sum / Math.sqrt(size) : 0 * before[a];
  };
  const strength = (moved('stress at 2 %') + moved('biaxial factor')) / Math.SQRT2;
  return levelExplained({ strength, wall: moved('wall'), gauge: z[GAUGE] });
}
