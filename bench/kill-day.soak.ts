/**
 * kill -9 at 100 seeded moments of a test that is under way: 12 channels at 50 Hz, calibrated, judged, folded, held against the
 * plan's limits, chained and committed. Nothing acknowledged may be lost, the chain must be whole, and within a run no reading
 * may be missing up to the last one. Then one byte of the record is altered, at 200 seeded places, and found each time.
 * SEED=n chooses other moments; KILLS=n fewer or more of them.
 */
import { fork } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { seeded, soakDay, type Task, suffer, taskOf } from '@hoopwright/station/kill';
import { openStore, recordLines, verifyRecord } from '@hoopwright/station/store';

const VICTIM = 'victim';
const BYTES = 200;
const seed = Number(process.env['SEED'] ?? 20_260_505);
const kills = Number(process.env['KILLS'] ?? 100);

const say = (text: string): void => void process.stdout.write(`${text}\n`);
const start = (task: Task, dir: string) => fork(process.argv[1], [VICTIM, task, dir]);

const soak = async (): Promise<void> => {
  const dir = mkdtempSync(join(tmpdir(), 'hoopwright-soak-'));
  try {
    const { acknowledged, entries, beyond } = await soakDay({ kills, seed, dir, start });
    say(
      `seed ${seed}: ${kills} kills of a day under way: ${acknowledged} entries acknowledged, none lost; ${entries} in a whole chain; ${beyond} were durable before their acknowledgement arrived`,
    );
    alter(dir);
  } finally {
    rmSync(dir, { recursive: true });
  }
};

/** Throws where an altered byte is not found in its own line. */
function alter(dir: string): void {
  const store = openStore(dir);
  const [{ about }] = store.records.list();
  const lines = [...recordLines(store.records, about.record)];
  store.close();
  const dice = seeded(seed);
  for (let i = 0; i < BYTES; i++) {
    const at = dice.upTo(lines.length);
    const bytes = Buffer.from(lines[at]);
    const place = dice.upTo(bytes.length);
    bytes[place] ^= 1 << dice.upTo(7);
    const verdict = verifyRecord(lines.with(at, bytes.toString('utf8')));
    if (verdict.kind !== 'altered' || verdict.line !== at + 1)
      throw new Error(`byte ${place} of line ${at + 1} was altered: ${JSON.stringify(verdict)}`);
  }
  say(`${BYTES} altered bytes in ${lines.length} lines: each found in its own line`);
}

const [, , word, task, dir] = process.argv;
if (word === VICTIM) await suffer(taskOf(task), dir);
else await soak();
