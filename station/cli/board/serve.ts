/** `hoopwright serve`: the drawing board on this laptop. `hoopwright backup`: a copy of everything it keeps. */
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseTankFile } from '@hoopwright/wire/tank';
import type { Command } from 'commander';
import { issueLine } from '@hoopwright/wire/issue';
import { openPlanner } from '../../plan/planner.ts';
import { openRanger } from '../../range/ranger.ts';
import { remembering } from '../../range/remembering.ts';
import { openRunner } from '../../range/runner.ts';
import { openPool } from '../../server/pool.ts';
import { serve } from '../../server/serve.ts';
import { settingsFrom } from '../../server/settings.ts';
import { importRecord } from '../../store/recordFile.ts';
import { BASE_NAME, openStore } from '../../store/sqlite/open.ts';
import type { Store } from '../../store/store.ts';
import { daysHere } from '../day/daysHere.ts';
import { BAD_INPUT, type Desk, DONE, Ending, reasonOf } from '../desk/desk.ts';

export interface ServeChoices {
  /** Also for other machines of the network, each with a link of its own. */
  readonly share?: boolean;
}

export function serveCommand(program: Command, desk: Desk, end: (code: number) => void): void {
  program
    .command('serve')
    .description('open the drawing board in a browser on this laptop')
    .option('--share', 'also for other machines on this network, each with a link of its own (plain HTTP)')
    .action(async (choices: ServeChoices) => end(await runServe(desk, choices)));
  program
    .command('backup')
    .description('copy all projects and records to a new file')
    .argument('<file>', 'file to write; it must not exist')
    .action(async (file: string) => end(await runBackup(desk, file)));
}

async function runBackup(desk: Desk, file: string): Promise<number> {
  const { dir } = settings();
  if (!existsSync(join(dir, BASE_NAME)))
    throw new Ending(
      BAD_INPUT,
      `${dir}: nothing is kept here; name the folder of the projects in HOOPWRIGHT_DATA`,
    );
  const store = openOrEnd(dir);
  try {
    await store.backup(file);
  } catch (error) {
    throw new Ending(BAD_INPUT, `${file}: no copy was made (${reasonOf(error)})`);
  } finally {
    store.close();
  }
  desk.err(`Copied to ${file}\n`);
  return DONE;
}

function settings(): { readonly port: number; readonly dir: string } {
  const read = settingsFrom();
  if (read.ok) return read.value;
  throw new Ending(BAD_INPUT, read.issues.map(issueLine).join('\n'));
}

const beside = (path: string): URL => new URL(path, import.meta.url);

/** Serves until the process is asked to end. */
export async function runServe(desk: Desk, { share = false }: ServeChoices): Promise<number> {
  const { port, dir } = settings();
  const store = openOrEnd(dir);
  if (store.projects.list('kept').length === 0) await putDemo(store);
  const pool = openPool(beside('./worker-forecast.mjs'));
  const runner = openRunner();
  const run = remembering(runner.run);
  const planner = openPlanner(run);
  const days = daysHere(store, dir, desk);
  try {
    await days.resume();
    const serving = await serve({
      store,
      days,
      port,
      pool,
      ranger: openRanger(run),
      planner,
      webDir: fileURLToPath(beside('./web')),
      check: (text) => {
        const parsed = parseTankFile(text);
        return parsed.ok ? [] : parsed.issues;
      },
      log: (error) => desk.err(`${reasonOf(error)}\n`),
      ...(share ? { host: '0.0.0.0' } : {}),
    });
    desk.out(`Drawing board: ${serving.url}\n`);
    for (const address of serving.addresses) desk.err(`On this network, over plain HTTP: ${address}\n`);
    await askedToEnd();
    await serving.close();
    return DONE;
  } catch (error) {
    throw error instanceof Ending ? error : new Ending(BAD_INPUT, reasonOf(error));
  } finally {
    await days.close();
    await planner.close();
    await runner.close();
    await pool.close();
    store.close();
  }
}

function openOrEnd(dir: string): Store {
  try {
    return openStore(dir);
  } catch (error) {
    throw new Ending(BAD_INPUT, reasonOf(error));
  }
}

const askedToEnd = (): Promise<void> =>
  new Promise((resolve) => {
    process.once('SIGINT', () => resolve());
    process.once('SIGTERM', () => resolve());
  });

const DEMO_FILES = [
  'plate-1.csv',
  'plate-2.csv',
  'plate-3-slipped.csv',
  'plate-4.txt',
  'seam-1.csv',
  'seam-2.csv',
] as const;

/** A first start opens on the invented demo tank, with its coupons and a rehearsal that a leak ended. */
async function putDemo(store: Store): Promise<void> {
  const file = await readFile(fileURLToPath(beside('../examples/dunlin-oxidiser.json')), 'utf8');
  const { project } = store.projects.create({ name: 'INVENTED: Dunlin oxidiser tank', file });
  for (const name of DEMO_FILES) {
    const bytes = await readFile(fileURLToPath(beside(`../examples/coupons/${name}`)));
    store.attachments.add(project.id, { name, bytes });
  }
  importRecord(store.records, fileURLToPath(beside('../examples/dunlin-rehearsed.ndjson')));
}
