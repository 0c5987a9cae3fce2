/** The process that is killed: a real server on a real base, or a recorder at work. It tells its parent what is durable. */
import { performance } from 'node:perf_hooks';
import { serve } from '../server/serve.ts';
import { openRecorder } from '../store/recorder.ts';
import { openStore } from '../store/sqlite/open.ts';
import { sufferDay } from './dayVictim.ts';

export const TASKS = ['serve', 'record', 'day'] as const;
export type Task = (typeof TASKS)[number];

export const taskOf = (word: string | undefined): Task => TASKS.find((task) => task === word) ?? 'serve';

/** What the victim tells: where it listens, or which entry has been acknowledged. */
export type Told =
  | { readonly kind: 'listening'; readonly port: number }
  | { readonly kind: 'acknowledged'; readonly seq: number; readonly digest: string };

/** Does the task until it is killed. */
export const suffer = async (task: Task, dir: string): Promise<void> => {
  if (task === 'record') return record(dir);
  if (task === 'day')
    return sufferDay(dir, ({ entry, digest }) => tell({ kind: 'acknowledged', seq: entry.seq, digest }));
  const { port } = await serve({ store: openStore(dir), port: 0, log: (error) => console.error(error) });
  return tell({ kind: 'listening', port });
};

const tell = (told: Told): void => void process.send?.(told);

/** 12 channels at 50 Hz, as many entries. */
const CHANNELS = 12;
const EVERY_MS = 20;

const record = (dir: string): void => {
  const { records } = openStore(dir);
  const { about } = records.list()[0] ?? records.begin({ kind: 'rehearsal', title: 'Dunlin, invented' });
  const recorder = openRecorder({
    records,
    to: { record: about.record, kind: 'rehearsal' },
    now: () => ({ mono_ms: performance.now(), wall_ms: Date.now() }),
    later: (ms, work) => {
      const timer = setTimeout(work, ms);
      return () => {
        clearTimeout(timer);
      };
    },
    told: (state) => console.error(state),
  });
  let reading = 0;
  setInterval(() => {
    for (let channel = 0; channel < CHANNELS; channel += 1) {
      reading += 1;
      const body = { reading, values: { [`G${channel}`]: 1257 + Math.sin(reading) } };
      void recorder
        .write('reading', body)
        .then(({ entry, digest }) => tell({ kind: 'acknowledged', seq: entry.seq, digest }));
    }
  }, EVERY_MS);
};
