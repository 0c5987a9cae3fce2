/** The command line as one function: words in, exit code out. */
import { Command, CommanderError } from 'commander';
import { BAD_INPUT, type Desk, DONE, Ending, OUR_FAULT, reasonOf } from './desk/desk.ts';
import { compareCommand } from './compare.ts';
import { couponCommand } from './steel/coupon.ts';
import { demoCommand } from './board/demo.ts';
import { forecastCommand } from './forecast.ts';
import { planCommand } from './plan.ts';
import { listenCommand } from './day/listen.ts';
import { recordCommand } from './day/record.ts';
import { rehearseCommand } from './day/rehearse.ts';
import { schemaCommand } from './schema.ts';
import { serveCommand } from './board/serve.ts';
import { steelCommand } from './steel/steel.ts';
import { verifyCommand } from './verify.ts';

const CAUTION =
  'Pressurised tanks kill. This supports judgement; it replaces neither the local rules for pressure equipment nor a licensed engineer.';

export async function run(words: readonly string[], desk: Desk): Promise<number> {
  let code: number = DONE;
  const program = programFor(desk, (ended) => {
    code = ended;
  });
  try {
    await program.parseAsync([...words], { from: 'user' });
    return code;
  } catch (error) {
    return codeOf(error, desk);
  }
}

function programFor(desk: Desk, end: (code: number) => void): Command {
  const program = new Command('hoopwright')
    .description('Forecast, plan and record the cold stretching of a thin stainless propellant tank.')
    .addHelpText('after', `\nExit codes: 0 done, 1 our fault, 2 bad input, 3 the metal says no.\n${CAUTION}`)
    .exitOverride()
    .configureOutput({ writeOut: (text) => desk.out(text), writeErr: (text) => desk.err(text) })
    .showHelpAfterError('(--help lists the options)');
  program.commandsGroup('Commands:');
  forecastCommand(program, desk, end);
  compareCommand(program, desk, end);
  couponCommand(program, desk, end);
  steelCommand(program, desk, end);
  planCommand(program, desk, end);
  rehearseCommand(program, desk, end);
  listenCommand(program, desk, end);
  recordCommand(program, desk, end);
  schemaCommand(program, desk);
  verifyCommand(program, desk, end);
  demoCommand(program, desk, end);
  serveCommand(program, desk, end);
  for (const command of program.commands) {
    command
      .exitOverride()
      .configureOutput({ writeOut: (text) => desk.out(text), writeErr: (text) => desk.err(text) });
  }
  return program;
}

function codeOf(error: unknown, desk: Desk): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? DONE : BAD_INPUT;
  if (error instanceof Ending) {
    desk.err(`${error.message}\n`);
    return error.code;
  }
  desk.err(`This is a fault of the program, not of your file: ${reasonOf(error)}\n`);
  if (error instanceof Error && error.stack !== undefined) desk.err(`${error.stack}\n`);
  return OUR_FAULT;
}
