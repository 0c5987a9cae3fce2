/** Kills the server or the recorder at seeded moments, again and again, and checks each time what is left. */
import type { ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import type { Body } from '@hoopwright/wire/record';
import { recordLines, verifyRecord } from '../store/recordFile.ts';
import { openStore } from '../store/sqlite/open.ts';
import { COUNTER } from './dayVictim.ts';
import { type Seeded, seeded } from './seeded.ts';
import { check, reopen } from './verdict.ts';
import type { Task, Told } from './victim.ts';
import { type Window, Wrong, editOn, openWindow } from './window.ts';

export interface SoakOrders {
  readonly kills: number;
  readonly seed: number;
  /** Folder of the base that is tortured. */
  readonly dir: string;
  /** Starts a victim as a process with a message channel. */
  readonly start: (task: Task, dir: string) => ChildProcess;
}

export interface EditingReport {
  readonly acknowledged: number;
  /** Saves refused because the other window was faster. */
  readonly refused: number;
  /** Kills after which an edit that was under way stood, and after which it did not. */
  readonly stood: number;
  readonly vanished: number;
}

/** So many answers are taken at most before the kill. */
const MOST_ANSWERS = 60;

/** Throws `Wrong` where anything acknowledged is lost. */
export const soakEditing = async ({ kills, seed, dir, start }: SoakOrders): Promise<EditingReport> => {
  const dice = seeded(seed);
  const windows: Window[] = [];
  let [acknowledged, stood, vanished] = [0, 0, 0];
  for (let kill = 0; kill < kills; kill += 1) {
    const victim = start('serve', dir);
    const port = await listening(victim);
    if (windows.length === 0) windows.push(...(await openWindows(port)));
    acknowledged += await editUntilKilled(victim, port, windows, dice);
    const flying = windows.filter((window) => window.flying?.kind === 'save').length;
    const sizes = () => windows.reduce((sum, { known }) => sum + known.size, 0);
    const before = sizes();
    const store = openStore(dir);
    check(store, windows);
    reopen(store, windows);
    store.close();
    stood += sizes() - before;
    vanished += flying - (sizes() - before);
  }
  return { acknowledged, refused: windows.reduce((sum, { refused }) => sum + refused, 0), stood, vanished };
};

/** Two windows on one project, and two with one each. */
const openWindows = async (port: number): Promise<Window[]> => {
  const first = await openWindow(port, 'first');
  const shared = { ...first, shared: true };
  const second = await openWindow(port, 'second', first.project);
  return [shared, second, await openWindow(port, 'third'), await openWindow(port, 'fourth')];
};

const editUntilKilled = async (
  victim: ChildProcess,
  port: number,
  windows: readonly Window[],
  dice: Seeded,
) => {
  const gone = once(victim, 'exit');
  const last = 1 + dice.upTo(MOST_ANSWERS);
  const turns = dice.upTo(12);
  let answers = 0;
  const acknowledged = (): void => {
    answers += 1;
    if (answers === last) void killAfter(victim, turns);
  };
  await Promise.all(windows.map((window) => editOn(port, window, dice, acknowledged)));
  await gone;
  return answers;
};

/** Some turns of the loop later, so that the blow falls at any moment of what is under way. */
const killAfter = async (victim: ChildProcess, turns: number): Promise<void> => {
  for (let turn = 0; turn < turns; turn += 1) await new Promise(setImmediate);
  victim.kill('SIGKILL');
};

const listening = async (victim: ChildProcess): Promise<number> => {
  const ended = once(victim, 'exit').then(([code]) => {
    throw new Wrong(`the server ended with ${code} before it listened`);
  });
  const told: Told = await Promise.race([once(victim, 'message').then(([message]) => message), ended]);
  ended.catch(() => {});
  return told.kind === 'listening' ? told.port : Promise.reject(new Wrong('the victim does not serve'));
};

export interface RecordingReport {
  readonly acknowledged: number;
  readonly entries: number;
  /** Entries that were durable and whose acknowledgement did not arrive. */
  readonly beyond: number;
}

/** So many acknowledgements are taken at most before the kill: a third of a second of readings. */
const MOST_ENTRIES = 200;

/** Throws `Wrong` where an acknowledged entry is missing, the chain is broken, or a reading within a run is skipped. */
export const soakRecording = (orders: SoakOrders): Promise<RecordingReport> => recordAgain('record', orders);

/** As `soakRecording`, with the whole running day: its source, its fold, its limits and its chain. */
export const soakDay = (orders: SoakOrders): Promise<RecordingReport> => recordAgain('day', orders);

const recordAgain = async (
  task: 'record' | 'day',
  { kills, seed, dir, start }: SoakOrders,
): Promise<RecordingReport> => {
  const dice = seeded(seed);
  const known = new Map<number, string>();
  let [acknowledged, beyond, entries] = [0, 0, 0];
  for (let kill = 0; kill < kills; kill += 1) {
    acknowledged += await recordUntilKilled(start(task, dir), dice, known);
    entries = checkRecord(dir, known);
    beyond += entries - Math.max(...known.keys());
  }
  return { acknowledged, entries, beyond };
};

const recordUntilKilled = async (
  victim: ChildProcess,
  dice: Seeded,
  known: Map<number, string>,
): Promise<number> => {
  const gone = once(victim, 'exit');
  const last = 1 + dice.upTo(MOST_ENTRIES);
  const turns = dice.upTo(60);
  let answers = 0;
  victim.on('message', (told: Told) => {
    if (told.kind !== 'acknowledged') return;
    known.set(told.seq, told.digest);
    answers += 1;
    if (answers === last) void killAfter(victim, turns);
  });
  await gone;
  return answers;
};

/** Which reading of its run it is. */
const countIn = (body: Body): number => {
  const { values } = body;
  const byChannel = typeof values === 'object' && values !== null ? Object.entries(values) : [];
  return Number(body['reading'] ?? byChannel.find(([name]) => name === COUNTER)?.[1]);
};

const checkRecord = (dir: string, known: ReadonlyMap<number, string>): number => {
  const store = openStore(dir);
  try {
    const [{ about, entries }] = store.records.list();
    const verdict = verifyRecord(recordLines(store.records, about.record));
    if (verdict.kind === 'altered')
      throw new Wrong(`the record is altered at entry ${verdict.entry}: ${verdict.why}`);
    let before = { run: 0, reading: 0 };
    for (const { entry, digest } of store.records.entries(about.record)) {
      const told = known.get(entry.seq);
      if (told !== undefined && told !== digest)
        throw new Wrong(`entry ${entry.seq} is not the one acknowledged`);
      if (entry.kind !== 'reading') continue;
      const reading = countIn(entry.body);
      const next = entry.run === before.run ? before.reading + 1 : 1;
      if (reading !== next)
        throw new Wrong(`reading ${reading} of run ${entry.run} stands where ${next} belongs`);
      before = { run: entry.run, reading };
    }
    const last = Math.max(0, ...known.keys());
    if (last > entries) throw new Wrong(`entry ${last} was acknowledged, ${entries} are there`);
    return entries;
  } finally {
    store.close();
  }
};
