/** Bad input in every field there is: a sentence beside it, and the last good forecast stays, marked out of date. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumPath, current, openWindow, startBoard } from './harness.mjs';

const BAD = 'about two';

describe.skipIf(chromiumPath === undefined)('the page in a browser: every field', () => {
  let board: Awaited<ReturnType<typeof startBoard>>;
  beforeAll(async () => {
    board = await startBoard();
  });
  afterAll(() => board.close());

  const opened = async (sheet: string) => {
    const window = await openWindow(board.browser);
    await window.page.goto(board.url);
    await current(window.page);
    await window.page.click(`nav >> text=${sheet}`);
    await window.page.waitForSelector(`.${sheet.toLowerCase()}-sheet`);
    return window;
  };

  test.each([
    ['Tank', 30],
    ['Steel', 9],
  ] as const)(
    '%s: each of its numbers',
    async (sheet, least) => {
      const { page, errors, context } = await opened(sheet);
      if (sheet === 'Tank') await addOneOfEach(page);
      const saved = await page.textContent('.saving');
      const fields = page.locator('main input[inputmode="decimal"]');
      const count = await fields.count();
      expect(count).toBeGreaterThanOrEqual(least);
      for (let i = 0; i < count; i++) {
        const field = fields.nth(i);
        const before = await field.inputValue();
        await field.fill(BAD);
        const [label, said] = await besides(page, i);
        expect(said, label).toContain('is not a number');
        expect(await field.getAttribute('aria-invalid'), label).toBe('true');
        expect(await state(page), label).toBe('out of date');
        await field.press('Escape');
        expect(await field.inputValue(), label).toBe(before);
      }
      await current(page);
      expect(await page.textContent('.saving')).toBe(saved);
      expect(errors).toEqual([]);
      await context.close();
    },
    60_000,
  );

  test('sheets to compare', async () => {
    const { page, context } = await opened('Growth');
    const walls = page.locator('.wide-field input');
    await walls.fill(BAD);
    expect(await page.textContent('.wide-field .fault')).toContain('Write thicknesses');
    expect(await walls.getAttribute('aria-invalid')).toBe('true');
    await context.close();
  });

  test("a tank of one's own is not drawn from a number that stood there before the fault", async () => {
    const { page, context } = await opened('Projects');
    const fields = page.locator('.own input[inputmode="decimal"]');
    await page.fill('.own .words', 'INVENTED: probe');
    for (const [i, text] of ['400', '520', '1.5', '20'].entries()) await fields.nth(i).fill(text);
    for (let i = 0; i < 4; i++) {
      const good = await fields.nth(i).inputValue();
      await fields.nth(i).fill(`${good} apples`);
      expect(await page.textContent('.own .field .fault')).toContain('is not a unit for this');
      await page.click('text="Draw it"');
      expect(await page.textContent('.own [role="alert"]')).toContain('all four numbers');
      expect(page.url()).toContain('/projects');
      await fields.nth(i).fill(good);
    }
    await context.close();
  });

  test('a project keeps its name until it has another', async () => {
    const { page, context } = await opened('Projects');
    await page.locator('button[aria-label^="Rename"]').first().click();
    await page.fill('.projects input', '  ');
    await page.keyboard.press('Enter');
    expect(await page.textContent('.projects .fault')).toContain('needs a name');
    await page.keyboard.press('Escape');
    expect(await page.locator('tr[data-project^="INVENTED"]').count()).toBe(1);
    await context.close();
  });

  test('a figure typed over and brought back makes no version', async () => {
    const { page, context } = await opened('Tank');
    const saved = await page.textContent('.saving');
    await page.locator('[data-path="barrel.wall_mm"]').first().click();
    await page.fill('.in-place input', '2.4');
    await page.keyboard.press('Escape');
    await current(page);
    await page.waitForSelector('[data-saving="saved"]');
    expect(await page.textContent('.saving')).toBe(saved);
    await context.close();
  });

  test('a figure in a foreign unit shows five digits, not what the change of unit adds', async () => {
    const { page, context } = await openWindow(board.browser, { units: 'psi', decimal: ',' });
    await page.goto(board.url);
    await current(page);
    expect(await page.locator('.duty input').first().inputValue()).toBe('261,07');
    await context.close();
  });

  test('the drawing says how many times its growth is drawn', async () => {
    const { page, context } = await opened('Tank');
    for (const times of ['5', '10', '20']) {
      await page.click(`.drawn-how >> text="${times}×"`);
      expect(await page.textContent('.drawing .scale-notes')).toContain(`Growth is drawn ${times} times`);
    }
    await context.close();
  });
});

/** Fields that the demo tank does without. */
async function addOneOfEach(page: Page): Promise<void> {
  for (const part of ['skirt']) await page.click(`.parts button:text-is("Add a ${part}")`);
  await current(page);
  await page.waitForSelector('[data-saving="saved"]');
}

const state = (page: Page): Promise<string | null> =>
  page.getAttribute('.forecast [data-state]', 'data-state');

/** Label of a number, and what stands beside it. */
const besides = (page: Page, index: number): Promise<readonly [string, string]> =>
  page.evaluate((i) => {
    const field = document.querySelectorAll('main input[inputmode="decimal"]').item(i).closest('.field');
    return [
      field?.firstElementChild?.textContent ?? '',
      field?.querySelector('.says .fault')?.textContent ?? '',
    ];
  }, index);
