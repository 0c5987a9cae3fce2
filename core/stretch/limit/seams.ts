/** Seams beside the plate: what the long seam is strained by, and how much of its strength is used. */
import type { Flow } from '../../steel/hardening.ts';
import { longestCourse } from '../../shell/meridian/meridian.ts';
import type { Datum } from '../growth.ts';
import { type SeamAnswer, seamBeside } from './seamStrip.ts';

export interface SeamState {
  /** Logarithmic hoop strain of the seam; absent where it parts. */
  readonly strain?: number;
  /** Of the plate beside it. */
  readonly plate: number;
  /** Hoop force of the plate over the most that the seam can carry. */
  readonly use: number;
}

/** Long seam at a growth of girth; undefined for a tank without one. */
export function seamAt(datum: Datum, growth: number): SeamState | undefined {
  const plate = Math.log(1 + Math.max(growth, 0));
  const answer = longSeamAt(datum, plate);
  if (answer === undefined) return undefined;
  return { plate, use: answer.use, ...(answer.kind === 'held' ? { strain: answer.hoop } : {}) };
}

/** Hoop force of the plate over the most that the long seam can carry, at a growth of girth; undefined without a seam. */
export const seamUse = (datum: Datum, growth: number): number | undefined =>
  longSeamAt(datum, Math.log(1 + Math.max(growth, 0)))?.use;

function longSeamAt(datum: Datum, plateHoop: number): SeamAnswer | undefined {
  const { longSeam } = datum.solver.shell.tank;
  if (longSeam === undefined) return undefined;
  const { width, strength } = longSeam;
  return seamBeside(plateFlow(datum), { width, strength, thickness: 1 }, plateHoop);
}

/** Curve of the longest course. */
function plateFlow({ solver: { shell }, barrel }: Datum): Flow {
  const metal = shell.steels.indexOf(longestCourse(shell.tank).steel);
  return shell.metals[metal < 0 ? shell.metal[barrel[0]] : metal].flow;
}
