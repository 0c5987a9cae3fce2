/** A whole day rehearsed by four roles at once, by hand readings, on the real server: from set-up to named end and replay. */
import type { Snapshot } from '@hoopwright/wire/day';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumPath, pictureAt, slowdown, startBoard } from '../harness.mjs';
import { Crew, decide } from './crew.mjs';
import { TANK } from './tank.ts';

const DOCS = 'docs/test-day';
/** Times real time: ten minutes of hold in five seconds. */
const SPEED = '120';

describe.skipIf(chromiumPath === undefined)('a day in a browser', () => {
  let crew: Crew;
  let planned: { project: string; plan: string };
  beforeAll(async () => {
    crew = new Crew(await startBoard());
    planned = await crew.planned(TANK);
  }, 60_000);
  afterAll(() => crew.board.close());
  const at = (path: string): string => crew.at(path);

  test('four roles rehearse a day by hand, from set-up to its named end, export and replay', async () => {
    const director = await crew.window();
    await director.goto(at('/days'));
    await director.locator('.begin select').first().selectOption({ label: 'INVENTED: Dunlin' });
    await director.getByLabel('Director', { exact: true }).fill('A. Invented');
    await director.getByLabel('Times real time').fill(SPEED);
    await director.screenshot({ path: pictureAt('1-begin', DOCS), fullPage: true });
    await director.click('[data-act="begin"]');
    await director.waitForSelector('.director');
    const record = /\/day\/([^/]+)/.exec(director.url())?.[1] ?? '';
    const snapshot = (): Promise<Snapshot> => crew.snapshot(record);
    const [notes, pump, viewer] = [
      await crew.behindLink(record, 'note taker', 'B. Invented'),
      await crew.behindLink(record, 'pump', 'C. Invented'),
      await crew.behindLink(record, 'viewer', 'D. Invented'),
    ];
    for (const page of [notes, pump, viewer]) expect(page.url()).not.toContain('#');
    expect(await viewer.locator('.strip nav').count()).toBe(0);

    // Before: measured with prompts, sound armed, head copied, vent shut.
    await notes.getByLabel('Value').fill('1266.5');
    await notes.getByLabel('With what').fill('steel tape');
    await notes.click('[data-act="measure"]');
    await notes.waitForSelector('td >> text=1266.5 mm');
    await director.click('[data-act="arm"]');
    await director.click('[data-act="heard"]');
    await director.click('[data-act="copied"]');
    await director.screenshot({ path: pictureAt('2-before', DOCS) });
    await decide(director, 'vent shut');

    let pictured = false;
    for (let n = 0; n < 20; n++) {
      const { state } = await snapshot();
      if (state.next === undefined || state.phase === 'after') break;
      await decide(director, 'go on');
      await expect.poll(async () => (await snapshot()).state.step?.number).toBe(state.next);
      const { kind, pressure_bar } = (await snapshot()).state.step ?? { kind: 'fill', pressure_bar: 0 };
      if (kind === 'drain') break;
      await expect
        .poll(async () => ((await snapshot()).shows ?? {})['gauge A'] ?? 0, { timeout: 30_000 })
        .satisfies((bar: number) =>
          kind === 'release' || kind === 'approach' ? bar < pressure_bar + 0.3 : bar > pressure_bar - 0.3,
        );
      await row(notes);
      if (kind === 'hold' || kind === 'final hold') {
        await notes.waitForTimeout(1500);
        await row(notes);
        if (!pictured) {
          await pump.screenshot({ path: pictureAt('4-pump', DOCS) });
          await notes.screenshot({ path: pictureAt('5-note-taker', DOCS) });
          await viewer.screenshot({ path: pictureAt('6-viewer', DOCS) });
          pictured = true;
        }
        await decide(director, 'hold ended');
        await expect.poll(async () => (await snapshot()).state.hold?.over).toBe(true);
      } else if (kind === 'rise') await director.screenshot({ path: pictureAt('3-director', DOCS) });
    }

    // A correction adds; a remark is written.
    await notes
      .getByLabel(/^Correct entry/)
      .first()
      .click();
    await notes.locator('.correction .channel-field input').first().fill('0.1');
    await notes.click('[data-act="correct"]');
    await notes.waitForSelector('.rows >> text=corrected by entry');

    await decide(director, 'end');
    await director.waitForSelector('.state-word[data-word="ended"]');
    await expect.poll(() => viewer.locator('.state-word .word').textContent()).toBe('Ended: done');
    const { state } = await snapshot();
    expect(state.end).toMatchObject({ name: 'done' });
    expect(state.heads.map(({ at: when }) => when)).toEqual(expect.arrayContaining(['start', 'hold', 'end']));
    expect(state.measures).toMatchObject([
      { what: 'girth', value: 1266.5, by: 'B. Invented', with: 'steel tape' },
    ]);
    expect(state.figures.highest_bar).toBeGreaterThan(29);
    const csv = await (await fetch(at(`/api/days/${record}/export?as=csv&decimal=.`))).text();
    expect(csv).toContain('gauge A [bar]');

    // Replayed with the slider, marked as a replay.
    await director.goto(at(`/day/${record}?replay`));
    await director.waitForSelector('.crew[data-kind="replay"]');
    const slider = director.locator('input[type="range"]');
    await slider.fill(String(Math.round(Number(await slider.getAttribute('max')) / 2000) * 1000));
    await director.waitForSelector('.state-word:not([data-word="before pressure"])');
    expect(await director.textContent('.hatched-word.top')).toContain('REPLAY');
    expect(await director.locator('[data-deed]').count()).toBe(0);
    await director.screenshot({ path: pictureAt('8-replay', DOCS) });
    expect(crew.errors.flat().filter((one) => !one.includes('409'))).toEqual([]);
    await crew.leave();
  }, 120_000);

  test('with the server stopped every page strikes its numbers out within 2 s, and takes them back when it goes on', async () => {
    const rehearsal = { seed: 5, speed: 1, faults: [], readings: 'by hand' };
    const day = { ...planned, kind: 'rehearsal', director: 'A. Invented', rehearsal };
    const { record } = await crew.post('/api/days', day);
    const order = (body: object) => crew.post(`/api/days/${record}/orders`, { by: 'A. Invented', ...body });
    await order({ order: 'row', values: { 'gauge A': 0.1 }, how: 'by hand' });
    const pages: Page[] = [];
    for (const screen of ['director', 'pump', 'viewer']) {
      const page = await crew.window();
      await page.goto(at(`/day/${record}/${screen}`));
      await page.waitForSelector('[data-figure="pressure"][data-old="false"]');
      pages.push(page);
    }
    const slow = slowdown();
    process.kill(crew.board.pid, 'SIGSTOP');
    const began = performance.now();
    try {
      await Promise.all(
        pages.map((page) => page.waitForSelector('[data-figure="pressure"][data-old="true"]')),
      );
      const took = performance.now() - began;
      console.log(
        `struck out ${Math.round(took)} ms after the server stopped, slowed ${slow.toFixed(1)} times`,
      );
      expect(took).toBeLessThan(2000 + 500 * (slow - 1));
      expect(await pages[0].textContent('.state-word .word')).toBe('Cannot judge');
      await pages[0].screenshot({ path: pictureAt('7-link-lost', DOCS) });
    } finally {
      process.kill(crew.board.pid, 'SIGCONT');
    }
    await Promise.all(
      pages.map((page) => page.waitForSelector('[data-figure="pressure"][data-old="false"]')),
    );
    await crew.leave();
  }, 60_000);
});

/** The note taker reads what the simulated instruments show, and types it. */
async function row(page: Page): Promise<void> {
  if ((await page.locator('form.row').count()) === 0) await page.click('[data-act="measures"]');
  await page.waitForSelector('form.row .says >> text=shows');
  for (const field of await page.locator('form.row .channel-field').all()) {
    const shown = /shows ([\d.]+)/.exec((await field.locator('.says').textContent()) ?? '')?.[1];
    if (shown !== undefined) await field.locator('input').fill(shown);
  }
  await page.click('[data-act="row"]');
  await page.waitForSelector('form.row >> text=Row written');
}
