/** The tank as one steel out of the range would make it. */
import type { SteelDraw } from '../../steel/belief/draw.ts';
import type { Steel } from '../../steel/steel.ts';
import type { Course, GirthSeam, LayerState, Tank } from '../../tank/tank.ts';

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
  const { coldWork } = draw;
  const even = (depth: number): LayerState => ({ depth, plastic: coldWork, meridional: 0, hoop: 0 });
  const layers = course.layers === undefined ? [even(-1), even(1)] : workedTo(course.layers, coldWork);
  return { ...course, wall: course.wall * draw.wallFactor, ...(coldWork === 0 ? {} : { layers }) };
}

/** The same layers with another mean plastic strain; their residual stresses stay. */
function workedTo(layers: readonly LayerState[], mean: number): LayerState[] {
  const own = meanPlastic(layers);
  return own > 0 ? layers.map((layer) => ({ ...layer, plastic: (layer.plastic * mean) / own })) : [...layers];
}

/** Mean plastic strain through the wall, straight between layers. */
function meanPlastic(layers: readonly LayerState[]): number {
  let sum = 0;
  for (let k = 1; k < layers.length; k++) {
    const [a, b] = [layers[k - 1], layers[k]];
    sum += ((a.plastic + b.plastic) / 2) * (b.depth - a.depth);
  }
  return sum / (layers[layers.length - 1].depth - layers[0].depth);
}

/** A girth seam that is stated by its strength keeps it over the drawn plate; one with a curve of its own keeps that. */
function seamOf(seam: GirthSeam, plate: Steel, steel: Steel): GirthSeam {
  const { strength } = seam;
  if (seam.steel === plate) return { ...seam, steel };
  if (strength === undefined) return seam;
  const rate =
    steel.rate === undefined ? {} : { rate: { ...steel.rate, perEfold: strength * steel.rate.perEfold } };
  return { ...seam, steel: { ...steel, ...rate, biaxialFactor: strength * steel.biaxialFactor } };
}
