/** The thread that foresees and advises, where its bundle is at hand; else this thread answers. */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Tinypool } from 'tinypool';
import { type AdviseMessage, answerAdvise, type Said } from '../worker/advise.ts';

/** Bundle of station/worker/advise.ts, beside the program. */
const ENTRY = new URL('./worker-advise.mjs', import.meta.url);

let pool: Tinypool | undefined;

/** One thread for all days: each keeps its adviser there. */
export async function askAdviser(message: AdviseMessage): Promise<Said | undefined> {
  if (!existsSync(fileURLToPath(ENTRY))) return answerAdvise(message);
  pool ??= new Tinypool({ filename: ENTRY.href, minThreads: 1, maxThreads: 1, idleTimeout: 2 ** 31 - 1 });
  const said: Said | undefined = await pool.run(message, { name: 'answerAdvise' });
  return said;
}
