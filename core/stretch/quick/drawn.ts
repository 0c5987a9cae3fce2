/** The tank as one steel out of the range would make it. */
import type { SteelDraw } from '../../steel/belief/draw.ts';
import type { Steel } from '../../steel/steel.ts';
import type { Course, Tank } from '../../tank/tank.ts';

/**
 * Puts the drawn steel into every part that is made of `plate` (the steel of the file; parts with a steel of their own
 * keep it), its wall factor and its rolling into the courses, its seam strength into the long seam.
 */
export function drawnTank(tank: Tank, plate: Steel, draw: SteelDraw): Tank {
  const steel: Steel = { ...plate, flow: draw.flow, biaxialFactor: draw.biaxialFactor, rate: draw.rate };
  const of = (own: Steel): Steel => (own === plate ? steel : own);
  const part = <T extends { readonly steel: Steel }>(one: T): T => ({ ...one, steel: of(one.steel) });
  const { longSeam } = tank;
  return {
    ...tank,
    courses: tank.courses.map((course) => drawnCourse(part(course), draw, course.steel === plate)),
    heads: { top: part(tank.heads.top), bottom: part(tank.heads.bottom) },
    girthSeams: tank.girthSeams.map((seam) => seamOf(seam, plate, steel)),
    baffles: tank.baffles.map(part),
    skirts: tank.skirts.map(part),
    ...(longSeam === undefined ? {} : { longSeam: { ...longSeam, strength: draw.seamStrength } }),
  };
}

/** Where a course has no layers of its own, rolling stands in every layer as its mean plastic strain. */
function drawnCourse(course: Course, draw: SteelDraw, ofPlate: boolean): Course {
  if (!ofPlate) return course;
  const even = (depth: number) => ({ depth, plastic: draw.coldWork, meridional: 0, hoop: 0 });
  return {
    ...course,
    wall: course.wall * draw.wallFactor,
    ...(course.layers !== undefined || draw.coldWork === 0 ? {} : { layers: [even(-1), even(1)] }),
  };
}

/** A girth seam keeps its strength over the plate. */
function seamOf<T extends { readonly steel: Steel }>(seam: T, plate: Steel, steel: Steel): T {
  const strength = seam.steel.biaxialFactor / plate.biaxialFactor;
  return { ...seam, steel: { ...steel, biaxialFactor: steel.biaxialFactor * strength } };
}
