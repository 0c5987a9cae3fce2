/** `hoopwright steel`: the flow curve of a tank's plate with its range, and what each piece of evidence did. */
import { steelCurveSvg, steelText, STEEL_ENGLISH } from '@hoopwright/report/steel';
import { rollingSaid, seamsSaid, steelAnswer } from '@hoopwright/wire/evidence';
import { rangeFile } from '@hoopwright/wire/forecast';
import { issueLine } from '@hoopwright/wire/issue';
import type { Command } from 'commander';
import type { SteelRange } from '../../range/steelRange.ts';
import { BAD_INPUT, type Desk, DONE, Ending } from '../desk/desk.ts';
import { rangeFor } from './range.ts';
import { tankFrom } from '../desk/tankInput.ts';

interface SteelOptions {
  readonly json?: boolean;
  readonly svg?: string;
  readonly asGiven?: boolean;
}

export function steelCommand(program: Command, desk: Desk, end: (code: number) => void): void {
  program
    .command('steel')
    .description('what the tests say of the steel: the curve, its range, its evidence')
    .argument('<tank.json>', 'tank file; - for standard input')
    .option('--json', 'the same as JSON on standard output')
    .option('--svg <file>', 'the curve with its range as a drawing')
    .option('--as-given', 'take values that look implausible as they stand')
    .action(async (path: string, options: SteelOptions) => end(await runSteel(desk, path, options)));
}

async function runSteel(desk: Desk, path: string, options: SteelOptions): Promise<number> {
  const given = await tankFrom(desk, path, options.asGiven === true);
  const steel = await rangeFor(desk, path, given);
  const wall = given.tank.courses.reduce((a, b) => (b.length > a.length ? b : a)).wall;
  if (options.json === true) desk.out(`${JSON.stringify(fileOf(steel, wall), undefined, 1)}\n`);
  else desk.out(`${linesOf(steel, given.tank.name, wall).join('\n')}\n`);
  if (options.svg !== undefined) await desk.write(options.svg, drawingOf(steel, given.tank.name));
  for (const issue of steel?.read.issues ?? []) desk.err(`${issueLine(issue)}\n`);
  return DONE;
}

function drawingOf(steel: SteelRange | undefined, tank: string): string {
  if (steel === undefined) throw new Ending(BAD_INPUT, STEEL_ENGLISH.assumedSteel);
  return steelCurveSvg(tank, steel.belief);
}

function fileOf(steel: SteelRange | undefined, wall: number): unknown {
  if (steel === undefined) return { hoopwrightSteel: 1, curve: null, warnings: [STEEL_ENGLISH.assumedSteel] };
  return steelAnswer({
    read: steel.read,
    belief: steel.belief,
    wall,
    stretch: steel.stretch === undefined ? null : rangeFile(steel.stretch),
    warnings: steel.read.issues.map(issueLine),
  });
}

function linesOf(steel: SteelRange | undefined, tank: string, wall: number): string[] {
  if (steel === undefined) return [STEEL_ENGLISH.assumedSteel];
  const { belief, read, stretch } = steel;
  const rolling = rollingSaid(read, belief.draws);
  return steelText({
    tank,
    wall,
    belief,
    seams: seamsSaid(read.tests),
    ...(read.md30 === undefined ? {} : { md30: read.md30 }),
    ...(rolling === undefined ? {} : { rolling }),
    ...(stretch === undefined ? {} : { stretch }),
  });
}
