/** A served page in a real browser, for the tests: the built program, a data folder of its own, Debian's Chromium. */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';

/** Reads papers back; the page itself has no part of the station, only its tests look into the station's papers. */
export { pagesOf } from '../../station/paper/readBack.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const USUAL = ['/usr/bin/chromium', '/usr/bin/chromium-browser'];

/** Path of a Chromium; undefined: the tests skip themselves. */
export const chromiumPath = [process.env.HOOPWRIGHT_CHROMIUM, ...USUAL].find(
  (path) => path && existsSync(path),
);

/** @param {string} path from the root of the clone */
export const inClone = (path) => join(ROOT, path);

/**
 * Starts the program on a free port and a browser beside it.
 * @returns {Promise<{ url: string, browser: import('playwright-core').Browser, dir: string, pid: number, close: () => Promise<void> }>}
 */
export async function startBoard() {
  const dir = mkdtempSync(join(tmpdir(), 'hoopwright-page-'));
  // The test runner says NODE_ENV=test, which would build the page for developers.
  const { NODE_ENV: _, ...own } = process.env;
  const env = { ...own, PORT: '0', HOOPWRIGHT_DATA: dir };
  const server = spawn(process.execPath, [inClone('setup/hoopwright.mjs'), 'serve'], { env });
  const url = await new Promise((resolve, reject) => {
    let said = '';
    server.stdout.on('data', (text) => {
      said += text;
      const found = /http:\/\/localhost:\d+\//.exec(said);
      if (found) resolve(found[0]);
    });
    server.stderr.on('data', (text) => {
      said += text;
    });
    server.on('exit', () => reject(new Error(`the server ended: ${said}`)));
  });
  const browser = await chromium.launch(chromiumPath ? { executablePath: chromiumPath } : {});
  return {
    url,
    browser,
    dir,
    pid: server.pid ?? 0,
    close: async () => {
      await browser.close();
      await new Promise((resolve) => {
        server.once('exit', resolve);
        server.kill('SIGTERM');
      });
      rmSync(dir, { recursive: true, force: true });
    },
  };
}

/**
 * A window of its own; whatever the page logs as an error, or throws, is collected.
 * @param {import('playwright-core').Browser} browser
 * @param {{ look?: string, units?: string, decimal?: string, width?: number, height?: number }} how
 */
export async function openWindow(
  browser,
  { look = 'daylight', units = 'bar', decimal = '.', width = 1280, height = 800 } = {},
) {
  const context = await browser.newContext({ viewport: { width, height }, acceptDownloads: true });
  const page = await context.newPage();
  /** @type {string[]} */
  const errors = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  await page.addInitScript(
    (reading) => {
      if (localStorage.getItem('hoopwright reading') === null)
        localStorage.setItem('hoopwright reading', JSON.stringify(reading));
    },
    { look, manner: { units, decimal } },
  );
  return { page, errors, context };
}

/** @param {import('playwright-core').Page} page */
export const current = (page) => page.waitForSelector('[data-state="current"]', { timeout: 30_000 });

/**
 * Text as it is read, spaces put together.
 * @param {import('playwright-core').Page} page
 * @param {string} selector
 */
export const textOf = async (page, selector) =>
  (await page.locator(selector).first().innerText()).replace(/\s+/g, ' ');

/**
 * How many times longer work takes here just now than on an idle machine: time passed over processor time of a little
 * work, 1 where nothing runs beside it; the median of some tries. Limits of time are for an idle machine and are
 * multiplied by it.
 */
export function slowdown() {
  const tries = Array.from({ length: 7 }, oneSlowdown).sort((a, b) => a - b);
  return Math.max(1, tries[3]);
}

function oneSlowdown() {
  const [began, used] = [performance.now(), process.cpuUsage()];
  let sum = 0;
  for (let i = 0; i < 2e6; i++) sum += Math.sqrt(i);
  const { user, system } = process.cpuUsage(used);
  const ratio = (performance.now() - began) / ((user + system) / 1000);
  return sum > 0 ? ratio : 1;
}

/**
 * What the program prints for a tank file, from a process of its own.
 * @param {string[]} words
 * @param {string} input
 * @returns {Promise<string>}
 */
export function commandLine(words, input) {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [inClone('setup/hoopwright.mjs'), ...words], {
      stdio: ['pipe', 'pipe', 'pipe'],
    });
    let out = '';
    let err = '';
    child.stdout.on('data', (text) => {
      out += text;
    });
    child.stderr.on('data', (text) => {
      err += text;
    });
    child.on('exit', (code) => (code === 0 ? resolve(out) : reject(new Error(err))));
    child.stdin.end(input);
  });
}

/**
 * Pictures for people to look at; with HOOPWRIGHT_PICTURES=1 those of the docs are made anew.
 * @param {string} name
 * @param {string} [docs] folder of the guide that shows them
 */
export function pictureAt(name, docs = 'docs/first-tank') {
  const folder = inClone(process.env.HOOPWRIGHT_PICTURES === '1' ? docs : 'out/page');
  mkdirSync(folder, { recursive: true });
  return join(folder, `${name}.png`);
}
