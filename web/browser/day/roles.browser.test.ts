/** What the crew do beside the plan, in a browser: photos, corrections of anybody's row, the director's role, a new revision. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { DayState } from '@hoopwright/wire/day';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chromiumPath, inClone, pictureAt, startBoard } from '../harness.mjs';
import { Crew, decide } from './crew.mjs';
import { TANK } from './tank.ts';

/** A phone held upright. */
const PHONE = { width: 390, height: 844 };
const LOOKS = ['daylight', 'sun', 'night'] as const;

describe.skipIf(chromiumPath === undefined)('the crew beside the plan (needs a browser)', () => {
  let crew: Crew;
  let record = '';
  let project = '';
  let director: Page;
  let notes: Page;
  const now = async (): Promise<DayState> => (await crew.snapshot(record)).state;
  const order = (body: object): Promise<unknown> =>
    crew.post(`/api/days/${record}/orders`, { by: 'A. Invented', ...body });
  beforeAll(async () => {
    crew = new Crew(await startBoard());
    const planned = await crew.planned(TANK);
    project = planned.project;
    const rehearsal = { seed: 2, speed: 1, faults: [], readings: 'by hand' };
    const day = { ...planned, kind: 'rehearsal', director: 'A. Invented', rehearsal };
    ({ record } = await crew.post('/api/days', day));
    director = await crew.window();
    await director.goto(crew.at(`/day/${record}/director`));
    await order({ order: 'vent shut' });
    await order({ order: 'go on', from: '1' });
    notes = await crew.behindLink(record, 'note taker', 'B. Invented', PHONE);
  }, 60_000);
  afterAll(() => crew.board.close());

  test('a photo from a phone is kept byte for byte, tied to its step and place', async () => {
    const picture = inClone('docs/test-day/4-pump.png');
    await notes.locator('.remark input[type="file"]').setInputFiles(picture);
    await notes.locator('.remark select').selectOption('low');
    await notes.locator('.remark input[type="text"]').fill('the wire of the lower girth');
    await notes.click('[data-act="remark"]');
    await notes.waitForSelector('.remark >> text=Remark written');
    const sha256 = createHash('sha256').update(readFileSync(picture)).digest('hex');
    const [kept] = (await now()).remarks.filter(({ photo }) => photo === sha256);
    expect(kept).toMatchObject({ by: 'B. Invented', place: 'low', step: '2' });
    const back = await fetch(crew.at(`/api/days/${record}/photos/${sha256}`));
    expect(
      createHash('sha256')
        .update(Buffer.from(await back.arrayBuffer()))
        .digest('hex'),
    ).toBe(sha256);
  });

  test('the note taker picks any row that was written, whoever wrote it, and adds a correction', async () => {
    await order({ order: 'row', values: { 'gauge A': 15 }, how: 'by hand' });
    await order({ order: 'row', values: { 'gauge A': 1.4, low: 1266.4 }, how: 'by hand' });
    const [, first] = (await now()).rows;
    await notes.getByRole('button', { name: `Correct entry ${first.seq}` }).click();
    await notes.locator('.correction .channel-field input').fill('1.5');
    await notes.click('[data-act="correct"]');
    await notes.waitForSelector(`[data-row="${first.seq}"] >> text=corrected by entry`);
    const row = (await now()).rows.find(({ seq }) => seq === first.seq);
    expect(row).toMatchObject({ values: { 'gauge A': 15 }, corrections: [{ values: { 'gauge A': 1.5 } }] });
  });

  test('the role of director is handed over, is refused to the laptop meanwhile, and is taken back there', async () => {
    await director.click('[data-act="more"]');
    await director.getByRole('button', { name: 'Roles and links' }).click();
    await decide(director, 'hand over');
    await expect.poll(async () => (await now()).crew.director).toBe('B. Invented');
    await notes.waitForSelector('.crew-director');
    await decide(notes, 'go on');
    expect((await now()).step?.number).toBe('3a');
    await expect(order({ order: 'go on', from: '3a' })).rejects.toThrow('403');
    await decide(director, 'reclaim');
    await expect
      .poll(async () => (await now()).crew)
      .toMatchObject({ held: 'laptop', director: 'A. Invented' });
    await notes.waitForSelector('.crew-note-taker');
  });

  test('a new revision of the plan, frozen on the day, is taken with its reason', async () => {
    const digest = await crew.freeze(project, 'B');
    await director.reload();
    await director.click('[data-act="more"]');
    await director.getByRole('button', { name: 'Roles and links' }).click();
    await director.click('[data-deed="new revision"]');
    await director.locator('.question input[type="text"]').fill('the pump is another');
    await director.click('[data-answer="yes"]:not([disabled])');
    await expect.poll(async () => (await now()).plan?.frozen).toMatchObject({ digest, revision: 'B' });
    expect((await now()).step?.number).toBe('3a');
  });

  test('on a phone and on every paper no screen is wider than its window', async () => {
    await order({ order: 'row', values: { 'gauge A': 4.4, 'gauge B': 4.4, low: 1266.5 }, how: 'by hand' });
    const viewer = await crew.behindLink(record, 'viewer', 'D. Invented', PHONE);
    const pump = await crew.behindLink(record, 'pump', 'C. Invented', PHONE);
    for (const look of LOOKS) {
      for (const [name, page] of Object.entries({ director, notes, viewer, pump })) {
        await page.locator('.strip select').selectOption(look);
        await page.screenshot({ path: pictureAt(`roles-${name}-${look}`), fullPage: page !== director });
        const wide = await page.evaluate('document.documentElement.scrollWidth - window.innerWidth');
        expect(wide, `${name}, ${look}`).toBeLessThanOrEqual(0);
      }
    }
    expect(crew.errors.flat()).toEqual([]);
  });
});
