/** Dimensions that stand at the wall itself: inside diameter across the centre line, wall of each course. */
import type { Tank } from '@hoopwright/core/tank';
import type { Manner } from '../../figure/manner.ts';
import { lettering, type Mark, type Run, stroke, TEXT } from '../../sheet/mark.ts';
import { runsWidth } from '../../sheet/measure.ts';
import { figureRuns } from '../../sheet/runs.ts';
import { arrow } from './dimension.ts';
import { onRight, type Spot, type View } from '../shape/view.ts';

/** Where lettering beside the wall may stand: the room between the drawn tank and the first chain. */
export interface BesideWall {
  readonly left: number;
  /** Inside and outside face as drawn at a height as welded, mm. */
  readonly faces: (z: number) => { readonly inside: Spot; readonly outside: Spot };
}

const SHELF = 12;

const wallRuns = (tank: Tank, i: number, manner: Manner): Run[] =>
  figureRuns(manner, {
    quantity: 'wall',
    value: tank.courses[i].wall,
    stated: true,
    path: tank.courses.length > 1 ? `barrel.courses[${i}].wall_mm` : 'barrel.wall_mm',
  });

/** Courses whose wall is written: each, but equal neighbours once. */
function wallPlaces(tank: Tank): { readonly z: number; readonly course: number }[] {
  let foot = 0;
  return tank.courses.map((course, i) => {
    const z = foot + 0.4 * course.length;
    foot += course.length;
    return { z, course: i };
  });
}

const diameterRuns = (tank: Tank, manner: Manner): Run[] => [
  { text: 'Ø ' },
  ...figureRuns(manner, {
    quantity: 'length',
    value: tank.insideDiameter,
    stated: true,
    path: 'barrel.insideDiameter_mm',
  }),
];

/** Half the tank is wide enough to write figures inside it. */
const fitsInside = (view: Pick<View, 'perMm'>, tank: Tank, manner: Manner): boolean =>
  runsWidth({ runs: diameterRuns(tank, manner), size: TEXT }) + 26 <= (tank.insideDiameter / 2) * view.perMm;

/** Width of the lettering beside the wall, outside the tank. */
export function besideWidth(view: Pick<View, 'perMm'>, tank: Tank, manner: Manner): number {
  if (fitsInside(view, tank, manner)) return 8;
  const figures = [diameterRuns(tank, manner), ...tank.courses.map((_, i) => wallRuns(tank, i, manner))];
  return SHELF + Math.max(...figures.map((runs) => runsWidth({ runs, size: TEXT }))) + 4;
}

/** Wall between two arrows that point at its faces; the figure on the line, inside where there is room. */
export function wallMarks(view: View, tank: Tank, manner: Manner, beside: BesideWall): Mark[] {
  const within = fitsInside(view, tank, manner);
  return wallPlaces(tank).flatMap(({ z, course }) => {
    const { inside, outside } = beside.faces(z);
    const [a, b] = [onRight(view, inside), onRight(view, { r: outside.r, z: inside.z })];
    const runs = wallRuns(tank, course, manner);
    const width = runsWidth({ runs, size: TEXT });
    const initial = onRight(view, { r: tank.insideDiameter / 2, z })[0];
    const inner = within ? Math.min(a[0] - 14, initial - 6) : a[0];
    const of = `dimension: wall of course ${course + 1}`;
    return [
      stroke('narrow', [[within ? inner - width : a[0] - 18, a[1]], a], of),
      stroke('narrow', [b, [within ? b[0] + 18 : beside.left + SHELF + width, b[1]]], of),
      arrow(a, [1, 0]),
      arrow(b, [-1, 0]),
      within
        ? lettering([inner, a[1] - 3.5], runs, { anchor: 'end', of })
        : lettering([beside.left + SHELF, b[1] - 3.5], runs, { of }),
    ];
  });
}

/** Half of a diameter across the centre line, one arrow, as ISO 129-1 has it for half sections. */
export function diameterMarks(view: View, tank: Tank, manner: Manner, beside: BesideWall): Mark[] {
  const z = quietHeight(view, tank, beside.faces);
  const [x, y] = onRight(view, { r: tank.insideDiameter / 2, z });
  const runs = diameterRuns(tank, manner);
  const of = 'dimension: inside diameter';
  const past = view.axis - Math.min(14, 0.3 * (x - view.axis));
  if (fitsInside(view, tank, manner))
    return [
      stroke(
        'narrow',
        [
          [past, y],
          [x, y],
        ],
        of,
      ),
      arrow([x, y], [1, 0]),
      lettering([(view.axis + x) / 2, y - 3.5], runs, { anchor: 'middle', of }),
    ];
  const end = beside.left + SHELF + runsWidth({ runs, size: TEXT });
  return [
    stroke(
      'narrow',
      [
        [past, y],
        [end, y],
      ],
      of,
    ),
    arrow([x, y], [1, 0]),
    lettering([beside.left + SHELF, y - 3.5], runs, { of }),
  ];
}

/** A height of the barrel whose line and figure stand farthest from baffles, seams, names and the figures of the walls. */
function quietHeight(view: View, tank: Tank, faces: BesideWall['faces']): number {
  const tall = (1.1 * TEXT) / view.perMm;
  const lines = [
    ...[...tank.baffles, ...tank.girths, ...tank.girthSeams].map(({ at }) => at),
    ...wallPlaces(tank).map(({ z }) => faces(z).inside.z),
  ];
  const room = (z: number): number =>
    Math.min(z, tank.length - z, ...lines.map((line) => Math.abs(line - z) - tall));
  const heights = Array.from({ length: 33 }, (_, i) => (tank.length * (40 - i)) / 48);
  return heights.reduce((best, z) => (room(z) > room(best) + 1e-9 ? z : best));
}
