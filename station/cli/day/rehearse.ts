/** `hoopwright rehearse`: the day at home, on a simulated tank, with faults if wanted; a record of it is written. */
import { closeSync, openSync, writeSync } from 'node:fs';
import { USUAL_MANNER } from '@hoopwright/report/figure';
import { figuresFor, refusalText } from '@hoopwright/report/plan';
import type { CouponFiles } from '@hoopwright/wire/evidence';
import type { Stretchable } from '@hoopwright/wire/advice';
import type { Plan } from '@hoopwright/wire/plan';
import { aboutDigest, aboutLine, type End, entryLine, headGroups, tie } from '@hoopwright/wire/record';
import type { Command } from 'commander';
import { planHere } from '../../plan/planHere.ts';
import { stretchableFor } from '../../plan/planRange.ts';
import { PROGRAM } from '../../plan/version.ts';
import { couponsBeside } from '../../range/coupons.ts';
import { openRunner } from '../../range/runner.ts';
import type { DayEnd } from '../../rig/happening.ts';
import { type Fault, FAULTS, readFault } from '../../rig/fault.ts';
import { realTank } from '../../rig/realTank.ts';
import { type Rehearsal, rehearsal } from '../../rig/rehearsal.ts';
import { chainHash, sha256 } from '../../store/hash.ts';
import { BAD_INPUT, type Desk, DONE, Ending, METAL_SAYS_NO, reasonOf } from '../desk/desk.ts';
import { progressLine } from '../desk/progress.ts';
import { type GoodTank, tankFrom } from '../desk/tankInput.ts';

interface RehearseOptions {
  readonly seed: string;
  readonly speed?: string;
  readonly fault: readonly string[];
  readonly record: string;
  readonly asGiven?: boolean;
}

const FASTEST = 200;

export function rehearseCommand(program: Command, desk: Desk, end: (code: number) => void): void {
  program
    .command('rehearse')
    .description('rehearse the day on a simulated tank, by hand readings, with faults if wanted')
    .argument('<tank.json>', 'tank file; - for standard input')
    .requiredOption('--record <file>', 'where the record of the rehearsal is written; must be a new file')
    .option('--seed <n>', 'whole number that decides what is hidden; the same one gives the same record', '1')
    .option(
      '--speed <times>',
      `so many times real time, 1 to ${FASTEST}; left out: as fast as it can be worked out`,
    )
    .option(
      '--fault <name@time>',
      `what goes wrong, and when after the vent is shut: ${FAULTS.join(', ')}; may be given again`,
      (text: string, before: readonly string[]) => [...before, text],
      [] as readonly string[],
    )
    .option('--as-given', 'take values that look implausible as they stand')
    .action(async (path: string, options: RehearseOptions) => end(await runRehearse(desk, path, options)));
}

async function runRehearse(desk: Desk, path: string, options: RehearseOptions): Promise<number> {
  const seed = wholeNumber(options.seed);
  const faults = options.fault.map(faultFrom);
  const speed = options.speed === undefined ? undefined : speedFrom(options.speed);
  const given = await tankFrom(desk, path, options.asGiven === true);
  const files = await couponsBeside(path, given, (file) => desk.readBytes(file));
  const { plan, stretch } = await planOrEnd(desk, given, files);
  const tank = realTank({ given, files, seed });
  const day = rehearsal({ tank, plan, seed, faults, hash: sha256, program: PROGRAM, ...stretch });
  desk.out(`REHEARSAL of ${plan.tank.name}: a simulated tank, no real readings.\n`);
  const ended = await written(desk, day, { file: options.record, ...(speed === undefined ? {} : { speed }) });
  return ended.end === 'burst' ? METAL_SAYS_NO : DONE;
}

interface Planned {
  readonly plan: Plan;
  /** Quick tank and steels, where the steel has a range. */
  readonly stretch: { readonly stretch?: Stretchable };
}

/** Share of the plan in the time that both take. */
const PLAN_SHARE = 0.35;

async function planOrEnd(desk: Desk, given: GoodTank, files: CouponFiles): Promise<Planned> {
  const progress = progressLine(desk, 'plan');
  const runner = openRunner();
  try {
    const planned = (fraction: number): void => void progress.show(PLAN_SHARE * fraction);
    const answer = await planHere({ given, files, run: runner.run, progress: planned });
    if (answer.kind === 'plan') {
      // As on the day: more shell solutions than the plan's range.
      const stretch = await stretchableFor(given, files, runner.run, ({ done, all }) =>
        progress.show(PLAN_SHARE + ((1 - PLAN_SHARE) * done) / all),
      );
      return { plan: answer.plan, stretch: stretch === undefined ? {} : { stretch } };
    }
    const figures = figuresFor(USUAL_MANNER);
    const reasons = answer.reasons.map((reason) => refusalText(reason, figures));
    throw new Ending(BAD_INPUT, `There is no plan to rehearse, because:\n${reasons.join('\n')}`);
  } finally {
    progress.clear();
    await runner.close();
  }
}

interface Writing {
  readonly file: string;
  readonly speed?: number;
}

/** Writes the record line by line, so that a rehearsal that is broken off leaves what it had. */
async function written(desk: Desk, day: Rehearsal, { file, speed }: Writing): Promise<DayEnd> {
  const handle = opened(file);
  const put = (line: string): void => void writeSync(handle, `${line}\n`);
  try {
    let end: End = { seq: 0, digest: aboutDigest(day.about, chainHash) };
    put(aboutLine(day.about, end.digest));
    let before = 0;
    for (let next = day.happenings.next(); ; next = day.happenings.next()) {
      if (next.done === true) {
        desk.out(`${end.seq} entries in ${file}\nHead: ${headGroups(end.digest)}\n`);
        return next.value;
      }
      const { draft, seconds, line } = next.value;
      if (speed !== undefined) await pause((1000 * (seconds - before)) / speed);
      before = seconds;
      const [link] = tie(end, [draft], chainHash);
      end = { seq: link.entry.seq, digest: link.digest };
      put(entryLine(link));
      if (line !== undefined) desk.out(`${clock(seconds)}  ${line}\n`);
      if (headIsDue(draft.kind, draft.body)) desk.out(`${clock(seconds)}  head ${headGroups(end.digest)}\n`);
    }
  } finally {
    closeSync(handle);
  }
}

/** The head is copied to the log sheet at the start and at each hold. */
const headIsDue = (kind: string, body: { readonly [key: string]: unknown }): boolean =>
  kind === 'plan' || (kind === 'decision' && body['decision'] === 'hold ended');

function opened(file: string): number {
  try {
    return openSync(file, 'wx');
  } catch (error) {
    const why = reasonOf(error).includes('EEXIST')
      ? 'it is there already, and a record is never written over'
      : reasonOf(error);
    throw new Ending(BAD_INPUT, `--record ${file}: cannot be written (${why}); give the path of a new file`);
  }
}

const pause = (ms: number): Promise<void> => new Promise((resolve) => void setTimeout(resolve, ms));

/** 1:02:05 since the record began. */
const clock = (seconds: number): string => {
  const two = (n: number): string => String(Math.floor(n)).padStart(2, '0');
  return `${Math.floor(seconds / 3600)}:${two((seconds / 60) % 60)}:${two(seconds % 60)}`;
};

function wholeNumber(text: string): number {
  const value = Number(text);
  if (/^\d+$/.test(text) && Number.isSafeInteger(value)) return value;
  throw new Ending(BAD_INPUT, `--seed: came "${text}", wanted a whole number such as 7`);
}

function speedFrom(text: string): number {
  const value = Number(text);
  if (value >= 1 && value <= FASTEST) return value;
  throw new Ending(BAD_INPUT, `--speed: came "${text}", wanted a number from 1 to ${FASTEST}`);
}

function faultFrom(text: string): Fault {
  const read = readFault(text);
  if (read.ok) return read.fault;
  throw new Ending(BAD_INPUT, read.why);
}
