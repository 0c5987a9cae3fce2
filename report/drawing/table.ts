/** Beside the drawing: girths and contents as welded, under pressure and left, the legend of colours, the notes. */
import type { Tank } from '@hoopwright/core/tank';
import { saySigned } from '../figure/figure.ts';
import type { Manner } from '../figure/manner.ts';
import { type Quantity, scaleOf } from '../figure/quantity.ts';
import { area, lettering, type Mark, type Run, SMALL, stroke, TEXT } from '../sheet/mark.ts';
import { fitted, textWidth } from '../sheet/measure.ts';
import type { Column } from '../sheet/noteList.ts';
import { figureRuns } from '../sheet/runs.ts';
import { figure } from '../figure/figure.ts';
import { sentence } from '../words/sentence.ts';
import { colourOf, type Field } from './field.ts';
import type { Stance } from './shape/stance.ts';

/** The states a table has columns for. */
export interface States {
  /** Filled, zero gauge. */
  readonly welded: {
    readonly girths: readonly number[];
    readonly content: number;
    readonly thinnest: number;
  };
  readonly under?: Stance;
  readonly left?: Stance;
}

const ROW = 17;

/** Left edge of the units and right edges of the figures, in hundredths of the width: value and growth for each state. */
const EDGES = { unit: 28, welded: 45, under: 59, underGrowth: 73, left: 86, leftGrowth: 100 } as const;

/** @returns the marks, and the y where they end */
export function growthTable(
  column: Column,
  top: number,
  tank: Tank,
  states: States,
  manner: Manner,
): { marks: Mark[]; bottom: number } {
  const x = (hundredths: number): number => column.left + (column.width * hundredths) / 100;
  const rows = rowsOf(tank, states, manner);
  const room = Math.min(ROW, 430 / Math.max(1, rows.length));
  const size = Math.min(TEXT - 0.5, room - 3);
  const body = top + 2 * ROW + 6;
  const names = column.width * 0.27;
  const nameSize = (name: string): number =>
    [size, size - 1.5].find((s) => textWidth(name, s) <= names) ?? 8.5;
  const rule = (y: number, line: 'outline' | 'narrow'): Mark =>
    stroke(
      line,
      [
        [column.left, y],
        [column.left + column.width, y],
      ],
      'table rule',
    );
  const marks: Mark[] = [...headings(x, top, states, manner), rule(body - 9, 'outline')];
  rows.forEach((row, i) => {
    const y = body + (i + 0.5) * room + (i >= tank.girths.length ? 5 : 0);
    const base = y + 0.3 * size;
    marks.push(
      lettering([column.left, base], [{ text: fitted(row.name, nameSize(row.name), names) }], {
        size: nameSize(row.name),
        of: `row: ${row.name}`,
      }),
      lettering([x(EDGES.unit), base], [{ text: row.unit, tone: 'faint' }], {
        size,
        of: `unit: ${row.name}`,
      }),
      ...row.cells.flatMap(({ edge, runs }) =>
        runs === undefined
          ? []
          : [lettering([x(edge), base], runs, { size, anchor: 'end', of: `cell: ${row.name}` })],
      ),
    );
    if (row.ruled === true) marks.push(rule(y - room / 2 - 1.5, 'narrow'));
  });
  const bottom = body + rows.length * room + 9;
  return { marks: [...marks, rule(bottom, 'outline')], bottom };
}

function headings(x: (hundredths: number) => number, top: number, states: States, manner: Manner): Mark[] {
  const head = (
    edge: number,
    key: 'columnWelded' | 'columnUnder' | 'columnLeft',
    pressure: number,
  ): Mark[] => [
    lettering([x(edge), top + 0.6 * ROW], [{ text: sentence(manner, key), tone: 'faint' }], {
      size: SMALL,
      anchor: 'end',
      of: `column: ${key}`,
    }),
    lettering([x(edge), top + 1.35 * ROW], figureRuns(manner, { quantity: 'pressure', value: pressure }), {
      size: SMALL,
      anchor: 'end',
      of: `column pressure: ${key}`,
    }),
  ];
  const { under, left } = states;
  return [
    ...head(EDGES.welded, 'columnWelded', 0),
    ...(under === undefined ? [] : head(EDGES.underGrowth, 'columnUnder', under.pressure)),
    ...(left === undefined ? [] : head(EDGES.leftGrowth, 'columnLeft', left.pressure)),
  ];
}

interface Row {
  readonly name: string;
  readonly unit: string;
  readonly ruled?: boolean;
  readonly cells: readonly { readonly edge: number; readonly runs: readonly Run[] | undefined }[];
}

function rowsOf(tank: Tank, { welded, under, left }: States, manner: Manner): Row[] {
  const plain = (quantity: Quantity, value: number | undefined): Run[] | undefined =>
    value === undefined ? undefined : figureRuns(manner, { quantity, value }).slice(0, 1);
  const unit = (quantity: Quantity): string => scaleOf(manner.units, quantity).unit;
  const grown = (growth: number | undefined): Run[] | undefined =>
    growth === undefined ? undefined : [{ text: saySigned(manner, 'growth', growth) }];
  const cells = (quantity: Quantity, values: readonly (number | undefined)[]): Row['cells'] => [
    { edge: EDGES.welded, runs: plain(quantity, values[0]) },
    { edge: EDGES.under, runs: plain(quantity, values[1]) },
    { edge: EDGES.left, runs: plain(quantity, values[2]) },
  ];
  const growths = (a: number | undefined, b: number | undefined): Row['cells'] => [
    { edge: EDGES.underGrowth, runs: grown(a) },
    { edge: EDGES.leftGrowth, runs: grown(b) },
  ];
  const content = (stance: Stance | undefined): number | undefined =>
    stance === undefined ? undefined : welded.content + stance.growth;
  const share = (stance: Stance | undefined): number | undefined =>
    stance === undefined ? undefined : stance.growth / welded.content;
  return [
    ...tank.girths.map(
      ({ name }, i): Row => ({
        name,
        unit: unit('girth'),
        cells: [
          ...cells('girth', [welded.girths[i], under?.girths[i].girth, left?.girths[i].girth]),
          ...growths(under?.girths[i].growth, left?.girths[i].growth),
        ],
      }),
    ),
    {
      name: sentence(manner, 'rowLargest'),
      unit: '',
      ruled: true,
      cells: growths(under?.largest.growth, left?.largest.growth),
    },
    {
      name: sentence(manner, 'rowContent'),
      unit: unit('content'),
      cells: [
        ...cells('content', [welded.content, content(under), content(left)]),
        ...growths(share(under), share(left)),
      ],
    },
    {
      name: sentence(manner, 'rowThinnest'),
      unit: unit('wall'),
      cells: cells('wall', [welded.thinnest, under?.thinnest, left?.thinnest]),
    },
  ];
}

const LEGEND_HEIGHT = 12;
const LEGEND_STEPS = 100;

/** Scale of colours with its unit and its extremes. */
export function legend(
  column: Column,
  top: number,
  field: Field,
  manner: Manner,
): { marks: Mark[]; bottom: number } {
  const { unit } = figure(manner, field.quantity, field.least);
  const bar = top + 20;
  const step = column.width / LEGEND_STEPS;
  const cells = Array.from({ length: LEGEND_STEPS }, (_, i): Mark => {
    const value = field.least + ((i + 0.5) / LEGEND_STEPS) * (field.most - field.least);
    // Each cell goes on to the end under those after it, so that no paper shines through where two meet.
    const [a, b] = [column.left + i * step, column.left + column.width];
    return area(
      { kind: 'colour', colour: colourOf(field, value) },
      [
        [a, bar],
        [b, bar],
        [b, bar + LEGEND_HEIGHT],
        [a, bar + LEGEND_HEIGHT],
      ],
      'legend',
    );
  });
  const below = bar + LEGEND_HEIGHT + 13;
  const value = (v: number): Run[] => figureRuns(manner, { quantity: field.quantity, value: v });
  return {
    marks: [
      // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- the table is typed by key; the sentence has no placeholder
      lettering([column.left, top + 12], sentence(manner, field.title as 'fieldWall', { unit }), {
        of: 'legend title',
      }),
      ...cells,
      lettering([column.left, below], value(field.least), { size: SMALL, of: 'legend least' }),
      lettering([column.left + column.width / 2, below], value((field.least + field.most) / 2), {
        size: SMALL,
        anchor: 'middle',
        of: 'legend middle',
      }),
      lettering([column.left + column.width, below], value(field.most), {
        size: SMALL,
        anchor: 'end',
        of: 'legend most',
      }),
    ],
    bottom: below + 8,
  };
}
