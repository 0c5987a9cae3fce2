/** Every sheet in every look: no fault that a screen reader or a keyboard would meet, nothing logged, pictures to look at. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumPath, current, openWindow, pictureAt, startBoard } from './harness.mjs';

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const LOOKS = ['daylight', 'night', 'sun'] as const;
const SHEETS = ['Tank', 'Steel', 'Growth', 'Projects'] as const;

describe.skipIf(chromiumPath === undefined)('the page in a browser: looks', () => {
  let board: Awaited<ReturnType<typeof startBoard>>;
  beforeAll(async () => {
    board = await startBoard();
  });
  afterAll(() => board.close());

  test.each(LOOKS)(
    'no sheet has a serious fault for keyboard or screen reader: %s',
    async (look) => {
      const { page, errors, context } = await openWindow(board.browser, { look });
      await page.goto(board.url);
      await current(page);
      for (const sheet of SHEETS) {
        await page.click(`nav >> text=${sheet}`);
        await page.waitForSelector(`.${sheet.toLowerCase()}-sheet`);
        await settled(page, sheet);
        await page.screenshot({ path: pictureAt(`${look}-${sheet.toLowerCase()}`), fullPage: true });
        expect(await faultsOf(page), sheet).toEqual([]);
      }
      expect(errors).toEqual([]);
      await context.close();
    },
    120_000,
  );

  test('a field that is being changed, a term that is open and a wall in colour have no serious fault either', async () => {
    const { page, context } = await openWindow(board.browser);
    await page.goto(board.url);
    await current(page);
    await page.click('text=strain');
    await page.locator('[data-path="barrel.wall_mm"]').first().click();
    await page.fill('.in-place input', '1,500');
    await page.screenshot({ path: pictureAt('asked') });
    expect(await faultsOf(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.click('text=stretch factor');
    await page.waitForSelector('[role="dialog"]');
    await page.screenshot({ path: pictureAt('term') });
    expect(await page.textContent('[role="dialog"]')).toContain('Source');
    expect(await faultsOf(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await context.close();
  });

  test('on a phone every sheet can be read without scrolling sideways', async () => {
    const { page, context } = await openWindow(board.browser, { width: 390, height: 844 });
    await page.goto(board.url);
    await current(page);
    for (const sheet of SHEETS) {
      await page.click(`nav >> text=${sheet}`);
      await page.waitForSelector(`.${sheet.toLowerCase()}-sheet`);
      await settled(page, sheet);
      await page.screenshot({ path: pictureAt(`phone-${sheet.toLowerCase()}`), fullPage: true });
      const [inside, window] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
      expect(inside, sheet).toBeLessThanOrEqual(window);
    }
    await context.close();
  }, 60_000);

  test('every term that opens has a sentence and a source', async () => {
    const { page, context } = await openWindow(board.browser);
    await page.goto(board.url);
    await current(page);
    for (const sheet of ['Tank', 'Growth'] as const) {
      await page.click(`nav >> text=${sheet}`);
      await page.waitForSelector(`.${sheet.toLowerCase()}-sheet .term`);
      const terms = page.locator('.term');
      for (let i = 0; i < (await terms.count()); i++) {
        await terms.nth(i).click();
        const said = await page.textContent('[role="dialog"]');
        expect((said ?? '').length).toBeGreaterThan(60);
        expect(said).toContain('Source');
        await page.keyboard.press('Escape');
        await page.waitForSelector('[role="dialog"]', { state: 'detached' });
      }
    }
    await context.close();
  }, 60_000);

  test('the sheet prints in black and white, without the bar', async () => {
    const { page, context } = await openWindow(board.browser, { look: 'night' });
    await page.goto(board.url);
    await current(page);
    await page.emulateMedia({ media: 'print' });
    const [bar, paper] = await page.evaluate(() => [
      getComputedStyle(document.querySelector('.bar') ?? document.body).display,
      getComputedStyle(document.body).backgroundColor,
    ]);
    expect(bar).toBe('none');
    expect(paper).toBe('rgb(255, 255, 255)');
    await page.screenshot({ path: pictureAt('print-tank'), fullPage: true });
    await context.close();
  });
});

async function settled(page: Page, sheet: (typeof SHEETS)[number]): Promise<void> {
  if (sheet === 'Steel') await page.waitForSelector('tr[data-coupon] >> text=may be used');
  if (sheet === 'Growth') await page.waitForSelector('tr[data-sheet="3"]', { timeout: 60_000 });
}

/** Faults that axe calls serious or critical, each with the first place it was found. */
async function faultsOf(page: Page): Promise<string[]> {
  // Handed to the page by the debugger, which the content policy does not bind.
  await page.evaluate(readFileSync(AXE, 'utf8'));
  const { violations }: AxeResults = await page.evaluate('axe.run(document)');
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.length} places, first ${nodes[0].html.slice(0, 140)}`);
}
