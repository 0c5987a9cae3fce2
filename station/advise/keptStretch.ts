/** Quick tank and steels of a frozen plan: made once from shell solutions, kept in the data folder by the plan's digest. */
import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import type { Solved, Stretchable } from '@hoopwright/wire/advice';
import { stretchableFor } from '../plan/planRange.ts';
import type { ShellRunner } from '../range/runner.ts';

export interface KeptGivens {
  readonly dir: string;
  /** Digest of the frozen plan. */
  readonly digest: string;
  readonly given: Parameters<typeof stretchableFor>[0];
  readonly files: Parameters<typeof stretchableFor>[1];
  readonly run: ShellRunner;
  /** Told after each shell solution; never where it was kept. */
  readonly progress?: (solved: Solved) => void;
}

/** Another form of what is kept begins with another name. */
const FORM = 'stretch-3';

export async function keptStretch(givens: KeptGivens): Promise<Stretchable | undefined> {
  const { dir, digest, given, files, run, progress } = givens;
  const path = join(dir, 'foresight', `${FORM}-${digest}.bin`);
  const before = readKept(path);
  if (before !== undefined) return before;
  const made = await stretchableFor(given, files, run, progress);
  if (made !== undefined) keep(path, made);
  return made;
}

/** Of this program's own making: typed arrays, and parts of one steel that stay of one steel. */
function readKept(path: string): Stretchable | undefined {
  try {
    const kept: Stretchable = deserialize(readFileSync(path));
    return kept;
  } catch {
    // Not there, or cut short by a full disk: it is made again.
    return undefined;
  }
}

function keep(path: string, made: Stretchable): void {
  try {
    mkdirSync(join(path, '..'), { recursive: true });
    writeFileSync(`${path}.${process.pid}`, serialize(made));
    renameSync(`${path}.${process.pid}`, path);
  } catch {
    // A full disk: the next start makes it again.
  }
}
