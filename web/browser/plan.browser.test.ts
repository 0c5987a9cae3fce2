/** The sheet of the plan: made, frozen, changed, frozen again, printed; screen, paper and command line say the same. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { USUAL_MANNER } from '@hoopwright/report/figure';
import { planSheet } from '@hoopwright/report/plan';
import type { FrozenPlan } from '@hoopwright/wire/plan';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumPath, commandLine, inClone, openWindow, pagesOf, startBoard } from './harness.mjs';

const FUEL = JSON.parse(readFileSync(inClone('examples/dunlin-fuel.json'), 'utf8'));
const { day: DAY, heads: _, seams: __, ...TOLD } = FUEL;
const STEEL = { young_MPa: 200_000, poisson: 0.3, density_kg_per_m3: 7900 };
/** Steel that only its certificate speaks for: it has a range, and its belief is soon made. */
const CERTIFIED = { ...STEEL, certificate: { Rp02_MPa: 284, Rp10_MPa: 322, Rm_MPa: 624, A_percent: 54 } };
/** A short barrel between two hemispheres is soon solved; one girth by wire, one by tape at the tank. */
const SHORT = {
  ...TOLD,
  name: 'INVENTED: short tank',
  barrel: { insideDiameter_mm: 600, length_mm: 400, wall_mm: 2 },
  heads: { top: { shape: 'hemispherical', wall_mm: 2 }, bottom: { shape: 'hemispherical', wall_mm: 2 } },
  girths: [
    { name: 'middle', at_mm: 200 },
    { name: 'upper', at_mm: 300 },
  ],
  steel: CERTIFIED,
  stand: { axis: 'upright', gauge_mm: 700 },
  day: {
    ...DAY,
    readings: [
      { girth: 'middle', by: 'draw-wire', range_mm: 300, resolution_mm: 0.05, noise_mm: 0.1 },
      { girth: 'upper', by: 'tape', from: 'at the tank', resolution_mm: 0.5, noise_mm: 0.3 },
    ],
  },
};
const shortWith = (change: object): string => JSON.stringify({ ...SHORT, ...change });

describe.skipIf(chromiumPath === undefined)('the page in a browser: the plan', () => {
  let board: Awaited<ReturnType<typeof startBoard>>;
  let dir: string;
  beforeAll(async () => {
    dir = mkdtempSync(join(tmpdir(), 'hoopwright-plan-'));
    board = await startBoard();
  });
  afterAll(async () => {
    rmSync(dir, { recursive: true });
    await board.close();
  });

  async function project(name: string, file: string): Promise<string> {
    const answer = await fetch(`${board.url}api/projects`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ name, file }),
    });
    return (await answer.json()).project.id;
  }

  test('made, frozen, changed, frozen again and printed: screen, paper and command line say the same', async () => {
    const { page, errors, context } = await openWindow(board.browser);
    const tank = join(dir, 'short.json');
    writeFileSync(tank, shortWith({}));
    const spoken = commandLine(['plan', tank], '');
    await page.goto(`${board.url}p/${await project('INVENTED: short', shortWith({}))}`);
    await page.waitForSelector('[data-saving="saved"]');
    await page.click('nav >> text=Plan');
    await page.waitForSelector('progress');
    await planned(page);
    const said = packedLines(await spoken);
    const rows = await stepsOn(page);
    expect(rows).toHaveLength(17);
    for (const row of rows) expect(said).toContain(row.filter((text) => text !== '').join(' '));
    for (const line of await linesOn(page)) expect(said.join('\n')).toContain(line);

    await frozen(page, 'first stretch', 'A');
    expect(await listed(page)).toEqual([['A', 'current']]);
    const first = await paperOf(page, 'A', 'A4');
    for (const row of rows) agrees(row, pagesOf(first));
    const text = await download(page, 'tr[data-revision="A"] >> text=JSON');
    const file = join(dir, 'a.json');
    writeFileSync(file, text);
    const named = (await page.textContent('.title-block dd')) ?? '';
    const printed = join(dir, 'a.pdf');
    const asked = ['plan', tank, '--frozen', file, '--pdf', printed, '--paper', 'A4'];
    await commandLine([...asked, '--project', named], '');
    expect(first.equals(readFileSync(printed))).toBe(true);

    await fill(page, 'one stroke, by a bucket test', '20');
    expect(await page.textContent('.title-block .forecast')).toContain('OUT OF DATE');
    expect(await page.isDisabled('.seal button')).toBe(true);
    await planned(page);
    await page.waitForSelector('tr[data-revision="A"] >> text=OUT OF DATE: the tank has changed');
    await page.fill('.seal input >> nth=1', 'A');
    await page.click('.seal button');
    expect(await page.textContent('.seal [role="alert"]')).toContain('freeze it under the next revision');
    await frozen(page, 'first stretch', 'B');
    expect(await listed(page)).toEqual([
      ['B', 'current'],
      ['A', 'OUT OF DATE: the tank has changed'],
    ]);
    const changed = await stepsOn(page);
    expect(changed).not.toEqual(rows);
    const second = pagesOf(await paperOf(page, 'B', 'Letter'));
    for (const row of changed) agrees(row, second);
    expect(second.join()).not.toContain('OUT OF DATE');
    for (const sheet of pagesOf(await paperOf(page, 'A', 'Letter'))) expect(sheet).toContain('OUT OF DATE');

    await page.click('tr[data-revision="A"] a');
    await page.waitForURL('**/plan/*');
    await page.waitForSelector('.plan-sheet.old');
    expect(await stepsOn(page)).toEqual(rows);
    expect(await page.textContent('.plan-sheet .state')).toContain('Revision A “first stretch”');
    await page.reload();
    await page.waitForSelector('text=Back to the draft');
    await saysItsCautions(page, JSON.parse(text.toString('utf8')));
    // The revision that was given twice.
    expect(errors).toEqual([expect.stringContaining('409')]);
    await context.close();
  }, 180_000);

  test('a plan is refused on the sheet with every reason, and cannot be frozen', async () => {
    const { page, errors, context } = await openWindow(board.browser);
    const flow = { law: 'points', plastic: [0, 0.01, 0.02], stress_MPa: [240, 300, 335] };
    const setUp = {
      ...DAY,
      readings: [{ girth: 'middle', by: 'tape', resolution_mm: 0.5 }],
      relief: { opens_bar: 26 },
      gauges: [{ name: 'small', range_bar: 25, resolution_bar: 0.1 }],
    };
    const slow = { mL_per_stroke: 2, strokes_per_min: 20, highest_bar: 60 };
    const refusals: readonly (readonly [file: string, says: readonly RegExp[]])[] = [
      [
        shortWith({ day: setUp, steel: { ...STEEL, flow } }),
        [
          /No girth can be read from behind the wall.*nobody may be there above 2\.0 bar/,
          /relief valve opens at 26\.0 bar.*stretch pressure 27\.0 bar/,
          /Gauge "small" ends at 25\.0 bar/,
          /the evidence for its curve ends at 2\.00 %/,
        ],
      ],
      [
        shortWith({
          steel: { ...STEEL, flow },
          water: { temperature_C: 16, trappedAir_L: 3 },
          day: { ...SHORT.day, pump: slow, supply: { by: 'strokes', resolution_mL: 2 } },
        }),
        [
          /The pump gives 40(\.0)? mL\/min; the first growth needs/,
          /3\.00 L of trapped air at filling; the limit is/,
          /the evidence for its curve ends at 2\.00 %/,
        ],
      ],
    ];
    for (const [file, says] of refusals) {
      await page.goto(`${board.url}p/${await project('INVENTED: refused', file)}/plan`);
      await page.waitForSelector('.refused', { timeout: 60_000 });
      for (const reason of says) expect(await page.textContent('.refused')).toMatch(reason);
      expect(await page.locator('.refused li').count()).toBe(says.length);
      expect(await page.isDisabled('.seal button')).toBe(true);
      expect(await page.locator('tr[data-step]').count()).toBe(0);
    }
    expect(errors).toEqual([]);
    await context.close();
  }, 180_000);
});

/** The plan on the sheet is that of the tank on the board, and can be frozen. */
const planned = (page: Page) => page.waitForSelector('.seal button:not([disabled])', { timeout: 90_000 });

async function frozen(page: Page, name: string, revision: string): Promise<void> {
  await page.fill('.seal input >> nth=0', name);
  await page.fill('.seal input >> nth=1', revision);
  await page.fill('.seal input >> nth=2', '2026-10-03');
  await page.click('.seal button');
  await page.waitForSelector(`tr[data-revision="${revision}"]`);
}

const listed = (page: Page): Promise<(string | null)[][]> =>
  page
    .locator('tr[data-revision]')
    .evaluateAll((rows) =>
      rows.map((row) => [row.querySelector('th')!.textContent, row.querySelectorAll('td')[3].textContent]),
    );

async function fill(page: Page, label: string, text: string): Promise<void> {
  const input = page.getByLabel(label, { exact: true });
  await input.fill(text);
  await input.press('Enter');
}

const inOneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();
const packedLines = (text: string): string[] => text.split('\n').map(inOneLine);
const packed = (text: string): string => text.replace(/\s+/g, '');

/** Number, name, pressure, girths, litres, strokes, hold of every step; empty where nothing is foreseen or read. */
const stepsOn = (page: Page): Promise<string[][]> =>
  page.locator('tr[data-step]').evaluateAll((rows) =>
    rows.map((row) => {
      const [number, does, ...figures] = [...row.children];
      const texts = [number, does.querySelector('strong')!, ...figures].map((cell) => cell.textContent ?? '');
      return texts.map((text) => (text === 'not read' ? '' : text));
    }),
  );

/** Every line and sentence behind the steps. */
const linesOn = async (page: Page): Promise<string[]> =>
  (await page.locator('.plan-sections :is(p, dd, li), .plan-steps :is(p, li)').allTextContents()).map(
    inOneLine,
  );

/** Card and log sheet have every figure of the row; litres stand on neither where strokes do. */
function agrees(row: readonly string[], pages: readonly string[]): void {
  const papers = packed(`${pages[0]} ${pages[1]}`);
  const [litres, hold] = [row.length - 3, row.length - 1];
  for (const text of row.filter((_text, i) => i !== litres && i !== hold))
    expect(papers).toContain(packed(text));
}

async function download(page: Page, link: string): Promise<Buffer> {
  const [file] = await Promise.all([page.waitForEvent('download'), page.click(link)]);
  return readFileSync(await file.path());
}

const paperOf = (page: Page, revision: string, size: string): Promise<Buffer> =>
  download(page, `tr[data-revision="${revision}"] >> text="Papers, ${size}"`);

/** Each sentence of caution stands where its duty says, and can be seen. */
async function saysItsCautions(page: Page, plan: FrozenPlan): Promise<void> {
  const { card, log, sections } = planSheet(plan, { manner: USUAL_MANNER });
  const inSections = sections.flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.kind === 'cautions' ? block.cautions : [])),
  );
  const all = [...card.cautions, ...log.cautions, ...inSections];
  expect(new Set(all.map(({ id }) => id)).size).toBeGreaterThan(20);
  for (const { id, text, stands } of all)
    for (const part of stands) {
      const found = page.locator(`[data-part="${part}"] li`, { hasText: text });
      expect(await found.count(), `${id} in ${part}`).toBeGreaterThan(0);
      expect(await found.first().isVisible(), `${id} in ${part}`).toBe(true);
    }
}
