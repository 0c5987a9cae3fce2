/**
 * `hoopwright listen PROJECT`: the day of a project on a box without a screen. Where the served program runs it already,
 * it is followed; else it is taken on here: readings come in by its wires, orders as lines of JSON on standard input.
 */
import type { DayLine } from '@hoopwright/wire/day';
import { readBegin, readOrder } from '@hoopwright/wire/day';
import { issueLine } from '@hoopwright/wire/issue';
import type { Project } from '@hoopwright/wire/project';
import type { Command } from 'commander';
import type { Days } from '../../day/days.ts';
import { settingsFrom } from '../../server/settings.ts';
import { openStore } from '../../store/sqlite/open.ts';
import type { Store } from '../../store/store.ts';
import { BAD_INPUT, type Desk, DONE, Ending, METAL_SAYS_NO, readOrEnd, reasonOf } from '../desk/desk.ts';
import { daysHere } from './daysHere.ts';
import { follow } from './follow.ts';

interface ListenChoices {
  readonly begin?: string;
  readonly revision?: string;
  readonly every: string;
}

export function listenCommand(program: Command, desk: Desk, end: (code: number) => void): void {
  program
    .command('listen')
    .description('the day of a project without a page: state, readings and advice as lines')
    .argument('<project>', 'name or id of the project')
    .option(
      '--begin <file>',
      'begin a test with this set-up: {"director": …, "sources": […], "channels": […]}',
    )
    .option('--revision <name>', 'frozen plan to begin with; left out: the newest')
    .option('--every <seconds>', 'between two lines of figures', '10')
    .addHelpText(
      'after',
      '\nOrders are lines of JSON on standard input: {"order": "vent shut", "by": "A. Invented"}',
    )
    .action(async (project: string, choices: ListenChoices) => end(await runListen(desk, project, choices)));
}

async function runListen(desk: Desk, name: string, choices: ListenChoices): Promise<number> {
  const every = Number(choices.every);
  if (!(every > 0))
    throw new Ending(BAD_INPUT, `--every: came "${choices.every}", wanted seconds such as 10`);
  const settings = settingsFrom();
  if (!settings.ok) throw new Ending(BAD_INPUT, settings.issues.map(issueLine).join('\n'));
  const { dir, port } = settings.value;
  const store = openOrEnd(dir);
  const days = daysHere(store, dir, desk);
  try {
    const project = projectNamed(store, name);
    const served = await servedDay(port, project.id);
    const record = served ?? (await dayHere({ desk, store, days, project }, choices));
    if (served !== undefined) desk.err('The served program runs this day; it is followed here.\n');
    const following = follow({
      records: store.records,
      record,
      out: (line) => desk.out(`${line}\n`),
      later,
      every,
    });
    if (served === undefined) void takeOrders(desk, days, record);
    const last = await Promise.race([following.ended, askedToEnd()]);
    following.stop();
    return last?.end?.name === 'burst' ? METAL_SAYS_NO : DONE;
  } finally {
    await days.close();
    store.close();
  }
}

const later = (ms: number, work: () => void): (() => void) => {
  const timer = setTimeout(work, ms);
  return () => clearTimeout(timer);
};

const askedToEnd = (): Promise<undefined> =>
  new Promise((resolve) => {
    process.once('SIGINT', () => resolve(undefined));
    process.once('SIGTERM', () => resolve(undefined));
  });

function openOrEnd(dir: string): Store {
  try {
    return openStore(dir);
  } catch (error) {
    throw new Ending(BAD_INPUT, reasonOf(error));
  }
}

function projectNamed({ projects }: Store, wanted: string): Project {
  const all = projects.list('kept');
  const found = all.filter(({ id, name }) => id === wanted || name === wanted);
  if (found.length === 1) return found[0];
  const names = all.map(({ id, name }) => `${name} (${id})`).join(', ');
  throw new Ending(BAD_INPUT, `${wanted}: expected one of the projects here: ${names || 'there are none'}`);
}

/** Record that the served program of this laptop runs for the project; two programs must not write into one. */
async function servedDay(port: number, project: string): Promise<string | undefined> {
  try {
    const answer = await fetch(`http://127.0.0.1:${port}/api/days`, { signal: AbortSignal.timeout(2000) });
    const lines: readonly DayLine[] = JSON.parse(await answer.text());
    return lines.find((line) => line.live && line.project === project)?.record;
  } catch {
    return undefined;
  }
}

interface Here {
  readonly desk: Desk;
  readonly store: Store;
  readonly days: Days;
  readonly project: Project;
}

/** The open day of the project, taken on again; or one that is begun now. */
async function dayHere(
  { desk, store, days, project }: Here,
  { begin, revision }: ListenChoices,
): Promise<string> {
  await days.resume();
  const open = days.list().find((line) => line.live && line.project === project.id);
  if (open !== undefined && begin === undefined) return open.record;
  if (open !== undefined)
    throw new Ending(
      BAD_INPUT,
      `--begin: "${open.title}" has no end yet; leave --begin out to go on with it`,
    );
  if (begin === undefined)
    throw new Ending(
      BAD_INPUT,
      `No day of ${project.name} is open: give --begin FILE, or begin it on the page`,
    );
  const plans = store.plans.list(project.id);
  const plan = revision === undefined ? plans[0] : plans.find((line) => line.revision === revision);
  if (plan === undefined)
    throw new Ending(
      BAD_INPUT,
      `--revision: expected a frozen plan of ${project.name}, one of ${plans.map((line) => line.revision).join(', ') || 'none'}`,
    );
  const setUp = jsonFrom(begin, await readOrEnd(desk, begin));
  const read = readBegin({ kind: 'test', ...setUp, project: project.id, plan: plan.digest });
  if (!read.ok) throw new Ending(BAD_INPUT, read.issues.map(issueLine).join('\n'));
  const begun = await days.begin(read.value);
  if (begun.kind === 'refused') throw new Ending(BAD_INPUT, issueLine(begun.issue));
  return begun.day.parts.about.record;
}

function jsonFrom(file: string, text: string): object {
  try {
    const value: unknown = JSON.parse(text);
    if (typeof value === 'object' && value !== null) return value;
  } catch {
    // Said below, with the name of the file.
  }
  throw new Ending(BAD_INPUT, `${file}: expected a set-up as a JSON object`);
}

/** Each line is an order of the director, who sits at this box; what is wrong with it is said, and nothing is written. */
async function takeOrders(desk: Desk, days: Days, record: string): Promise<void> {
  for await (const line of desk.lines?.() ?? []) {
    if (line.trim() === '') continue;
    desk.err(`${await ordered(days, record, line)}\n`);
  }
}

export async function ordered(days: Days, record: string, line: string): Promise<string> {
  let value: unknown;
  try {
    value = JSON.parse(line);
  } catch {
    return 'an order is one line of JSON, such as {"order": "vent shut", "by": "A. Invented"}';
  }
  const read = readOrder(value);
  if (!read.ok) return read.issues.map(issueLine).join('; ');
  const done = await days.find(record)?.day.order(read.value);
  if (done === undefined) return 'the day has ended';
  if (done.kind === 'refused') return issueLine(done.issue);
  return done.kind === 'waits'
    ? 'taken; it waits in memory until the disk can be written'
    : `taken: entry ${done.seq}`;
}
