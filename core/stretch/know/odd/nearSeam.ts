/** Which girths are read so near a girth seam that a weak one shows in them. */
import type { Tank } from '../../../tank/tank.ts';

/**
 * In the order of the tank's girths: the edge of a girth seam within sqrt(r t), over which the bending of a ring dies
 * out. Where two courses meet there is a seam, drawn or not.
 */
export function girthsNearSeam({ insideDiameter, courses, girthSeams, girths }: Tank): boolean[] {
  let top = 0;
  const ends = courses.map(({ length }) => (top += length));
  const seams = [...girthSeams, ...ends.slice(0, -1).map((at) => ({ at, width: 0 }))];
  return girths.map(({ at }) => {
    const course = courses[ends.findIndex((end) => end >= at)] ?? courses[courses.length - 1];
    const reach = Math.sqrt(0.5 * insideDiameter * course.wall);
    return seams.some((seam) => Math.abs(seam.at - at) <= reach + seam.width / 2);
  });
}
