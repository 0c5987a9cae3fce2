/** Every figure on screen is the command line's, in every unit and with either decimal mark. */
import { readFileSync } from 'node:fs';
import { figure, type Manner, say, saySigned, USUAL_MANNER } from '@hoopwright/report/figure';
import type { ForecastFile } from '@hoopwright/wire/forecast';
import type { Comparison } from '@hoopwright/wire/compare';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumPath, commandLine, current, inClone, openWindow, startBoard, textOf } from './harness.mjs';

const DEMO = inClone('examples/dunlin-oxidiser.json');

describe.skipIf(chromiumPath === undefined)('the page in a browser: figures', () => {
  let board: Awaited<ReturnType<typeof startBoard>>;
  let told: ForecastFile;
  beforeAll(async () => {
    board = await startBoard();
    told = JSON.parse(await commandLine(['forecast', DEMO, '--json', '--profile'], ''));
  }, 120_000);
  afterAll(() => board.close());

  test('girths, content, wall and pumped water of the tank sheet are those that `forecast --json` prints', async () => {
    const { page, errors, context } = await openWindow(board.browser);
    await page.goto(board.url);
    await current(page);
    const { underPressure, released } = told;
    if (underPressure === null || released === null) throw new Error('the demo tank must be released');
    for (const [i, { name, girth_mm, growth_percent }] of underPressure.girths.entries()) {
      const row = await textOf(page, `tr[data-row="${name}"]`);
      expect(row).toContain(say(USUAL_MANNER, 'girth', girth_mm));
      expect(row).toContain(saySigned(USUAL_MANNER, 'growth', growth_percent / 100));
      expect(row).toContain(saySigned(USUAL_MANNER, 'growth', released.girths[i].growth_percent / 100));
    }
    const largest = await textOf(page, 'tr[data-row="largest"]');
    expect(largest).toContain(saySigned(USUAL_MANNER, 'growth', underPressure.largest.growth_percent / 100));
    expect(largest).toContain(saySigned(USUAL_MANNER, 'growth', released.largest.growth_percent / 100));
    expect(await textOf(page, 'tr[data-row="pumped"]')).toContain(
      say(USUAL_MANNER, 'volume', underPressure.pumped_L * 1e6),
    );
    expect(await textOf(page, 'tr[data-row="content"]')).toContain(
      say(USUAL_MANNER, 'content', told.volume_L * 1e6),
    );
    expect(await textOf(page, 'tr[data-row="thinnest"]')).toContain(
      say(USUAL_MANNER, 'wall', underPressure.thinnestWall_mm),
    );
    expect(errors).toEqual([]);
    await context.close();
  });

  const manners: Manner[] = [
    USUAL_MANNER,
    { units: 'psi', decimal: '.', language: 'en' },
    { units: 'MPa', decimal: ',', language: 'en' },
  ];
  test.each(manners)(
    'key figures in $units with decimal "$decimal" are those of the command line',
    async (manner) => {
      const { page, context } = await openWindow(board.browser, manner);
      await page.goto(board.url);
      await current(page);
      await page.click('nav >> text=Growth');
      await page.waitForSelector('[data-figure="maximum"]');
      const shown = (name: string): Promise<string> => textOf(page, `[data-figure="${name}"]`);
      const bar = (value: number | undefined): string => say(manner, 'pressure', (value ?? NaN) / 10);
      expect(await shown('firstYield')).toContain(bar(told.firstYield?.pressure_bar));
      expect(await shown('barrelYield')).toContain(bar(told.barrelYield?.pressure_bar));
      expect(await shown('target')).toContain(bar(told.target_bar ?? undefined));
      expect(await shown('maximum')).toContain(bar(told.maximum?.pressure_bar));
      expect(await shown('under')).toContain(
        say(manner, 'growth', (told.underPressure?.largest.growth_percent ?? NaN) / 100),
      );
      expect(await shown('left')).toContain(
        say(manner, 'growth', (told.released?.largest.growth_percent ?? NaN) / 100),
      );
      expect(await shown('mass')).toContain(say(manner, 'mass', told.mass_kg / 1000));
      expect(await shown('unstretched')).toContain(
        say(manner, 'mass', (told.unstretched?.mass_kg ?? NaN) / 1000),
      );
      await context.close();
    },
  );

  test('sheets compared are those of `compare --walls`', async () => {
    const { page, context } = await openWindow(board.browser);
    await page.goto(board.url);
    await current(page);
    await page.click('nav >> text=Growth');
    await page.waitForSelector('tr[data-sheet="3"]', { timeout: 60_000 });
    const compared: Comparison = JSON.parse(
      await commandLine(['compare', DEMO, '--walls', '1,1.5,2,2.5,3mm', '--json'], ''),
    );
    for (const sheet of compared.sheets) {
      const row = await textOf(page, `tr[data-sheet="${sheet.wall_mm}"]`);
      if (sheet.growthLeft_percent !== null)
        expect(row).toContain(say(USUAL_MANNER, 'growth', sheet.growthLeft_percent / 100));
      expect(row).toContain(say(USUAL_MANNER, 'mass', (sheet.mass_kg ?? NaN) / 1000));
      expect(row).toContain(say(USUAL_MANNER, 'pressure', (sheet.maximum_bar ?? NaN) / 10));
      expect(row).toContain(say(USUAL_MANNER, 'ratio', sheet.margin ?? NaN));
    }
    expect(await textOf(page, 'tr[data-sheet="unstretched"]')).toContain(
      say(USUAL_MANNER, 'mass', (compared.unstretched?.mass_kg ?? NaN) / 1000),
    );
    await context.close();
  }, 120_000);

  test('figures at a place of the wall are those of `forecast --json --profile`', async () => {
    const { page, context } = await openWindow(board.browser);
    await page.goto(board.url);
    await current(page);
    const wall = page.locator('.wall[role="slider"]');
    await wall.focus();
    // Down the barrel and the straight flange into the head, and up to the other one.
    for (const key of [...Array.from({ length: 48 }, () => 'ArrowDown'), ...UP]) {
      await wall.press(key);
      const [, where = '', ...rows] = (await page.locator('.place').innerText()).split(/\n+/);
      const z = Number(where.replace(' mm', '').split(', ')[1]);
      const far = ({ initial_mm }: Place): number => Math.abs(initial_mm.z - z);
      const near = [...(told.profile ?? [])].sort((a, b) => far(a) - far(b)).slice(0, 2);
      const faces = ({ inside, mid, outside }: Faces): string =>
        `${[inside, mid, outside].map((v) => figure(USUAL_MANNER, 'strain', v).text).join(' · ')} %`;
      const lines = near.map(({ now_mm, hoop, meridional, plastic }) => [
        say(USUAL_MANNER, 'wall', now_mm.wall),
        ...[hoop, meridional, plastic].map(faces),
      ]);
      const shown = rows.filter((_, i) => i % 2 === 1).map((row) => row.replace(/\s+/g, ' '));
      expect(shown).toHaveLength(4);
      expect(lines, where).toContainEqual(shown);
    }
    await context.close();
  });

  test('figures where the hand stands are those of the step that `forecast --json` prints', async () => {
    const { page, context } = await openWindow(board.browser);
    await page.goto(board.url);
    await current(page);
    await page.click('nav >> text=Growth');
    const handle = page.locator('.handle').first();
    await handle.focus();
    for (const key of ['PageDown', 'PageDown', 'PageDown', 'ArrowUp', 'End', 'ArrowDown']) {
      await handle.press(key);
      const step = told.path[Number(await handle.getAttribute('aria-valuenow')) - 1];
      const shown = await textOf(page, '.at-hand');
      const girths = step.girths.map(
        ({ name, girth_mm, growth_percent }) =>
          `${name} ${say(USUAL_MANNER, 'girth', girth_mm)} ${saySigned(USUAL_MANNER, 'growth', growth_percent / 100)}`,
      );
      for (const line of [
        `pressure ${say(USUAL_MANNER, 'pressure', step.pressure_bar / 10)}`,
        ...girths,
        `largest girth ${saySigned(USUAL_MANNER, 'growth', step.largest.growth_percent / 100)}`,
        `volume grown ${say(USUAL_MANNER, 'volume', step.growth_L * 1e6)}`,
        `water pumped ${say(USUAL_MANNER, 'volume', step.pumped_L * 1e6)}`,
        `thinnest wall ${say(USUAL_MANNER, 'wall', step.thinnestWall_mm)}`,
      ])
        expect(shown, key).toContain(line);
    }
    await context.close();
  });

  test('the curve as a table has a row for every step that the command line prints', async () => {
    const { page, context } = await openWindow(board.browser);
    await page.goto(board.url);
    await current(page);
    await page.click('nav >> text=Growth');
    await page.click('summary');
    const rows = await page.locator('.curve-table tbody tr').allInnerTexts();
    const steps = told.path.filter((m, i) => m.phase !== 'hold' || told.path[i + 1]?.phase !== 'hold');
    expect(rows.length).toBe(steps.length);
    steps.forEach((step, i) => {
      expect(rows[i]).toContain(say(USUAL_MANNER, 'pressure', step.pressure_bar / 10));
      expect(rows[i]).toContain(saySigned(USUAL_MANNER, 'growth', step.largest.growth_percent / 100));
      expect(rows[i]).toContain(say(USUAL_MANNER, 'volume', step.pumped_L * 1e6));
    });
    await context.close();
  });

  test('the tank file handed on is the one that was taken in, to the character', async () => {
    const { page, context } = await openWindow(board.browser);
    await page.goto(`${board.url}projects`);
    const [download] = await Promise.all([page.waitForEvent('download'), page.click('text="Tank file"')]);
    expect(readFileSync((await download.path()) ?? '', 'utf8')).toBe(readFileSync(DEMO, 'utf8'));
    await context.close();
  });
});

type Place = NonNullable<ForecastFile['profile']>[number];
type Faces = Place['hoop'];

const UP = Array.from({ length: 17 }, () => 'PageUp');
