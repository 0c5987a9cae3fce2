/** `hoopwright verify`: every published check, ours against theirs. */
import {
  convergenceTables,
  runChecks,
  SOURCES,
  verificationPage,
  WITHOUT_CHECK,
} from '@hoopwright/checks/verification';
import type { Command } from 'commander';
import { type Desk, DONE, OUR_FAULT } from './desk/desk.ts';

export function verifyCommand(program: Command, desk: Desk, end: (code: number) => void): void {
  program
    .command('verify')
    .description('run every published check: ours, theirs, difference, source')
    .option('--json', 'the checks as JSON on standard output')
    .action(({ json }: { json?: boolean }) => end(runVerify(desk, json === true)));
}

function runVerify(desk: Desk, json: boolean): number {
  const sources = runChecks(SOURCES);
  const outcomes = sources.flatMap(({ outcomes: all }) => all);
  const failed = outcomes.filter(({ within }) => !within);
  if (json) {
    const rows = sources.flatMap(({ source, outcomes: all }) =>
      all.map(({ check, ours, difference, within }) => ({
        id: check.id,
        what: check.what,
        ours,
        theirs: check.theirs,
        unit: check.unit,
        difference: difference ?? null,
        within,
        standing: check.standing,
        source: source.citation,
      })),
    );
    desk.out(`${JSON.stringify(rows, undefined, 1)}\n`);
  } else
    desk.out(verificationPage({ sources, withoutCheck: WITHOUT_CHECK, appendices: [convergenceTables()] }));
  desk.err(`${outcomes.length - failed.length} of ${outcomes.length} checks within their tolerance\n`);
  return failed.length === 0 ? DONE : OUR_FAULT;
}
