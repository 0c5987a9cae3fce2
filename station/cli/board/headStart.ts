/** The demo tank's shell solutions, kept in out/ between starts: the same tank need not be solved twice. */
import { mkdir, readFile, stat, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Keeper, keeperFrom, keptText } from '../../range/keeper.ts';

/** Reads what is there; writes what is newly solved. A bundle of another moment counts as another program. */
export async function headStart(file: string): Promise<Keeper & { readonly written: () => Promise<void> }> {
  const stamp = await stampOf();
  const keeper = keeperFrom(await readFile(file, 'utf8').catch(() => undefined), stamp);
  let text: string | undefined;
  return {
    serving: (tank, draws) => keeper.serving(tank, draws),
    keep: (tank, runs) => {
      keeper.keep(tank, runs);
      text = keptText(stamp, tank, runs);
    },
    written: async () => {
      if (text === undefined) return;
      await mkdir(dirname(file), { recursive: true });
      await writeFile(file, text);
    },
  };
}

async function stampOf(): Promise<string> {
  const { mtimeMs, size } = await stat(fileURLToPath(import.meta.url));
  return `${mtimeMs} ${size}`;
}
