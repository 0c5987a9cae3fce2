/**
 * A day under way on a small file system that runs full, and on a base that another program holds. It must be told within two
 * seconds, the readings must go on in memory and on the screens, and when it clears every one of them must be in a whole record.
 * The small file system is a tmpfs, which only root may mount: elsewhere this says so and does the held base alone.
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { openPaceDay, paceLine } from '@hoopwright/station/day';
import { BASE_NAME, openStore, recordLines, verifyRecord } from '@hoopwright/station/store';
import Database from 'better-sqlite3';

const say = (text: string): void => void process.stdout.write(`${text}\n`);
const pause = (ms: number): Promise<void> => new Promise((resolve) => void setTimeout(resolve, ms));

const EVERY_MS = 10;
const TOLD_MS = 2000;
/** How long the trouble lasts, ms. */
const LASTS_MS = 5000;

interface Trial {
  readonly dir: string;
  readonly what: 'disk full' | 'base locked';
  /** Brings the trouble about; the answer clears it. */
  readonly begin: () => () => void;
}

async function trial({ dir, what, begin }: Trial): Promise<void> {
  const store = openStore(dir);
  const { days, live, record } = await openPaceDay(store, { fast: 1 });
  const node = days.find(record)?.http.get('node');
  let sent = 0;
  const stop = new AbortController();
  const sending = (async () => {
    async function* lines(): AsyncGenerator<Uint8Array> {
      while (!stop.signal.aborted) {
        await pause(EVERY_MS);
        yield Buffer.from(paceLine(++sent));
      }
    }
    await node?.send(lines());
  })();
  await pause(500);
  const clear = begin();
  const began = performance.now();
  const stands = (): boolean => live.state.state.troubles.some((one) => one.what === what);
  while (!stands()) {
    if (performance.now() - began > 60_000) throw new Error(`${what} was never told`);
    await pause(10);
  }
  const told = performance.now() - began;
  const before = store.records.find(record)?.entries ?? 0;
  const seen = live.state.state.seq;
  await pause(LASTS_MS);
  const [after, shown] = [store.records.find(record)?.entries ?? 0, live.state.state.seq];
  clear();
  while (stands()) await pause(10);
  stop.abort();
  await sending;
  live.settled();
  await pause(100);
  const readings = [...store.records.entries(record)].filter(({ entry }) => entry.kind === 'reading').length;
  const verdict = verifyRecord(recordLines(store.records, record));
  await days.close();
  store.close();
  say(
    `${what}: told after ${told.toFixed(0)} ms; meanwhile ${after - before} entries were written and ${shown - seen} shown; then ${readings} readings of ${sent} in a record that is ${verdict.kind}`,
  );
  if (what === 'base locked' && told > TOLD_MS) throw new Error(`told after ${told.toFixed(0)} ms`);
  if (readings !== sent || verdict.kind !== 'whole' || shown - seen < 100)
    throw new Error(`${what}: see above`);
}

/** Small enough that readings fill what is left in seconds. */
const SMALL_MB = 16;
const LEFT_KB = 300;

async function fullDisk(dir: string): Promise<void> {
  const small = join(dir, 'small');
  mkdirSync(small);
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${SMALL_MB}m`, 'tmpfs', small], { stdio: 'ignore' });
  } catch {
    return say('disk full: left out, as a small file system can only be mounted by root');
  }
  try {
    const filler = join(small, 'filler');
    const begin = () => {
      fill(filler, small);
      return () => rmSync(filler);
    };
    await trial({ dir: join(small, 'base'), what: 'disk full', begin });
  } finally {
    execFileSync('umount', [small]);
  }
}

function fill(filler: string, small: string): void {
  const free_kB = Number(execFileSync('df', ['--output=avail', '-k', small]).toString().split('\n')[1]);
  writeFileSync(filler, Buffer.alloc(1024 * Math.max(0, free_kB - LEFT_KB)));
}

async function heldBase(dir: string): Promise<void> {
  const folder = join(dir, 'held');
  const begin = () => {
    const rival = new Database(join(folder, BASE_NAME));
    rival.exec('BEGIN IMMEDIATE');
    return () => {
      rival.exec('ROLLBACK');
      rival.close();
    };
  };
  await trial({ dir: folder, what: 'base locked', begin });
}

const dir = mkdtempSync(join(tmpdir(), 'hoopwright-disk-'));
try {
  await heldBase(dir);
  await fullDisk(dir);
} finally {
  rmSync(dir, { recursive: true });
}
