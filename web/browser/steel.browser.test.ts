/** The steel on screen is the command line's: its range, what each test gave, what would narrow it. */
import { figure, type Quantity, say, USUAL_MANNER } from '@hoopwright/report/figure';
import type { CouponAnswer } from '@hoopwright/wire/coupon';
import type { SteelAnswer } from '@hoopwright/wire/evidence';
import type { SpanFile } from '@hoopwright/wire/forecast';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumPath, commandLine, current, inClone, openWindow, startBoard, textOf } from './harness.mjs';

const DEMO = inClone('examples/dunlin-oxidiser.json');

describe.skipIf(chromiumPath === undefined)('the page in a browser: steel', () => {
  let board: Awaited<ReturnType<typeof startBoard>>;
  let steel: SteelAnswer;
  beforeAll(async () => {
    board = await startBoard();
    steel = JSON.parse(await commandLine(['steel', DEMO, '--json'], ''));
  }, 120_000);
  afterAll(() => board.close());

  test('the range is the one that `steel --json` prints', async () => {
    const { page, context } = await openWindow(board.browser);
    await page.goto(board.url);
    await current(page);
    await page.click('nav >> text=Growth');
    await page.waitForSelector('.nine', { timeout: 60_000 });
    if (steel.stretch === null) throw new Error('the demo tank must have a range');
    const { underPressure, survive99 } = steel.stretch;
    const grown = nine('growth', underPressure.growth_percent.nineOfTen, 0.01);
    expect(await textOf(page, '[data-figure="under"]')).toContain(grown);
    const survived = say(USUAL_MANNER, 'pressure', survive99.pressure_bar / 10);
    expect(await textOf(page, '[data-figure="survived"]')).toContain(survived);
    await context.close();
  }, 120_000);

  test('the steel and its coupons are those that `steel --json` and `coupon --json` print', async () => {
    const { page, context } = await openWindow(board.browser);
    await page.goto(board.url);
    await current(page);
    await page.click('nav >> text=Steel');
    await page.waitForSelector('tr[data-coupon] >> text=may be used');
    await page.waitForSelector('.evidence .two', { timeout: 60_000 });
    const sheet = await textOf(page, '.steel-sheet');
    for (const { plastic_percent: p, stress_MPa } of steel.curve)
      if ([0.2, 1, 2, 5, 10].includes(p))
        expect(sheet).toContain(
          `${say(USUAL_MANNER, 'strain', p / 100)} ${nine('stress', stress_MPa.nineOfTen, 1)}`,
        );
    expect(sheet).toContain(nine('ratio', steel.biaxialFactor.nineOfTen, 1));
    expect(sheet).toContain(nine('wall', steel.wall_mm.nineOfTen, 1));
    expect(sheet).toContain(nine('ratio', steel.seamStrength.nineOfTen, 1));
    expect(sheet).toContain(nine('strain', steel.coldWork_percent.nineOfTen, 0.01));
    const { shares = [], next = [] } = steel.stretch ?? {};
    expect(shares.length * next.length).toBeGreaterThan(0);
    for (const { name, percent } of shares)
      expect(sheet).toContain(`${name} ${say(USUAL_MANNER, 'share', percent / 100)}`);
    for (const { measure, width } of next)
      expect(sheet).toMatch(new RegExp(`${measure} .{0,30}${say(USUAL_MANNER, 'share', width)}`));
    const files = [...steel.tests, ...steel.seams.map((_, i) => ({ file: `coupons/seam-${i + 1}.csv` }))];
    const rows = page.locator('tr[data-coupon]');
    expect(await rows.count()).toBe(new Set(files.map(({ file }) => file)).size);
    const names = await rows.evaluateAll((all) => all.map((row) => row.getAttribute('data-coupon') ?? ''));
    const coupons: CouponAnswer[] = JSON.parse(
      await commandLine(
        ['coupon', ...names.map((name) => inClone(`examples/coupons/${name}`)), '--json'],
        '',
      ),
    );
    for (const [i, { E_MPa, Rp02_MPa, Rp10_MPa, Rm_MPa, Ag_percent, A_percent }] of coupons.entries()) {
      const row = (await rows.nth(i).innerText()).replace(/\s+/g, ' ');
      if (E_MPa !== null) expect(row).toContain(`${(E_MPa / 1000).toFixed(0)} GPa`);
      for (const stress of [Rp02_MPa, Rp10_MPa, Rm_MPa])
        if (stress !== null) expect(row).toContain(say(USUAL_MANNER, 'stress', stress));
      for (const strain of [Ag_percent, A_percent])
        if (strain !== null) expect(row).toContain(say(USUAL_MANNER, 'strain', strain / 100));
    }
    await context.close();
  }, 120_000);
});

const nine = (quantity: Quantity, [low, high]: SpanFile['nineOfTen'], one: number): string =>
  `${figure(USUAL_MANNER, quantity, (low ?? NaN) * one).text} to ${say(USUAL_MANNER, quantity, (high ?? NaN) * one)}`;
