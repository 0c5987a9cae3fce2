/** Inside radii and depth of a head of the tank file, from what was given, the ratio or the DIN proportions. */
import { dinRadii } from '@hoopwright/core/tank';
import type { HeadFile } from './format/headFile.ts';

export interface Radii {
  readonly crown: number;
  readonly knuckle: number;
}

/** Ratio of a semi-ellipsoidal head for which neither ratio nor depth is given: the usual 2:1 head. */
export const USUAL_RATIO = 2;

type Torispherical = Extract<HeadFile, { shape: 'torispherical' }>;

/** Radii of a torispherical head, or undefined where neither both radii nor a standard are given. */
export function torisphericalRadii(
  head: Torispherical,
  insideDiameter: number,
  wall: number,
): Radii | undefined {
  const standard = head.standard === undefined ? undefined : dinRadii(head.standard, insideDiameter, wall);
  const crown = head.crownRadius_mm ?? standard?.crownRadius;
  const knuckle = head.knuckleRadius_mm ?? standard?.knuckleRadius;
  return crown === undefined || knuckle === undefined ? undefined : { crown, knuckle };
}

/** Wall of a head: the mean of the measured ones, else as stated, else that of the barrel. */
export function headWall(head: HeadFile, barrelWall: number): number {
  const measured = head.measuredWall_mm;
  if (measured === undefined) return head.wall_mm ?? barrelWall;
  return measured.reduce((sum, wall) => sum + wall, 0) / measured.length;
}
