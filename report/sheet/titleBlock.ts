/** Title block of a sheet: the fields of ISO 7200:2004, and what a forecast must say of itself. */
import type { Manner } from '../figure/manner.ts';
import { scaleOf } from '../figure/quantity.ts';
import { sentence } from '../words/sentence.ts';
import { area, hatch, lettering, type Mark, PAPER, type Point, stroke } from './mark.ts';
import { fitted, textWidth, wrapped } from './measure.ts';

/** What the title block says. The date is handed in: nothing here knows the day. */
export interface TitleBlock {
  readonly project?: string;
  readonly title: string;
  readonly serial?: string;
  readonly revision?: string;
  /** As it is to be printed, e.g. 2026-11-25. */
  readonly issued?: string;
  readonly creator?: string;
  readonly approver?: string;
  readonly forecast: 'current' | 'out of date' | 'none';
  readonly invented: boolean;
}

/** What the sheet itself adds. */
export interface SheetFacts {
  readonly documentType: string;
  readonly scale: string;
  readonly sheet: string;
}

export const BLOCK_WIDTH = 440;
export const BLOCK_HEIGHT = 118;

const LABEL = 7.5;
const VALUE = 11.5;
const TITLE = 17;

interface Cell {
  readonly label: string;
  readonly value: string;
  /** Left edge and width in hundredths of the block. */
  readonly from: number;
  readonly to: number;
  readonly size?: number;
  readonly bold?: boolean;
}

interface Row {
  readonly height: number;
  readonly cells: readonly Cell[];
}

/** The block with its lower right corner at `corner`. */
export function titleBlock(block: TitleBlock, facts: SheetFacts, manner: Manner, corner: Point): Mark[] {
  const left = corner[0] - BLOCK_WIDTH;
  const top = corner[1] - BLOCK_HEIGHT;
  const rows = rowsOf(block, facts, manner);
  const marks: Mark[] = [area(PAPER, corners(left, top, BLOCK_WIDTH, BLOCK_HEIGHT))];
  let y = top;
  for (const [i, row] of rows.entries()) {
    if (i > 0)
      marks.push(
        stroke('narrow', [
          [left, y],
          [corner[0], y],
        ]),
      );
    for (const cell of row.cells) marks.push(...cellMarks(cell, left, y, row.height));
    y += row.height;
  }
  if (block.invented) marks.push(...inventedMark(manner, left, top, rows[0].height));
  marks.push({ ...stroke('outline', corners(left, top, BLOCK_WIDTH, BLOCK_HEIGHT)), closed: true });
  return marks;
}

const corners = (x: number, y: number, width: number, height: number): Point[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

function rowsOf(block: TitleBlock, facts: SheetFacts, manner: Manner): Row[] {
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- the table is typed by key; the sentence has no placeholder
  const say = (key: Parameters<typeof sentence>[1]): string => sentence(manner, key as 'owner');
  const blank = (value: string | undefined): string => value ?? '–';
  const outdated = block.forecast === 'out of date';
  return [
    {
      height: 27,
      cells: [{ label: say('owner'), value: blank(block.project), from: 0, to: block.invented ? 60 : 100 }],
    },
    {
      height: 37,
      cells: [
        { label: say('title'), value: block.title, from: 0, to: 74, size: TITLE, bold: true },
        { label: say('number'), value: blank(block.serial), from: 74, to: 100 },
      ],
    },
    {
      height: 27,
      cells: [
        { label: say('documentType'), value: facts.documentType, from: 0, to: 36 },
        { label: say('decimalAndUnits'), value: unitsOf(manner), from: 36, to: 74 },
        {
          label: say('forecastState'),
          value: say(FORECAST_WORDS[block.forecast]),
          from: 74,
          to: 100,
          bold: outdated,
        },
      ],
    },
    {
      height: 27,
      cells: [
        { label: say('scale'), value: facts.scale, from: 0, to: 14 },
        { label: say('revision'), value: blank(block.revision), from: 14, to: 23 },
        { label: say('issued'), value: blank(block.issued), from: 23, to: 43 },
        { label: say('creator'), value: blank(block.creator), from: 43, to: 63 },
        { label: say('approver'), value: blank(block.approver), from: 63, to: 83 },
        { label: say('sheet'), value: facts.sheet, from: 83, to: 93 },
        { label: say('languageCode'), value: manner.language, from: 93, to: 100 },
      ],
    },
  ];
}

const FORECAST_WORDS = {
  current: 'forecastCurrent',
  'out of date': 'forecastOutdated',
  none: 'forecastNone',
} as const;

function unitsOf(manner: Manner): string {
  const unit = (quantity: Parameters<typeof scaleOf>[1]): string => scaleOf(manner.units, quantity).unit;
  return sentence(manner, 'decimalAndUnitsOf', {
    decimal: manner.decimal,
    length: unit('length'),
    pressure: unit('pressure'),
    volume: unit('volume'),
    mass: unit('mass'),
  });
}

const PAD = 5;

function cellMarks(cell: Cell, blockLeft: number, top: number, height: number): Mark[] {
  const left = blockLeft + (BLOCK_WIDTH * cell.from) / 100;
  const width = (BLOCK_WIDTH * (cell.to - cell.from)) / 100;
  const lines = linesOf(cell, width - 2 * PAD);
  return [
    ...(cell.from === 0
      ? []
      : [
          stroke('narrow', [
            [left, top],
            [left, top + height],
          ]),
        ]),
    ...(cell.label === ''
      ? []
      : [lettering([left + PAD, top + 9], [{ text: cell.label, tone: 'faint' }], { size: LABEL })]),
    ...lines.map(({ text, size }, i) =>
      lettering(
        [left + PAD, top + height - 6.5 - (lines.length - 1 - i) * (size + 1.5)],
        [{ text, ...(cell.bold === true ? { bold: true } : {}) }],
        { size, of: `title block: ${cell.label}` },
      ),
    ),
  ];
}

/** One line as large as it fits; a long title two lines. */
function linesOf(cell: Cell, width: number): { readonly text: string; readonly size: number }[] {
  const largest = cell.size ?? VALUE;
  const wide = (size: number): number => textWidth(cell.value, size) * (cell.bold === true ? 1.1 : 1);
  const size = [largest, 14, 12, VALUE].find((s) => s <= largest && wide(s) <= width);
  if (size !== undefined) return [{ text: cell.value, size }];
  if (largest === VALUE) return [{ text: fitted(cell.value, VALUE, width), size: VALUE }];
  const [first, ...rest] = wrapped(cell.value, 10, width / 1.1);
  return [first, fitted(rest.join(' '), 10, width / 1.1)]
    .filter((text) => text !== '')
    .map((text) => ({ text, size: 10 }));
}

/** Hatched border and the word: what is invented or rehearsed looks so everywhere. */
function inventedMark(manner: Manner, blockLeft: number, top: number, height: number): Mark[] {
  const left = blockLeft + 0.6 * BLOCK_WIDTH;
  const width = 0.4 * BLOCK_WIDTH;
  const word = sentence(manner, 'invented');
  const half = textWidth(word, VALUE) * 0.6;
  const middle = left + width / 2;
  return [
    stroke('narrow', [
      [left, top],
      [left, top + height],
    ]),
    area(hatch('forbidden'), corners(left, top, width, height)),
    area(PAPER, corners(middle - half, top + 4, 2 * half, height - 8)),
    lettering([middle, top + height / 2 + VALUE * 0.36], [{ text: word, bold: true }], {
      size: VALUE,
      anchor: 'middle',
      of: 'invented',
    }),
  ];
}
