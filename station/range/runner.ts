/** Many shell solutions: in threads where the bundle of the worker is at hand, else here, one after the other. */
import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { type ShellRun, shellRun } from '@hoopwright/core/stretch';
import { openThreads } from '../threads/threads.ts';
import type { ShellMessage } from '../worker/shell.ts';

/** Runs all messages, in their order; `done` is called as each ends. Rejects when the signal asks to stop. */
export type ShellRunner = (
  messages: readonly ShellMessage[],
  watch: { readonly done?: () => void; readonly signal?: AbortSignal },
) => Promise<ShellRun[]>;

/** Bundle of station/worker/shell.ts, beside the program. */
const ENTRY = new URL('./worker-shell.mjs', import.meta.url);

/** A runner for one task; close it afterwards. */
export function openRunner(threads = availableParallelism()): {
  run: ShellRunner;
  close: () => Promise<void>;
} {
  if (!existsSync(fileURLToPath(ENTRY))) return { run: here, close: async () => {} };
  const pool = openThreads(ENTRY, { least: threads, most: threads });
  const run: ShellRunner = (messages, { done, signal }) =>
    Promise.all(
      messages.map(async (message) => {
        const result = await pool.run<ShellRun>(message, { name: 'answerShell', signal });
        done?.();
        return result;
      }),
    );
  return { run, close: () => pool.close() };
}

/** In this thread, giving way between solutions. */
export const here: ShellRunner = async (messages, { done, signal }) => {
  const runs: ShellRun[] = [];
  for (const { tank, plate, draw, target } of messages) {
    signal?.throwIfAborted();
    runs.push(shellRun(tank, plate, draw, target));
    done?.();
    await new Promise((resolve) => {
      setImmediate(resolve);
    });
  }
  return runs;
};
