/** Finds the Chromium that the browser tests drive, and on Debian fetches it where that is possible. */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { inRoot, testsIn } from './folders.mjs';
import { say } from './run.mjs';

const USUAL = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/snap/bin/chromium'];

/**
 * The path of a Chromium, for the tests to read from HOOPWRIGHT_CHROMIUM. Without one they skip themselves by name.
 * Nothing is fetched where no test needs it.
 * @returns {string | undefined}
 */
export function ensureBrowser() {
  const found = browser();
  if (found || !testsIn('.').some(drivesBrowser)) return found;
  if (!isRootOnDebian()) {
    say('No Chromium found: browser tests will be skipped. HOOPWRIGHT_CHROMIUM may name one.');
    return undefined;
  }
  say('Installing Chromium for the browser tests (apt-get).');
  if (!apt(['update']) || !apt(['install', '-y', '--no-install-recommends', 'chromium'])) {
    say('apt-get could not install it: browser tests will be skipped.');
  }
  return browser();
}

const browser = () => [process.env.HOOPWRIGHT_CHROMIUM, ...USUAL].find((path) => path && existsSync(path));

/** @param {string} file */
const drivesBrowser = (file) => readFileSync(inRoot(file), 'utf8').includes("'playwright-core'");

const isRootOnDebian = () => process.getuid?.() === 0 && existsSync('/etc/debian_version');

/** @param {string[]} args */
function apt(args) {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  return spawnSync('apt-get', ['-qq', ...args], { stdio: ['ignore', 'ignore', 'inherit'], env }).status === 0;
}
