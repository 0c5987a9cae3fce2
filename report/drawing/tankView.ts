/** The drawing alone, without a sheet around it: metal, dimensions, legend, and the wall to point at. For pages. */
import { type Manner, USUAL_MANNER } from '../figure/manner.ts';
import { area, type Mark, type Patch, stroke } from '../sheet/mark.ts';
import { chainMarks, chainsOf } from './dimension/chain.ts';
import { headLines, noteHeight, noteMarks, noteWidth } from './dimension/headNotes.ts';
import { carriedOutside, levelMarks } from './dimension/heights.ts';
import { diameterMarks, wallMarks } from './dimension/inside.ts';
import { colourOf, type Field } from './field.ts';
import { HEADING, type Laid, layOut } from './layOut.ts';
import { outsideContour, outsideFace, outsideMarks } from './outside.ts';
import { baffleMarks, cutMarks, insideFace, outlineMarks, patchesOf, skirtMarks } from './section.ts';
import { onLeft, onRight } from './shape/view.ts';
import type { TankSheet } from './tankSheet.ts';

export interface TankView {
  /** The tank itself: cut and outside, centre line, outline before forming. */
  readonly metal: readonly Mark[];
  readonly dimensions: readonly Mark[];
  /** Pieces of wall to point at. */
  readonly patches: readonly Patch[];
  /** Scale, place, and how many times walls and growth are drawn. */
  readonly laid: Laid;
}

/** Lays the tank out in `sheet.room`, or where it goes on the sheet. */
export function tankView(sheet: TankSheet): TankView {
  const manner = sheet.manner ?? USUAL_MANNER;
  const laid = layOut(sheet, manner);
  const patches = patchesOf(laid.view, laid.before, laid.now);
  return {
    metal: metalMarks(sheet, laid, patches),
    dimensions: dimensionMarks(laid, manner),
    patches,
    laid,
  };
}

function metalMarks(sheet: TankSheet, laid: Laid, patches: readonly Patch[]): Mark[] {
  const { view, tank, times, before, now, extent } = laid;
  const branches = sheet.stance?.branches ?? [];
  const formed = sheet.stance !== undefined;
  const past = 12 / view.perMm;
  return [
    ...skirtMarks(view, tank, branches, times),
    ...cutMarks(view, now),
    ...(sheet.field === undefined ? [] : colours(sheet.field, patches)),
    ...outlineMarks(view, now),
    ...baffleMarks(view, tank, branches, times),
    ...outsideMarks(view, tank, now, branches, times),
    ...(formed
      ? [
          stroke('initial', outsideFace(view, before), 'initial outline'),
          stroke('initial', insideFace(view, before), 'initial outline'),
        ]
      : []),
    stroke(
      'centre',
      [onRight(view, { r: 0, z: extent.low - past }), onRight(view, { r: 0, z: extent.high + past })],
      'centre line',
    ),
  ];
}

/** Three bands through the wall, inside to outside, so that bending is seen. */
function colours(field: Field, patches: readonly Patch[]): Mark[] {
  return patches.flatMap(({ place, points }) => {
    const values = place === undefined ? undefined : field.values[place];
    if (values === undefined) return [];
    const { inside, mid, outside } = values;
    const [a, b, c, d] = points;
    const along = (p: Patch['points'][number], q: Patch['points'][number], f: number) =>
      [p[0] + f * (q[0] - p[0]), p[1] + f * (q[1] - p[1])] as const;
    return [inside, mid, outside].map((value, k) =>
      area(
        { kind: 'colour', colour: colourOf(field, value) },
        [along(a, d, k / 3), along(b, c, k / 3), along(b, c, (k + 1) / 3), along(a, d, (k + 1) / 3)],
        'wall colour',
      ),
    );
  });
}

function dimensionMarks(laid: Laid, manner: Manner): Mark[] {
  const { view, tank, before, now, extent } = laid;
  const outside = outsideContour(view, now);
  const carried = (z: number) => carriedOutside(view, before, now, z);
  const bare = { ...view, walls: 0, thick: 0 };
  const beside = {
    left: laid.beside,
    faces: (z: number) => ({ inside: carriedOutside(bare, before, now, z), outside: carried(z) }),
  };
  return [
    ...chainMarks(view, chainsOf(tank, manner), laid.chains, outside),
    ...levelMarks(
      view,
      laid.levels,
      {
        tankLeft: onLeft(view, { r: extent.r, z: 0 })[0],
        top: laid.room.top + HEADING + 16,
        bottom: laid.room.bottom - 16,
        names: laid.names,
      },
      carried,
    ),
    ...wallMarks(view, tank, manner, beside),
    ...diameterMarks(view, tank, manner, beside),
    ...headNoteMarks(laid, manner, 'top'),
    ...headNoteMarks(laid, manner, 'bottom'),
  ];
}

function headNoteMarks(
  { view, tank, now, extent, room }: Laid,
  manner: Manner,
  end: 'top' | 'bottom',
): Mark[] {
  const lines = headLines(tank, end, manner);
  const pieces = now.filter((piece) => piece.part === `${end} head`);
  const thin = pieces.filter((piece) => piece.kind === 'head');
  const head = thin.length > 0 ? thin : pieces;
  const x = Math.min(view.axis + 0.62 * extent.r * view.perMm, room.right - noteWidth(lines));
  const y = (z: number): number => view.base - z * view.perMm;
  const foot = end === 'top' ? y(extent.high) - 8 : y(extent.low) + 8 + noteHeight(lines);
  // The leader comes from the left of its lines, so that it crosses none of them.
  const wanted = Math.min(0.5 * extent.r, (x - 14 - view.axis) / view.perMm);
  const aim = outsideContour(view, head).reduce((best, spot) =>
    Math.abs(spot.r - wanted) < Math.abs(best.r - wanted) ? spot : best,
  );
  return noteMarks(lines, [x, foot], onRight(view, aim), `${end} head`);
}
