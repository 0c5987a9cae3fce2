/** Drawing with the hand and with keys: numbers as people type them, faults, undo, a second window. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumPath, current, openWindow, startBoard } from './harness.mjs';

describe.skipIf(chromiumPath === undefined)('the page in a browser: editing', () => {
  let board: Awaited<ReturnType<typeof startBoard>>;
  beforeAll(async () => {
    board = await startBoard();
  });
  afterAll(() => board.close());

  const opened = async (how = {}) => {
    const window = await openWindow(board.browser, how);
    await window.page.goto(board.url);
    await current(window.page);
    return window;
  };

  test('"2,3" and "2.3" typed over the wall on the drawing are both 2.3, and are read back', async () => {
    const { page, errors, context } = await opened();
    for (const [text, decimal] of [
      ['2,3', '.'],
      ['2.3', ','],
    ]) {
      await page.selectOption('.reading select >> nth=1', decimal);
      await openFigure(page, 'barrel.wall_mm');
      await page.fill('.in-place input', text);
      expect(await page.textContent('.in-place .says')).toBe(`= 2${decimal}3 mm`);
      await page.keyboard.press('Enter');
      await current(page);
      expect(await page.textContent('[data-path="barrel.wall_mm"]')).toBe(`2${decimal}3`);
      await undo(page);
    }
    expect(errors).toEqual([]);
    await context.close();
  });

  test('a single mark before exactly three digits is asked about, and nothing changes until it is answered', async () => {
    const { page, context } = await opened();
    await openFigure(page, 'barrel.length_mm');
    await page.fill('.in-place input', '1,024');
    expect(await page.textContent('.asked')).toContain('Which one is meant?');
    expect(await forecastWord(page)).toBe('out of date');
    await page.click('.asked button:has-text("1024 mm")');
    await page.keyboard.press('Enter');
    await current(page);
    expect(await page.textContent('[data-path="barrel.length_mm"]')).toBe('1024');
    await undo(page);
    await context.close();
  });

  test.each([
    ['2.0.1,5', 'make no number'],
    ['thick', 'is not a number'],
    ['2 bar', 'is not a unit for this'],
    ['', 'A number is wanted'],
  ])(
    '"%s" in a field gets a sentence beside it; the last good forecast stays, marked out of date',
    async (text, says) => {
      const { page, context } = await opened();
      const before = await page.textContent('.state .large');
      await openFigure(page, 'barrel.wall_mm');
      await page.fill('.in-place input', text);
      expect(await page.textContent('.in-place .fault')).toContain(says);
      expect(await page.getAttribute('.in-place input', 'aria-invalid')).toBe('true');
      expect(await forecastWord(page)).toBe('out of date');
      expect(await page.textContent('.state .large')).toBe(before);
      await page.keyboard.press('Escape');
      await current(page);
      expect(await page.locator('.in-place').count()).toBe(0);
      await context.close();
    },
  );

  test('a number that makes no tank is told beside its field, is not saved, and Escape brings the old one back', async () => {
    const { page, context } = await opened();
    const version = await page.textContent('.saving');
    await openFigure(page, 'barrel.wall_mm');
    await page.fill('.in-place input', '400');
    await page.waitForSelector('.in-place .fault');
    expect(await page.textContent('.issues')).toContain('Wall of the barrel');
    expect(await forecastWord(page)).toBe('out of date');
    await page.keyboard.press('Escape');
    await current(page);
    await page.waitForSelector('[data-saving="saved"]');
    expect(await page.textContent('.saving')).toContain(version ?? '');
    await context.close();
  });

  test('every field of the tank sheet refuses words with a sentence', async () => {
    const { page, context } = await opened();
    const paths = await page
      .locator('.drawing [data-path]')
      .evaluateAll((all) => all.map((one) => one.getAttribute('data-path')));
    expect(paths.length).toBeGreaterThan(12);
    for (const path of new Set(paths)) {
      await openFigure(page, path ?? '');
      await page.fill('.in-place input', 'about two');
      expect(await page.textContent('.in-place .fault'), path ?? '').toContain('is not a number');
      await page.keyboard.press('Escape');
    }
    const fields = page.locator('.duty input');
    for (let i = 0; i < (await fields.count()); i++) {
      await fields.nth(i).fill('about two');
      expect(await page.textContent('.duty .fault')).toContain('is not a number');
      await fields.nth(i).press('Escape');
    }
    await current(page);
    await context.close();
  });

  test('a unit typed behind the number counts: 0.08 in is 2.032 mm', async () => {
    const { page, context } = await opened();
    await openFigure(page, 'barrel.wall_mm');
    await page.fill('.in-place input', '0.08 in');
    expect(await page.textContent('.in-place .says')).toBe('= 2.032 mm');
    await page.keyboard.press('Escape');
    await context.close();
  });

  test('keys alone reach a figure of the drawing, change it, and move the hand and the place', async () => {
    const { page, context } = await opened();
    await page.locator('[data-path="barrel.insideDiameter_mm"]').focus();
    await page.keyboard.press('Enter');
    await page.keyboard.type('610');
    await page.keyboard.press('Enter');
    await current(page);
    expect(await page.textContent('[data-path="barrel.insideDiameter_mm"]')).toBe('610');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-path'))).toBe(
      'barrel.insideDiameter_mm',
    );
    const at = await page.textContent('.hand .at');
    await page.locator('.mini [role="slider"]').focus();
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('PageDown');
    await page.waitForFunction((was) => document.querySelector('.hand .at')?.textContent !== was, at);
    await page.locator('.wall[role="slider"]').focus();
    await page.keyboard.press('ArrowUp');
    expect(await page.textContent('.place')).toContain('hoop strain');
    await page.locator('[data-path="barrel.insideDiameter_mm"]').focus();
    await undo(page);
    await context.close();
  });

  test('the handle on the growth curve takes the drawing along', async () => {
    const { page, context } = await opened();
    await page.click('nav >> text=Growth');
    const tank = page.locator('.small-tank path.outline').first();
    const before = await tank.getAttribute('d');
    const chart = await page.locator('.chart .reach').first().boundingBox();
    if (chart === null) throw new Error('no curve is drawn');
    await page.mouse.click(chart.x + 0.7 * chart.width, chart.y + 0.2 * chart.height);
    await page.waitForFunction(
      (was) => document.querySelector('.small-tank path.outline')?.getAttribute('d') !== was,
      before,
    );
    expect(await page.textContent('.at-hand')).toContain('beyond the planned release');
    await context.close();
  });

  test('undo and redo step through what was saved', async () => {
    const { page, context } = await opened();
    await change(page, 'barrel.wall_mm', '2.2');
    await undo(page);
    expect(await page.textContent('[data-path="barrel.wall_mm"]')).toBe('2');
    await page.click('text=Redo');
    await page.waitForFunction(
      () => document.querySelector('[data-path="barrel.wall_mm"]')?.textContent === '2.2',
    );
    await undo(page);
    await context.close();
  });

  test('a second window follows the first; where both have changed, the slower is told and neither loses', async () => {
    const one = await opened();
    const two = await opened();
    await change(one.page, 'barrel.wall_mm', '2.4');
    await two.page.waitForFunction(
      () => document.querySelector('[data-path="barrel.wall_mm"]')?.textContent === '2.4',
    );
    expect(await two.page.textContent('.told')).toContain('Changed in another window');
    // Both change before either has saved: the second save finds a newer version.
    await two.page.route('**/versions', async (route) => {
      await one.page.waitForSelector('[data-saving="saved"]');
      await route.continue();
    });
    await openFigure(two.page, 'barrel.length_mm');
    await two.page.fill('.in-place input', '930');
    await change(one.page, 'barrel.wall_mm', '2.6');
    await two.page.waitForSelector('text=Another window saved first');
    await two.page.click('text=Save mine as the next version');
    await two.page.waitForSelector('[data-saving="saved"]');
    await one.page.waitForFunction(
      () => document.querySelector('[data-path="barrel.length_mm"]')?.textContent === '930',
    );
    await two.page.unrouteAll({ behavior: 'ignoreErrors' });
    await one.context.close();
    await two.context.close();
  });
});

const forecastWord = (page: Page): Promise<string | null> =>
  page.getAttribute('.forecast [data-state]', 'data-state');

async function openFigure(page: Page, path: string): Promise<void> {
  await page.locator(`[data-path="${path}"]`).first().click();
  await page.waitForSelector('.in-place input');
}

async function change(page: Page, path: string, text: string): Promise<void> {
  await openFigure(page, path);
  await page.fill('.in-place input', text);
  await page.keyboard.press('Enter');
  await current(page);
  await page.waitForSelector('[data-saving="saved"]');
}

/** Back to the version before, which is the one that the test began with. */
async function undo(page: Page): Promise<void> {
  // Undoing saves first, and that alone changes the version.
  await page.waitForSelector('[data-saving="saved"]');
  const before = await page.textContent('.title-block .w2 dd');
  await page.waitForFunction(
    () => document.querySelector('.kept button')?.hasAttribute('disabled') === false,
  );
  await page.click('text=Undo');
  await page.waitForFunction(
    (was) => document.querySelector('.title-block .w2 dd')?.textContent !== was,
    before,
  );
  await current(page);
}
