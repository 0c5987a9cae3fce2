/** `hoopwright plan`: the steps of the day, its dangers and its papers. */
import { figuresFor, planSheet, planText, refusalText } from '@hoopwright/report/plan';
import { USUAL_MANNER } from '@hoopwright/report/figure';
import { type Plan, planFor, type Refusal } from '@hoopwright/wire/plan';
import type { Command } from 'commander';
import { sha256 } from '../store/hash.ts';
import { BAD_INPUT, type Desk, DONE, METAL_SAYS_NO } from './desk.ts';
import { progressLine } from './progress.ts';
import { type GoodTank, tankFrom } from './tankInput.ts';

interface PlanOptions {
  readonly json?: boolean;
  readonly asGiven?: boolean;
}

/** Version of the program, as the plan names it. */
const PROGRAM = '0.1.0';

export function planCommand(program: Command, desk: Desk, end: (code: number) => void): void {
  program
    .command('plan')
    .description('plan the day of the stretch: steps, litres, limits, instruments, dangers')
    .argument('<tank.json>', 'tank file; - for standard input')
    .option('--json', 'the plan as JSON on standard output')
    .option('--as-given', 'take values that look implausible as they stand')
    .action(async (path: string, options: PlanOptions) => end(await runPlan(desk, path, options)));
}

async function runPlan(desk: Desk, path: string, options: PlanOptions): Promise<number> {
  const given = await tankFrom(desk, path, options.asGiven === true);
  const answer = answerFor(desk, given);
  if (answer.kind === 'refused') return refuse(desk, answer.reasons);
  show(desk, answer.plan, options);
  for (const note of given.notes) desk.err(`${note}\n`);
  return DONE;
}

function answerFor(desk: Desk, given: GoodTank): ReturnType<typeof planFor> {
  const progress = progressLine(desk, 'plan');
  try {
    return planFor({ ...given, program: PROGRAM, hash: sha256, progress: progress.show });
  } finally {
    progress.clear();
  }
}

function show(desk: Desk, plan: Plan, options: PlanOptions): void {
  if (options.json === true) desk.out(`${JSON.stringify(plan, undefined, 1)}\n`);
  else desk.out(`${planText(planSheet(plan, { manner: USUAL_MANNER })).join('\n')}\n`);
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
