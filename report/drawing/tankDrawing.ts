/**
 * The tank to scale on a drawing sheet, half in section: as welded (long-dashed double-dotted) and as it stands at one
 * moment of its stretch, with its dimensions, its girths and what they grow to. A pure function from values to a scene.
 */
import { fixed } from '../figure/figure.ts';
import { type Manner, USUAL_MANNER } from '../figure/manner.ts';
import { FRAME, frame, SHEET_HEIGHT, SHEET_WIDTH } from '../sheet/frame.ts';
import type { Scene } from '../sheet/mark.ts';
import { noteList } from '../sheet/noteList.ts';
import { BLOCK_HEIGHT, BLOCK_WIDTH, titleBlock } from '../sheet/titleBlock.ts';
import { sentence } from '../words/sentence.ts';
import { INSET } from './layOut.ts';
import { enlargedOf, heading, notesOf, stateOf } from './sheetWords.ts';
import { growthTable, legend } from './table.ts';
import type { TankSheet } from './tankSheet.ts';
import { tankView } from './tankView.ts';

const COLUMN = { left: FRAME.right - BLOCK_WIDTH + 4, width: BLOCK_WIDTH - INSET - 4 };

export function tankDrawing(sheet: TankSheet): Scene {
  const manner = sheet.manner ?? USUAL_MANNER;
  const { metal, dimensions, patches, laid } = tankView(sheet);
  const notes = noteList(COLUMN, FRAME.bottom - BLOCK_HEIGHT - 12, notesOf(sheet, laid, manner));
  const table =
    sheet.states === undefined
      ? { marks: [], bottom: FRAME.top + INSET }
      : growthTable(COLUMN, FRAME.top + INSET - 4, laid.tank, sheet.states, manner);
  const key = sheet.field === undefined ? [] : legend(COLUMN, table.bottom + 14, sheet.field, manner).marks;
  const { growth, walls } = enlargedOf(sheet, laid, manner);
  const facts = {
    documentType: sentence(manner, 'drawingType'),
    scale: scaleText(laid.view.scale, manner),
    sheet: '1/1',
  };
  return {
    width: SHEET_WIDTH,
    height: SHEET_HEIGHT,
    title: sentence(manner, 'drawingTitle', { tank: sheet.block.title, state: stateOf(sheet, manner) }),
    patches,
    enlarged: growth === undefined ? [walls] : [growth, walls],
    marks: [
      ...frame(),
      ...heading(sheet, laid, manner),
      ...metal,
      ...dimensions,
      ...table.marks,
      ...key,
      ...notes.marks,
      ...titleBlock(sheet.block, facts, manner, [FRAME.right, FRAME.bottom]),
    ],
  };
}

const scaleText = (scale: number, manner: Manner): string =>
  scale >= 1 ? `1:${fixed(manner, scale, scale % 1 === 0 ? 0 : 1)}` : `${fixed(manner, 1 / scale, 0)}:1`;
