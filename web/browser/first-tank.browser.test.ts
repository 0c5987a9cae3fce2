/** From plate to the printed plan, as docs/first-tank.md tells it: the pictures of that page are made here. */
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { say, saySigned, USUAL_MANNER } from '@hoopwright/report/figure';
import type { ForecastFile } from '@hoopwright/wire/forecast';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  chromiumPath,
  commandLine,
  current,
  inClone,
  openWindow,
  pagesOf,
  pictureAt,
  startBoard,
} from './harness.mjs';

const COUPONS = ['plate-1.csv', 'plate-2.csv', 'plate-3-slipped.csv', 'plate-4.txt'];

describe.skipIf(chromiumPath === undefined)('the page in a browser: a first tank', () => {
  let board: Awaited<ReturnType<typeof startBoard>>;
  beforeAll(async () => {
    board = await startBoard();
  });
  afterAll(() => board.close());

  test('a tank is drawn from four numbers, its range narrows with four coupons, a sheet is chosen, and the command line agrees', async () => {
    const { page, errors, context } = await openWindow(board.browser);
    await page.goto(`${board.url}projects`);
    await page.fill('.own .words', 'INVENTED: Tern Hill test tank');
    await type(page, 'inside diameter', '400');
    await type(page, 'between tangent lines', '520');
    await type(page, 'wall', '1,5');
    await type(page, 'working pressure', '20');
    await page.screenshot({ path: pictureAt('1-four-numbers') });
    await page.click('text="Draw it"');
    await page.waitForURL('**/tank');
    await current(page);
    expect(await page.textContent('[data-path="barrel.wall_mm"]')).toBe('1.5');
    await page.screenshot({ path: pictureAt('2-drawn') });

    await page.click('nav >> text=Steel');
    expect(await page.textContent('.steel-sheet .state .large')).toBe('Steel assumed, no range');
    await field(page, 'Rp0.2', '284');
    await field(page, 'Rp1.0', '322');
    await field(page, 'Rm', '624');
    const certificate = await range(page);
    await page.screenshot({ path: pictureAt('3-certificate') });

    await page
      .locator('.drop input')
      .first()
      .setInputFiles(COUPONS.map((name) => inClone(`examples/coupons/${name}`)));
    await page.waitForSelector('tr[data-coupon="plate-4.txt"] >> text=may be used');
    await page.waitForFunction(
      (was) => document.querySelector('.state .large')?.textContent !== was,
      certificate.text,
    );
    const coupons = await range(page);
    expect(coupons.high - coupons.low).toBeLessThan(0.75 * (certificate.high - certificate.low));
    expect(await page.textContent('tr[data-coupon="plate-3-slipped.csv"]')).toContain('not counted');
    await page.screenshot({ path: pictureAt('4-coupons'), fullPage: true });

    await page.click('nav >> text=Growth');
    await page.waitForSelector('tr[data-sheet="3"]', { timeout: 60_000 });
    await page.waitForSelector('.nine');
    await page.screenshot({ path: pictureAt('5-growth'), fullPage: true });
    await page.click('tr[data-sheet="2"] button');
    await current(page);
    await page.waitForSelector('tr[data-sheet="2"] >> text=on the board');
    await page.waitForSelector('[data-saving="saved"]');

    await page.click('nav >> text=Tank');
    await current(page);
    await page.screenshot({ path: pictureAt('6-chosen') });
    await agreesWithCommandLine(page);
    await plansTheDay(page);
    expect(errors).toEqual([]);
    await context.close();
  }, 240_000);
});

/** The tank file as handed on, its coupons beside it: the program prints what the page shows. */
async function agreesWithCommandLine(page: Page): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'hoopwright-first-'));
  const project = /\/p\/([^/]+)\//.exec(page.url())?.[1] ?? '';
  const text = await page.evaluate(async (id) => (await fetch(`/api/projects/${id}/file`)).text(), project);
  writeFileSync(join(folder, 'tank.json'), text);
  for (const name of COUPONS) copyFileSync(inClone(`examples/coupons/${name}`), join(folder, name));
  const told: ForecastFile = JSON.parse(
    await commandLine(['forecast', join(folder, 'tank.json'), '--json'], ''),
  );
  const row = (await page.locator('tr[data-row="largest"]').innerText()).replace(/\s+/g, ' ');
  expect(row).toContain(
    saySigned(USUAL_MANNER, 'growth', (told.underPressure?.largest.growth_percent ?? NaN) / 100),
  );
  expect(row).toContain(
    saySigned(USUAL_MANNER, 'growth', (told.released?.largest.growth_percent ?? NaN) / 100),
  );
  expect(await page.textContent('.state')).toContain(
    say(USUAL_MANNER, 'pressure', (told.maximum?.pressure_bar ?? NaN) / 10),
  );
  rmSync(folder, { recursive: true });
}

/** On to the printed plan: set up, made, frozen, and its papers fetched. */
async function plansTheDay(page: Page): Promise<void> {
  const planned = () => page.waitForSelector('.seal button:not([disabled])', { timeout: 90_000 });
  await page.click('nav >> text=Plan');
  await page.waitForSelector('.day');
  for (const [label, text] of [
    ['one stroke, by a bucket test', '25'],
    ['strokes kept up', '30'],
    ['relief valve opens at', '32'],
  ] as const) {
    const input = page.getByLabel(label, { exact: true });
    await input.fill(text);
    await input.press('Enter');
  }
  await planned();
  await page.screenshot({ path: pictureAt('7-plan') });
  await page.locator('.day').screenshot({ path: pictureAt('8-set-up') });
  await page.fill('.seal input >> nth=0', 'first stretch');
  await page.fill('.seal input >> nth=2', '2026-10-03');
  await page.click('.seal button');
  await page.waitForSelector('tr[data-revision="A"] >> text=current');
  await page.locator('.freeze').screenshot({ path: pictureAt('9-frozen') });
  const papers = page.waitForEvent('download');
  await page.click('text="Papers, A4"');
  const [card] = pagesOf(readFileSync(await (await papers).path()));
  expect(card).toContain('Revision A “first stretch”');
  for (const row of await page.locator('tr[data-step] td:nth-child(3)').allTextContents())
    expect(card).toContain(row);
}

const type = (page: Page, label: string, text: string): Promise<void> =>
  page.fill(`.own label:text-is("${label}") ~ .entry input`, text);

async function field(page: Page, label: string, text: string): Promise<void> {
  const input = page
    .locator(`.forms input[aria-label="${label}"], .forms label:text-is("${label}") ~ .entry input`)
    .first();
  await input.fill(text);
  await input.press('Enter');
}

/** The range that the sheet of the steel says, percent. */
async function range(
  page: Page,
): Promise<{ readonly text: string; readonly low: number; readonly high: number }> {
  const said = /grow ([\d.]+) % to ([\d.]+) %/;
  await page.waitForFunction(
    () =>
      /grow ([\d.]+) % to ([\d.]+) %/.test(document.querySelector('.state .large')?.textContent ?? '') &&
      !(document.querySelector('.state')?.textContent ?? '').includes('being worked out') &&
      document.querySelector('.state .outdated') === null,
    undefined,
    { timeout: 60_000 },
  );
  const text = (await page.textContent('.state .large')) ?? '';
  const [, low, high] = said.exec(text) ?? [];
  return { text, low: Number(low), high: Number(high) };
}
