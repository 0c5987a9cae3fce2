/** Brings the bundle up to date where sources have changed, then runs it in this process. */
import { fileURLToPath } from 'node:url';
import { ensurePage, ensureProgram } from './build.mjs';
import { say } from './run.mjs';

/**
 * @param {string[]} words the command line after the program's name
 * @param {{ page: boolean }} needs whether the served page must be fresh too
 */
export async function runProgram(words, needs) {
  await brought(needs);
  // Costs 10 ms at the start; an error then names the line in the source, not in the bundle.
  process.setSourceMapsEnabled(true);
  const command = fileURLToPath(new URL('hoopwright.mjs', import.meta.url));
  process.argv = [process.argv[0], command, ...words];
  await import(new URL('../dist/hoopwright.mjs', import.meta.url).href);
}

/** @param {{ page: boolean }} needs */
async function brought({ page }) {
  try {
    await ensureProgram();
    if (page) await ensurePage();
  } catch (error) {
    say(`The sources of this clone could not be built, so nothing was run. ${String(error)}`);
    say('If a library is missing, `npm start` installs it.');
    process.exit(1);
  }
}
