/**
 * `npm test`: sets up what is missing, then runs everything: build, types, lint, format and all tests.
 * Words after `--` go to the test runner (`npm test -- core/shell`). With CI_SKIP_IS_FAILURE=1 a skipped test fails the run.
 */
import { readFileSync, rmSync } from 'node:fs';
import { relative } from 'node:path';
import { ensureInstalled } from './install.mjs';
import { ensureBrowser } from './browser.mjs';
import { ensurePage, ensureProgram } from './build.mjs';
import { existsInRoot, inRoot, root } from './folders.mjs';
import { npm, say, tool } from './run.mjs';
import { closing, sum, tally } from './tally.mjs';

const RECORD = 'dist/tests.json';

await ensureInstalled();
const chromium = ensureBrowser();
const total = sum([await steps(), await tests(process.argv.slice(2))]);
process.stdout.write(`\n${closing(total)}\n`);
const skipFails = Boolean(process.env.CI_SKIP_IS_FAILURE);
process.exitCode = total.failed.length > 0 || (skipFails && total.skipped.length > 0) ? 1 : 0;

/** Each counts as one check beside the tests. All are run, so that one failure does not hide another. */
async function steps() {
  const parts = [await step('build', build)];
  parts.push(await step('types', () => npm(['run', '--silent', 'types'])));
  parts.push(await step('lint', () => npm(['run', '--silent', 'lint'])));
  parts.push(await step('format (npm run format mends it)', () => npm(['run', '--silent', 'format:check'])));
  return sum(parts);
}

/**
 * @param {string} name
 * @param {() => Promise<number>} work gives an exit code
 */
async function step(name, work) {
  say(`\n== ${name}`);
  return (await work()) === 0
    ? { passed: 1, failed: [], skipped: [] }
    : { passed: 0, failed: [name], skipped: [] };
}

async function build() {
  try {
    await ensureProgram();
    await ensurePage();
    return 0;
  } catch (error) {
    say(String(error));
    return 1;
  }
}

/** @param {string[]} extra */
async function tests(extra) {
  say('\n== tests');
  rmSync(inRoot(RECORD), { force: true });
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${RECORD}`];
  const env = chromium ? { HOOPWRIGHT_CHROMIUM: chromium } : {};
  const code = await tool('vitest', ['run', ...reporters, ...extra], { env });
  return tally(existsInRoot(RECORD) ? readRecord() : undefined, code);
}

/** @returns {import('./tally.mjs').RunRecord} */
function readRecord() {
  const record = JSON.parse(readFileSync(inRoot(RECORD), 'utf8'));
  for (const file of record.testResults) file.name = relative(root, file.name);
  return record;
}
