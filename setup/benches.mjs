/** Bundles the long-running checks in bench/, which are run from dist as the program is. */
import { basename } from 'node:path';
import { bundle, ensureProgram } from './build.mjs';
import { filesIn } from './folders.mjs';
import { ensureInstalled } from './install.mjs';

/**
 * Installs and builds what is needed, and gives the bundles to run, as paths from the root.
 * They lie beside the program in dist, so that what the program finds beside itself (its workers) they find too.
 * @param {'bench' | 'soak'} kind of file: bench/NAME.bench.ts or bench/NAME.soak.ts
 * @param {string[]} words take only files whose name holds one of these; all if there are none
 */
export async function ensureBundles(kind, words) {
  await ensureInstalled();
  await ensureProgram();
  const wanted = (/** @type {string} */ name) =>
    words.length === 0 || words.some((word) => name.includes(word));
  const sources = filesIn('bench').filter((path) => path.endsWith(`.${kind}.ts`) && wanted(basename(path)));
  const named = sources.map((path) => [`${kind}-${basename(path, `.${kind}.ts`)}`, path]);
  await bundle(Object.fromEntries(named), 'dist');
  return named.map(([name]) => `dist/${name}.mjs`);
}
