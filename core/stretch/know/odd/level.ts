/** Where the tank stands in the range that was foreseen before the day, and what may have put it there. */
import { normalBelow } from '../../../stats/normal.ts';
import { INPUTS } from '../../../steel/belief/draw.ts';
import type { Knowledge } from '../know.ts';
import { GAUGE, STEEL, type Unknowns } from '../unknowns.ts';
import { type Explained, levelExplained } from './explain.ts';

export interface Level {
  /** In standard deviations of what was foreseen: above zero it carries more than the middle. */
  readonly clear: number;
  /** `quiet`: outside the 90 % range; `alarm`: beyond what one healthy tank in a hundred shows. */
  readonly says: 'inside' | 'quiet' | 'alarm';
}

/** Nine of ten lie within; 99 of 100 do. */
const QUIET = 1.645;
const ALARM = 2.576;

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
