/** `hoopwright forecast`: how the tank grows, as lines, JSON, a table, or a drawing with its curve. */
import { type Forecast, forecast, type ForecastOrders, forecastToGrowth } from '@hoopwright/core/stretch';
import type { Duty, Tank } from '@hoopwright/core/tank';
import { forecastFile, pathTable, usualOrders } from '@hoopwright/wire/forecast';
import { fromBar } from '@hoopwright/core/units';
import { AS_GIVEN, parseTankFile, QUANTITIES } from '@hoopwright/wire/tank';
import type { Command } from 'commander';
import { BAD_INPUT, type Desk, DONE, Ending, METAL_SAYS_NO } from './desk/desk.ts';
import { type Answer, answerOf } from './answer.ts';
import { percentFrom, pressureFrom, pressuresFrom } from './desk/quantity.ts';
import type { Keeper } from '../range/keeper.ts';
import type { SteelRange } from '../range/steelRange.ts';
import { progressLine } from './desk/progress.ts';
import { rangeFor, steelFor } from './steel/range.ts';
import { type GoodTank, tankFrom } from './desk/tankInput.ts';

export interface ForecastOptions {
  readonly to?: string;
  readonly toGrowth?: string;
  readonly left?: boolean;
  readonly at?: string;
  readonly json?: boolean;
  readonly profile?: boolean;
  readonly csv?: string;
  readonly svg?: string;
  readonly asGiven?: boolean;
}

export function forecastCommand(program: Command, desk: Desk, end: (code: number) => void): void {
  program
    .command('forecast')
    .description('forecast the whole stretch of a tank')
    .argument('<tank.json>', 'tank file; - for standard input')
    .option(
      '--to <pressure>',
      'release at this pressure, e.g. 27bar (otherwise the stretch pressure of the duty)',
    )
    .option(
      '--to-growth <percent>',
      'release where the largest girth has grown so much, under pressure on arrival, e.g. 5%',
    )
    .option('--left', 'with --to-growth: the growth that is left after release')
    .option('--at <pressures>', 'land on these pressures too, e.g. 4.5,9,13.5bar')
    .option('--json', 'the forecast as JSON on standard output')
    .option('--profile', 'with --json: the wall, place by place')
    .option('--csv <file>', 'the path as a table; - for standard output')
    .option('--svg <file>', 'the drawing, and beside it the curve as FILE-curve.svg')
    .option('--as-given', 'take values that look implausible as they stand')
    .action(async (path: string, options: ForecastOptions) => end(await runForecast(desk, path, options)));
}

/** Reads, ranges and forecasts a tank file: what every command that answers for a tank begins with. */
export async function answerFor(
  desk: Desk,
  path: string,
  options: ForecastOptions,
  kept: { readonly keeper?: Keeper } = {},
): Promise<{ readonly result: Forecast; readonly answer: Answer }> {
  const given = await tankFrom(desk, path, options.asGiven === true);
  const target = releasePressure(options);
  // A range goes with a pressure; for a growth that is asked the middle steel answers alone.
  const steel = await (options.toGrowth === undefined
    ? rangeFor(desk, path, given, { ...(target === undefined ? {} : { target }), ...kept })
    : steelFor(desk, path, given));
  const middle = inTheMiddle(given, steel);
  const result = forecastFor(desk, middle, options);
  return { result, answer: answerOf(result, middle.notes, steel) };
}

async function runForecast(desk: Desk, path: string, options: ForecastOptions): Promise<number> {
  const { result, answer } = await answerFor(desk, path, options);
  if (options.json === true) {
    const file = forecastFile(result, { ...answer, profile: options.profile === true });
    desk.out(`${JSON.stringify(file, undefined, 1)}\n`);
  } else if (options.csv !== '-') desk.out(`${answer.lines.join('\n')}\n`);
  await writeFiles(desk, result, answer, options);
  if (options.json !== true) for (const text of answer.warnings) desk.err(`${text}\n`);
  return burstsBefore(result) ? METAL_SAYS_NO : DONE;
}

async function writeFiles(
  desk: Desk,
  result: Forecast,
  answer: Answer,
  options: ForecastOptions,
): Promise<void> {
  if (options.csv !== undefined) {
    const table = pathTable(forecastFile(result, { ...answer, profile: false }));
    if (options.csv === '-') desk.out(table);
    else await desk.write(options.csv, table);
  }
  if (options.svg !== undefined) {
    await desk.write(options.svg, answer.drawing());
    await desk.write(besideSvg(options.svg), answer.curve());
  }
}

/** The tank of the middle steel, where the file leaves the steel to its evidence. */
export function inTheMiddle(given: GoodTank, steel: SteelRange | undefined): GoodTank {
  if (steel === undefined || given.flowFrom === 'stated') return given;
  // Read again with the curve that the evidence gave, so that no note speaks of a stand-in.
  const evaluated = parseTankFile(given.file, { asGiven: true, flow: steel.middle.flow });
  return { ...given, ...(evaluated.ok ? { notes: evaluated.notes } : {}), tank: steel.tank };
}

/** tank.svg to tank-curve.svg. */
export const besideSvg = (path: string): string => path.replace(/(\.svg)?$/i, '-curve.svg');

export const burstsBefore = (result: Forecast): boolean =>
  (result.target !== undefined && result.arrived === undefined) ||
  result.remarks.some(({ code }) => code === 'bursts before target' || code === 'growth not reached');

/** Runs the forecast that the options ask for, with a progress line when it takes over a second. */
export function forecastFor(desk: Desk, { tank, duty }: GoodTank, options: ForecastOptions): Forecast {
  if (options.to !== undefined && options.toGrowth !== undefined)
    throw new Ending(
      BAD_INPUT,
      'came both --to and --to-growth, wanted one of them: the pressure or the growth at release',
    );
  if (options.left === true && options.toGrowth === undefined)
    throw new Ending(
      BAD_INPUT,
      '--left says which growth --to-growth means; give --to-growth too, e.g. --to-growth 4% --left',
    );
  const progress = progressLine(desk, 'forecast');
  const orders = ordersFor(tank, duty, options, progress.show);
  try {
    if (options.toGrowth === undefined) return forecast(tank, duty, orders);
    const asked = { growth: percentFrom(options.toGrowth, '--to-growth'), left: options.left === true };
    return forecastToGrowth(tank, duty, asked, orders).forecast;
  } finally {
    progress.clear();
  }
}

function ordersFor(
  tank: Tank,
  duty: Duty | undefined,
  options: ForecastOptions,
  progress: NonNullable<ForecastOrders['progress']>,
): ForecastOrders {
  const target = releasePressure(options);
  const at = options.at === undefined ? [] : pressuresFrom(options.at, '--at');
  return { ...usualOrders(tank, duty, { at, ...(target === undefined ? {} : { target }) }), progress };
}

/** What `--to` asks for, MPa; a pressure that can hardly be meant ends the command unless it is to be taken as given. */
function releasePressure({ to, asGiven }: ForecastOptions): number | undefined {
  if (to === undefined) return undefined;
  const pressure = pressureFrom(to, '--to');
  const { high } = QUANTITIES['holds.pressure_bar'];
  if (asGiven !== true && pressure > fromBar(high))
    throw new Ending(
      BAD_INPUT,
      `--to: came "${to}", wanted at most ${high} bar, as for a hold; check the value and its unit; if it is meant so, say ${AS_GIVEN}`,
    );
  return pressure;
}
