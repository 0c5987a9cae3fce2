/** `hoopwright compare`: the same tank and duty in sheets of other thicknesses. */
import { drawnTank } from '@hoopwright/core/stretch';
import { fromBar, MM_PER_INCH } from '@hoopwright/core/units';
import { sentence } from '@hoopwright/report/words';
import { type Figure, figure, type Manner, type Quantity, USUAL_MANNER } from '@hoopwright/report/figure';
import { type CompareOrders, compareSheets, type Comparison, type SheetRow } from '@hoopwright/wire/compare';
import { issueLine } from '@hoopwright/wire/issue';
import type { Command } from 'commander';
import { couponsBeside } from '../range/coupons.ts';
import { plateOf, steelOf } from '../range/steelRange.ts';
import { BAD_INPUT, type Desk, DONE, Ending } from './desk/desk.ts';
import { progressLine } from './desk/progress.ts';
import { type GoodTank, tankFrom } from './desk/tankInput.ts';

interface CompareOptions {
  readonly walls: string;
  readonly json?: boolean;
  readonly asGiven?: boolean;
}

export function compareCommand(program: Command, desk: Desk, end: (code: number) => void): void {
  program
    .command('compare')
    .description('the same tank and duty in sheets of other thicknesses: growth, mass, margin')
    .argument('<tank.json>', 'tank file; - for standard input')
    .requiredOption('--walls <list>', 'sheets to compare, e.g. 1.5,2,2.5mm')
    .option('--json', 'the comparison as JSON on standard output')
    .option('--as-given', 'take values that look implausible as they stand')
    .action(async (path: string, options: CompareOptions) => end(await runCompare(desk, path, options)));
}

async function runCompare(desk: Desk, path: string, options: CompareOptions): Promise<number> {
  const walls = wallsFrom(options.walls);
  const given = await tankFrom(desk, path, options.asGiven === true);
  const progress = progressLine(desk, 'compare');
  const orders: CompareOrders = {
    ...(await steelFor(desk, path, given)),
    asGiven: options.asGiven === true,
    stop: (done) => progress.show(done / (walls.length + 1)),
  };
  const comparison = compareSheets(given.file, walls, orders);
  progress.clear();
  if (comparison === undefined) throw new Error('a comparison that nobody stopped has stopped');
  desk.out(options.json === true ? `${JSON.stringify(comparison, undefined, 1)}\n` : tableOf(comparison));
  for (const { wall_mm, issues } of comparison.sheets)
    for (const issue of issues) desk.err(`${wall_mm} mm: ${issueLine(issue)}\n`);
  return DONE;
}

/** The steel in the middle of its range, where the file leaves it to its evidence. */
async function steelFor(
  desk: Desk,
  path: string,
  given: GoodTank,
): Promise<Pick<CompareOrders, 'withSteel'>> {
  if (given.flowFrom === 'stated') return {};
  const files = await couponsBeside(path, given, (file) => desk.readBytes(file));
  const steel = steelOf(given, files);
  return steel === undefined ? {} : { withSteel: (tank) => drawnTank(tank, plateOf(tank), steel.middle) };
}

const WANTED = 'thicknesses with their unit, such as 1.5,2,2.5mm; with decimal commas 1,5;2;2,5mm';

/** "1.5,2,2.5mm" to mm. A semicolon anywhere makes the comma a decimal mark. */
export function wallsFrom(text: string): number[] {
  const found = /^([\d.,;\s]+?)\s*(mm|in)$/i.exec(text.trim());
  if (found === null) throw new Ending(BAD_INPUT, `--walls: came "${text}", wanted ${WANTED}`);
  const one = found[2].toLowerCase() === 'in' ? MM_PER_INCH : 1;
  const parts = found[1].includes(';')
    ? found[1].split(';').map((part) => part.replace(',', '.'))
    : found[1].split(/[,\s]+/);
  const walls = parts.filter((part) => part.trim() !== '').map(Number);
  if (walls.length === 0 || walls.some((wall) => !(wall > 0)))
    throw new Ending(BAD_INPUT, `--walls: came "${text}", wanted ${WANTED}`);
  return walls.map((wall) => Number((wall * one).toPrecision(12)));
}

/** Figures of a row, in the order of the columns; inside units. */
const COLUMNS: readonly { readonly head: Head; readonly of: (row: SheetRow) => Shown }[] = [
  { head: 'compareSheet', of: (row) => ['wall', row.wall_mm] },
  { head: 'compareUnder', of: (row) => ['growth', part(row.growthUnder_percent, 100)] },
  { head: 'compareLeft', of: (row) => ['growth', part(row.growthLeft_percent, 100)] },
  { head: 'compareMass', of: (row) => ['mass', part(row.mass_kg, 1000)] },
  { head: 'compareShare', of: (row) => ['share', row.overUnstretched] },
  {
    head: 'compareMaximum',
    of: (row) => ['pressure', row.maximum_bar === null ? null : fromBar(row.maximum_bar)],
  },
  { head: 'compareMargin', of: (row) => ['ratio', row.margin] },
];

type Head =
  | 'compareSheet'
  | 'compareUnder'
  | 'compareLeft'
  | 'compareMass'
  | 'compareShare'
  | 'compareMaximum'
  | 'compareMargin';
type Shown = readonly [quantity: Quantity, value: number | null];

const part = (value: number | null, of: number): number | null => (value === null ? null : value / of);

function tableOf({ tank, sheets, unstretched }: Comparison, manner: Manner = USUAL_MANNER): string {
  const cell = ([quantity, value]: Shown): string =>
    value === null ? '–' : text(figure(manner, quantity, value));
  const head = COLUMNS.map(({ head: key }) => sentence(manner, key));
  const rows = sheets.map((row) => [...COLUMNS.map(({ of }) => cell(of(row))), ...endOf(row, manner)]);
  const widths = head.map((word, i) => Math.max(word.length, ...rows.map((row) => row[i].length)));
  const line = (cells: readonly string[]): string =>
    cells
      .map((one, i) => (i < widths.length ? one.padStart(widths[i]) : one))
      .join('  ')
      .trimEnd();
  return [
    sentence(manner, 'compareTank', { tank }),
    line(head),
    ...rows.map(line),
    ...(unstretched === null
      ? []
      : [
          sentence(manner, 'compareUnstretched', {
            wall: text(figure(manner, 'wall', unstretched.wall_mm)),
            mass: text(figure(manner, 'mass', unstretched.mass_kg / 1000)),
          }),
        ]),
    '',
  ].join('\n');
}

const text = ({ text: digits, unit }: Figure): string => (unit === '' ? digits : `${digits} ${unit}`);

function endOf({ end }: SheetRow, manner: Manner): string[] {
  if (end === 'bursts') return [sentence(manner, 'compareBursts')];
  return end === 'refused' ? [sentence(manner, 'compareRefused')] : [];
}
