/** `hoopwright plan`: the steps of the day, its dangers and its papers; and what freezes them. */
import {
  figuresFor,
  type PaperOrders,
  planPaper,
  planSheet,
  planText,
  refusalText,
} from '@hoopwright/report/plan';
import { USUAL_MANNER } from '@hoopwright/report/figure';
import { issueLine } from '@hoopwright/wire/issue';
import {
  freeze,
  type FrozenPlan,
  outdated,
  type Outdated,
  PAPERS,
  type Plan,
  readFrozen,
  type Refusal,
} from '@hoopwright/wire/plan';
import { type Command, Option } from 'commander';
import { NoPress, pdfOf } from '../paper/press.ts';
import { madeFromNow } from '../plan/madeFrom.ts';
import { planHere } from '../plan/planHere.ts';
import { couponsBeside } from '../range/coupons.ts';
import { openRunner } from '../range/runner.ts';
import { sha256 } from '../store/hash.ts';
import { BAD_INPUT, type Desk, DONE, Ending, METAL_SAYS_NO, OUR_FAULT, readOrEnd } from './desk/desk.ts';
import { progressLine } from './desk/progress.ts';
import { type GoodTank, tankFrom } from './desk/tankInput.ts';

interface PlanOptions {
  readonly json?: boolean;
  readonly pdf?: string;
  readonly paper?: PaperOrders['paper'];
  readonly freeze?: string;
  readonly revision?: string;
  readonly date?: string;
  readonly frozen?: string;
  readonly project?: string;
  readonly asGiven?: boolean;
}

export function planCommand(program: Command, desk: Desk, end: (code: number) => void): void {
  program
    .command('plan')
    .description('plan the day of the stretch: steps, litres, limits, instruments, dangers, papers')
    .argument('<tank.json>', 'tank file; - for standard input')
    .option('--json', 'the plan as JSON on standard output')
    .option('--pdf <file>', 'the papers of the day: card, log sheet, dangers, instruments, checklist')
    .addOption(
      new Option('--paper <size>', 'size of the papers (otherwise what the tank file says)').choices(PAPERS),
    )
    .option('--freeze <name>', 'freeze the plan under a name; wants --revision and --date')
    .option('--revision <text>', 'revision of the frozen plan, e.g. B')
    .option('--date <day>', 'day of freezing, e.g. 2026-10-03')
    .option(
      '--frozen <file>',
      'show or print this frozen plan instead of making one; says whether it is out of date',
    )
    .option('--project <name>', 'project as it stands on the papers')
    .option('--as-given', 'take values that look implausible as they stand')
    .action(async (path: string, options: PlanOptions) => end(await runPlan(desk, path, options)));
}

async function runPlan(desk: Desk, path: string, options: PlanOptions): Promise<number> {
  const seal = sealFrom(options);
  const given = await tankFrom(desk, path, options.asGiven === true);
  if (options.frozen !== undefined)
    return await showFrozen(desk, given, path, { ...options, frozen: options.frozen });
  const answer = await planAt(desk, path, given);
  if (answer.kind === 'refused') return refuse(desk, answer.reasons);
  const plan = seal === undefined ? answer.plan : freeze(answer.plan, seal, sha256);
  await show(desk, plan, options);
  for (const note of given.notes) desk.err(`${note}\n`);
  return DONE;
}

type Seal = Parameters<typeof freeze>[1];

function sealFrom({ freeze: name, revision, date, frozen }: PlanOptions): Seal | undefined {
  if (name === undefined) return undefined;
  if (frozen !== undefined)
    throw new Ending(
      BAD_INPUT,
      'came both --freeze and --frozen, wanted one: freeze a new plan, or show a frozen one',
    );
  if (revision === undefined || date === undefined)
    throw new Ending(
      BAD_INPUT,
      '--freeze wants a revision and a day too, e.g. --revision A --date 2026-10-03',
    );
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date) || Number.isNaN(Date.parse(date)))
    throw new Ending(BAD_INPUT, `--date: came "${date}", wanted a day such as 2026-10-03`);
  return { name, revision, date };
}

async function planAt(desk: Desk, path: string, given: GoodTank): ReturnType<typeof planHere> {
  const files = await couponsBeside(path, given, (file) => desk.readBytes(file));
  const progress = progressLine(desk, 'plan');
  const runner = openRunner();
  try {
    return await planHere({
      given,
      files,
      run: runner.run,
      progress: (fraction) => void progress.show(fraction),
    });
  } finally {
    progress.clear();
    await runner.close();
  }
}

type FrozenOptions = PlanOptions & { readonly frozen: string };

/** Prints a plan that was frozen before; struck out where the tank, its coupons or the program have changed since. */
async function showFrozen(
  desk: Desk,
  given: GoodTank,
  tank: string,
  options: FrozenOptions,
): Promise<number> {
  const path = options.frozen;
  const read = readFrozen(await readOrEnd(desk, path), sha256);
  if (!read.ok)
    throw new Ending(
      BAD_INPUT,
      `${path} is not a frozen plan that can be used:\n${read.issues.map(issueLine).join('\n')}`,
    );
  const files = await couponsBeside(tank, given, (file) => desk.readBytes(file));
  const old = outdated(read.frozen.plan, madeFromNow(given, files));
  await show(desk, read.frozen, options, old);
  return DONE;
}

async function show(
  desk: Desk,
  plan: Plan | FrozenPlan,
  options: PlanOptions,
  old?: Outdated,
): Promise<void> {
  const orders = { manner: USUAL_MANNER, ...(old === undefined ? {} : { outdated: old }) };
  if (options.json === true) desk.out(`${JSON.stringify(plan, undefined, 1)}\n`);
  else desk.out(`${planText(planSheet(plan, orders)).join('\n')}\n`);
  if (options.pdf === undefined) return;
  const own = 'frozen' in plan ? plan.plan : plan;
  const source = planPaper(plan, {
    ...orders,
    paper: options.paper ?? own.paper,
    ...(options.project === undefined ? {} : { project: options.project }),
  });
  await desk.write(options.pdf, await pressed(source));
}

async function pressed(source: Parameters<typeof pdfOf>[0]): Promise<Uint8Array> {
  try {
    return await pdfOf(source);
  } catch (error) {
    if (error instanceof NoPress) throw new Ending(OUR_FAULT, error.message);
    throw error;
  }
}

/** Without a plan nothing goes to standard output. */
function refuse(desk: Desk, reasons: readonly Refusal[]): number {
  const figures = figuresFor(USUAL_MANNER);
  desk.err('No plan, because:\n');
  for (const reason of reasons) desk.err(`${refusalText(reason, figures)}\n`);
  const metal = reasons.some(
    ({ code }) => code === 'bursts before target' || code === 'over 99 of 100' || code === 'beyond evidence',
  );
  return metal ? METAL_SAYS_NO : BAD_INPUT;
}
