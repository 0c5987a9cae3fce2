/**
 * kill -9 at 50 seeded moments while four windows edit, and at 100 while a recorder takes 12 channels at 50 Hz.
 * Nothing acknowledged may be lost, the chain must be whole, and the base must keep the store's contract afterwards.
 * SEED=n chooses other moments; KILLS=n fewer or more of them.
 */
import { fork } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  type SoakOrders,
  type Task,
  soakEditing,
  soakRecording,
  suffer,
  taskOf,
} from '@hoopwright/station/kill';
import { STORE_CONTRACT, openStore, rising } from '@hoopwright/station/store';

const VICTIM = 'victim';

const say = (text: string): void => void process.stdout.write(`${text}\n`);

const start = (task: Task, dir: string) => fork(process.argv[1], [VICTIM, task, dir]);

const seed = Number(process.env['SEED'] ?? 20_260_503);
const kills = (usual: number): number => Number(process.env['KILLS'] ?? usual);

const soak = async (): Promise<void> => {
  const dir = mkdtempSync(join(tmpdir(), 'hoopwright-soak-'));
  try {
    await soakBoth(dir);
  } finally {
    rmSync(dir, { recursive: true });
  }
};

const soakBoth = async (dir: string): Promise<void> => {
  const orders: Omit<SoakOrders, 'kills'> = { seed, dir: join(dir, 'base'), start };
  say(`seed ${seed}`);
  const editing = await soakEditing({ ...orders, kills: kills(50) });
  say(
    `${kills(50)} kills while editing: ${editing.acknowledged} edits acknowledged, none lost; ${editing.refused} refused as another window was faster; of the saves under way ${editing.stood} stood, ${editing.vanished} did not`,
  );
  const recording = await soakRecording({ ...orders, seed: seed + 1, kills: kills(100) });
  say(
    `${kills(100)} kills while recording: ${recording.acknowledged} entries acknowledged, none lost; ${recording.entries} in a whole chain; ${recording.beyond} were durable before their acknowledgement arrived`,
  );
  const store = openStore(orders.dir, rising());
  for (const { holds } of STORE_CONTRACT) holds(store);
  store.close();
  say(`the base keeps all ${STORE_CONTRACT.length} claims of the contract`);
};

const [, , word, task, dir] = process.argv;
if (word === VICTIM) await suffer(taskOf(task), dir);
else await soak();
