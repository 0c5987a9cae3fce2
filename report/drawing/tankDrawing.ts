/**
 * The tank to scale on a drawing sheet, half in section: as welded (long-dashed double-dotted) and as it stands at one
 * moment of its stretch, with its dimensions, its girths and what they grow to. A pure function from values to a scene.
 */
import { fixed } from '../figure/figure.ts';
import { type Manner, USUAL_MANNER } from '../figure/manner.ts';
import { FRAME, frame, SHEET_HEIGHT, SHEET_WIDTH } from '../sheet/frame.ts';
import { area, type Mark, type Patch, type Scene, stroke } from '../sheet/mark.ts';
import { noteList } from '../sheet/noteList.ts';
import { BLOCK_HEIGHT, BLOCK_WIDTH, titleBlock } from '../sheet/titleBlock.ts';
import { sentence } from '../words/sentence.ts';
import { chainMarks, chainsOf } from './dimension/chain.ts';
import { headLines, noteHeight, noteMarks, noteWidth } from './dimension/headNotes.ts';
import { carriedOutside, levelMarks } from './dimension/heights.ts';
import { diameterMarks, wallMarks } from './dimension/inside.ts';
import { colourOf, type Field } from './field.ts';
import { HEADING, INSET, type Laid, layOut } from './layOut.ts';
import { outsideContour, outsideFace, outsideMarks } from './outside.ts';
import { baffleMarks, insideFace, patchesOf, sectionMarks, skirtMarks } from './section.ts';
import { onLeft, onRight } from './shape/view.ts';
import { heading, notesOf, stateOf } from './sheetWords.ts';
import { growthTable, legend } from './table.ts';
import type { TankSheet } from './tankSheet.ts';

export function tankDrawing(sheet: TankSheet): Scene {
  const manner = sheet.manner ?? USUAL_MANNER;
  const laid = layOut(sheet, manner);
  const { view, tank } = laid;
  const column = { left: FRAME.right - BLOCK_WIDTH + 4, width: BLOCK_WIDTH - INSET - 4 };
  const notes = noteList(column, FRAME.bottom - BLOCK_HEIGHT - 12, notesOf(sheet, laid, manner));
  const table =
    sheet.states === undefined
      ? { marks: [], bottom: FRAME.top + INSET }
      : growthTable(column, FRAME.top + INSET - 4, tank, sheet.states, manner);
  const key = sheet.field === undefined ? [] : legend(column, table.bottom + 14, sheet.field, manner).marks;
  const patches = patchesOf(view, laid.before, laid.now);
  return {
    width: SHEET_WIDTH,
    height: SHEET_HEIGHT,
    title: sentence(manner, 'drawingTitle', { tank: sheet.block.title, state: stateOf(sheet, manner) }),
    patches,
    marks: [
      ...frame(),
      ...heading(sheet, laid, manner),
      ...tankMarks(sheet, laid, patches),
      ...dimensionMarks(laid, manner),
      ...table.marks,
      ...key,
      ...notes.marks,
      ...titleBlock(
        sheet.block,
        {
          documentType: sentence(manner, 'drawingType'),
          scale: scaleText(view.scale, manner),
          sheet: '1/1',
        },
        manner,
        [FRAME.right, FRAME.bottom],
      ),
    ],
  };
}

const scaleText = (scale: number, manner: Manner): string =>
  scale >= 1 ? `1:${fixed(manner, scale, scale % 1 === 0 ? 0 : 1)}` : `${fixed(manner, 1 / scale, 0)}:1`;

/** The tank itself: cut and outside, centre line, initial outline on top. */
function tankMarks(sheet: TankSheet, laid: Laid, patches: readonly Patch[]): Mark[] {
  const { view, tank, times, before, now, extent } = laid;
  const branches = sheet.stance?.branches ?? [];
  const formed = sheet.stance !== undefined;
  const past = 12 / view.perMm;
  return [
    ...skirtMarks(view, tank, branches, times),
    ...(sheet.field === undefined ? [] : colours(sheet.field, patches)),
    ...sectionMarks(view, now, sheet.field === undefined),
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
    if (place === undefined) return [];
    const { inside, mid, outside } = field.values[place];
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
        top: FRAME.top + 14 + HEADING + 16,
        bottom: FRAME.bottom - 20,
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
  { view, tank, now, extent, limit }: Laid,
  manner: Manner,
  end: 'top' | 'bottom',
): Mark[] {
  const lines = headLines(tank, end, manner);
  const pieces = now.filter((piece) => piece.part === `${end} head`);
  const thin = pieces.filter((piece) => piece.kind === 'head');
  const head = thin.length > 0 ? thin : pieces;
  const x = Math.min(view.axis + 0.62 * extent.r * view.perMm, limit - noteWidth(lines));
  const y = (z: number): number => view.base - z * view.perMm;
  const foot = end === 'top' ? y(extent.high) - 8 : y(extent.low) + 8 + noteHeight(lines);
  // The leader comes from the left of its lines, so that it crosses none of them.
  const wanted = Math.min(0.5 * extent.r, (x - 14 - view.axis) / view.perMm);
  const aim = outsideContour(view, head).reduce((best, spot) =>
    Math.abs(spot.r - wanted) < Math.abs(best.r - wanted) ? spot : best,
  );
  return noteMarks(lines, [x, foot], onRight(view, aim), `${end} head`);
}
