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

  // One window for all: opening takes longer than most of what is tried in it.
  let window: Awaited<ReturnType<typeof openWindow>> | undefined;
  const opened = async (sheet: string) => {
    if (window === undefined) {
      window = await openWindow(board.browser);
      await window.page.goto(board.url);
      await current(window.page);
    }
    await window.page.click(`nav >> text=${sheet}`);
    await window.page.waitForSelector(`.${sheet.toLowerCase()}-sheet`);
    return window;
  };

  test.each([
    ['Tank', 30],
    ['Steel', 9],
    ['Plan', 35],
  ] as const)(
    '%s: each of its numbers',
    async (sheet, least) => {
      const { page, errors } = await opened(sheet);
      if (sheet === 'Tank') await addOneOfEach(page);
      const saved = await page.textContent('.saving');
      const fields = page.locator(NUMBERS);
      const count = await fields.count();
      expect(count).toBeGreaterThanOrEqual(least);
      for (let i = 0; i < count; i++) {
        const field = fields.nth(i);
        const before = await besides(page, i);
        await field.fill(BAD);
        const { label, said, invalid, state } = await besides(page, i);
        expect(said, label).toContain('is not a number');
        expect(invalid, label).toBe('true');
        // A plan is made for some seconds, and until then there is none.
        expect(state, label).toMatch(sheet === 'Plan' ? /out of date|none yet/ : /out of date/);
        await field.press('Escape');
        const after = await besides(page, i);
        expect(after, label).toEqual({ ...before, ...(sheet === 'Plan' ? { state: after.state } : {}) });
      }
      expect(await page.textContent('.saving')).toBe(saved);
      expect(errors).toEqual([]);
    },
    60_000,
  );

  test('two girths of one name: a sentence beside the second, and nothing is saved', async () => {
    const { page } = await opened('Tank');
    const saved = await page.textContent('.saving');
    const name = page.locator('[aria-label="Parts"] .one .words').first();
    const before = await name.inputValue();
    await name.fill('middle');
    await name.press('Enter');
    await page.waitForSelector('.parts .fault');
    expect(await page.textContent('.parts .fault')).toContain('middle');
    expect(await page.getAttribute('.forecast [data-state]', 'data-state')).toBe('out of date');
    await name.fill(before);
    await name.press('Enter');
    await current(page);
    await page.waitForSelector('[data-saving="saved"]');
    expect(await page.textContent('.saving')).toBe(saved);
  });

  test('a text that could not be read goes with its field: the forecast is current again', async () => {
    const { page } = await opened('Tank');
    await page.locator('.duty input').first().fill(BAD);
    expect(await page.textContent('.title-block .forecast dd')).toMatch(/out of date/i);
    await page.click('nav >> text=Growth');
    await page.waitForSelector('.growth-sheet');
    expect(await page.getAttribute('.forecast [data-state]', 'data-state')).toBe('current');
  });

  test('sheets to compare', async () => {
    const { page } = await opened('Growth');
    const walls = page.locator('.wide-field input');
    await walls.fill(BAD);
    expect(await page.textContent('.wide-field .fault')).toContain('Write thicknesses');
    expect(await walls.getAttribute('aria-invalid')).toBe('true');
  });

  test("a tank of one's own is not drawn from a number that stood there before the fault", async () => {
    const { page } = await opened('Projects');
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
  });

  test('a project keeps its name until it has another', async () => {
    const { page } = await opened('Projects');
    await page.locator('button[aria-label^="Rename"]').first().click();
    await page.fill('.projects input', '  ');
    await page.keyboard.press('Enter');
    expect(await page.textContent('.projects .fault')).toContain('needs a name');
    await page.keyboard.press('Escape');
    expect(await page.locator('tr[data-project^="INVENTED"]').count()).toBe(1);
  });

  test('a figure typed over and brought back makes no version', async () => {
    const { page } = await opened('Tank');
    const saved = await page.textContent('.saving');
    await page.locator('[data-path="barrel.wall_mm"]').first().click();
    await page.fill('.in-place input', '2.4');
    await page.keyboard.press('Escape');
    await current(page);
    await page.waitForSelector('[data-saving="saved"]');
    expect(await page.textContent('.saving')).toBe(saved);
  });

  test('a figure in a foreign unit shows five digits, not what the change of unit adds', async () => {
    const { page, context } = await openWindow(board.browser, { units: 'psi', decimal: ',' });
    await page.goto(board.url);
    await current(page);
    expect(await page.locator('.duty input').first().inputValue()).toBe('261,07');
    await context.close();
  });

  test('the drawing says how many times its growth is drawn', async () => {
    const { page } = await opened('Tank');
    for (const times of ['5', '10', '20']) {
      await page.click(`.drawn-how >> text="${times}×"`);
      expect(await page.textContent('.drawing .scale-notes')).toContain(`Growth is drawn ${times} times`);
    }
  });

  test.each([
    ['Tank', 5],
    ['Steel', 2],
    ['Plan', 8],
  ] as const)('%s: each of its texts takes any text, and gives it back', async (sheet, least) => {
    const { page, errors } = await opened(sheet);
    const fields = page.locator('main :is(.part-list, .part:not(.limits), .forms) .words');
    const count = await fields.count();
    expect(count).toBeGreaterThanOrEqual(least);
    const odd = (i: number): string => `<b>"Ø${i}' & \\u0000 ${'long '.repeat(40)}`.trim();
    for (let i = 0; i < count; i++) {
      await fields.nth(i).fill(odd(i));
      await fields.nth(i).press('Enter');
    }
    await page.waitForSelector('[data-saving="saved"]');
    await page.reload();
    const values = (): Promise<string[]> =>
      fields.evaluateAll((all) => all.map((one) => (one instanceof HTMLInputElement ? one.value : '')));
    await expect.poll(values, { timeout: 20_000 }).toEqual(Array.from({ length: count }, (_, i) => odd(i)));
    expect(errors).toEqual([]);
  });
});

/** Fields that the demo tank does without. */
async function addOneOfEach(page: Page): Promise<void> {
  for (const part of ['skirt']) await page.click(`.parts button:text-is("Add a ${part}")`);
  await current(page);
  await page.waitForSelector('[data-saving="saved"]');
}

const NUMBERS = 'main input[inputmode="decimal"]';

interface Beside {
  readonly label: string;
  readonly said: string;
  readonly invalid: string;
  readonly state: string;
  readonly value: string;
}

/** A number of the sheet, what stands beside it, and the state that the title block tells. */
const besides = (page: Page, index: number): Promise<Beside> =>
  page.evaluate(
    ([numbers, i]) => {
      const input = document.querySelectorAll<HTMLInputElement>(numbers).item(i);
      const field = input.closest('.field');
      return {
        label: field?.firstElementChild?.textContent ?? '',
        said: field?.querySelector('.says .fault')?.textContent ?? '',
        invalid: input.getAttribute('aria-invalid') ?? '',
        state: document.querySelector('.title-block .forecast dd')?.textContent?.toLowerCase() ?? '',
        value: input.value,
      };
    },
    [NUMBERS, index] as const,
  );
