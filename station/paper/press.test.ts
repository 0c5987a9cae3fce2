/** The papers: one card on one page, the same bytes for the same input, every figure and sentence as on the screen. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { USUAL_MANNER } from '@hoopwright/report/figure';
import {
  type Block,
  type PaperOrders,
  planPaper,
  planSheet,
  planText,
  type SheetPart,
} from '@hoopwright/report/plan';
import { freeze, type FrozenPlan, type Plan, planFor } from '@hoopwright/wire/plan';
import { parseTankFile, type TankFile } from '@hoopwright/wire/tank';
import { sha256 } from '../store/hash.ts';
import { pdfOf } from './press.ts';
import { pagesOf } from './readBack.ts';

const example = (name: string): TankFile =>
  JSON.parse(readFileSync(new URL(`../../examples/${name}.json`, import.meta.url), 'utf8')) as TankFile;

function planOf(file: TankFile): Plan {
  const parsed = parseTankFile(file, { asGiven: true });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues));
  const answer = planFor({ ...parsed, program: '0.1.0', hash: sha256, shell: { elements: 48, layers: 3 } });
  if (answer.kind === 'refused') throw new Error(JSON.stringify(answer.reasons));
  return answer.plan;
}

const seal = { name: 'first stretch', revision: 'A', date: '2026-10-03' };
const fuel = example('dunlin-fuel');
const frozen = freeze(planOf(fuel), seal, sha256);
const orders: PaperOrders = { manner: USUAL_MANNER, paper: 'A4', project: 'Tern Hill (invented)' };
const pdf = (plan: Plan | FrozenPlan, more: Partial<PaperOrders> = {}): Promise<Uint8Array> =>
  pdfOf(planPaper(plan, { ...orders, ...more }));

/** Line breaks and cells do not count. */
const packed = (text: string): string => text.replace(/\s+/g, '');
/** Pages by the name of the sheet in their title block. */
const sheetOf = (page: string): string => /Sheet (.*?) Serial/.exec(page)?.[1] ?? '';

let pages: string[] = [];
let bytes: Uint8Array = new Uint8Array();
beforeAll(async () => {
  bytes = await pdf(frozen);
  pages = pagesOf(bytes);
});

describe('the papers of the demo plan', () => {
  test('begin with the card on one page, then the log sheet, the holds, and what stands behind', () => {
    expect(pages.map(sheetOf).slice(0, 4)).toEqual([
      'Director’s card',
      'Log sheet',
      'Holds, and heads of the record',
      'What stands behind the card',
    ]);
    expect(new Set(pages.slice(3).map(sheetOf)).size).toBe(1);
  });

  test('carry revision, digest and page x of y on every page', () => {
    const digest = planSheet(frozen, orders).digest;
    expect(digest).toMatch(/^([0-9a-f]{4} ){7}[0-9a-f]{4}$/);
    pages.forEach((page, i) => {
      expect(page).toContain(`Page ${i + 1} of ${pages.length} `);
      expect(page).toContain('Revision A “first stretch”, frozen 2026-10-03');
      expect(packed(page)).toContain(packed(digest));
      expect(page).toContain('INVENTED DATA');
      expect(page).not.toContain('OUT OF DATE');
    });
  });

  test('have every figure of every step on card and log sheet', () => {
    const sheet = planSheet(frozen, orders);
    const [card, log] = pages.map(packed);
    for (const step of sheet.steps) {
      expect(card).toContain(packed(`${step.number}${step.name}${step.brief}${step.pressure}`));
      if (step.strokes !== '')
        expect(card).toContain(
          packed(`${step.brief}${step.pressure}${step.changes[sheet.main]}${step.strokes}`),
        );
      const cells = step.changes.map((change, i) => (step.forbidden.includes(i) ? 'not now' : change));
      expect(log).toContain(
        packed(`${step.number}${step.name}${step.hold}${step.pressure}${cells.join('')}${step.strokes}`),
      );
    }
  });

  test('have every line, table and sentence of the screen', () => {
    const behind = packed(pages.slice(3).map(withoutTitleBlock).join(' '));
    for (const section of planSheet(frozen, orders).sections)
      for (const text of section.blocks.flatMap(textsOf)) expect(behind).toContain(packed(text));
  });

  test('are the same bytes from the same input, and others from another revision', async () => {
    expect(Buffer.compare(Buffer.from(await pdf(frozen)), Buffer.from(bytes))).toBe(0);
    const other = await pdf(freeze(frozen.plan, { ...seal, revision: 'B' }, sha256));
    expect(Buffer.compare(Buffer.from(other), Buffer.from(bytes))).not.toBe(0);
  });

  test('say across every sheet that they are out of date, and then not that they are current', async () => {
    const old = pagesOf(await pdf(frozen, { outdated: 'tank changed' }));
    for (const page of old) {
      expect(packed(page)).toContain(
        packed('OUT OF DATE: the tank file has changed since this plan was made'),
      );
      expect(page).toContain('OUT OF DATE: make the plan again');
    }
  });

  test('of a draft say on every page that it is not for test day', async () => {
    for (const page of pagesOf(await pdf(frozen.plan)))
      expect(page).toContain('DRAFT, not frozen: not for test day');
  });

  test('fit on Letter too, in psi and with a decimal comma', async () => {
    const manner = { units: 'psi', decimal: ',', language: 'en' } as const;
    const letter = await pdf(frozen, { paper: 'Letter', manner });
    const text = pagesOf(letter);
    expect(Buffer.from(letter).toString('latin1')).toContain('/MediaBox [0 0 612 792]');
    expect(text.filter((page) => sheetOf(page) === 'Director’s card')).toHaveLength(1);
    expect(packed(text[0])).toContain(packed('Never above 392 psi'));
    expect(text[0]).toContain('psi, in, gal');
    // Numbers of standards and of papers keep their points; every other decimal is a comma.
    const kept = /7\.5\.3|4\.3\.7|0\.1\.0|doi 10\.\S+/g;
    for (const page of text) expect(page.replace(kept, '')).not.toMatch(/\d\.\d/);
  });
});

describe('each sentence of caution stands in its place', () => {
  const sheet = planSheet(frozen, orders);
  const screen = planText(sheet).join('\n');
  const parts: readonly SheetPart[] = [
    'card',
    'log',
    'target',
    'dangers',
    'places',
    'checklist',
    'emergency',
  ];
  const duties = [
    ...sheet.card.cautions,
    ...sheet.log.cautions,
    ...sheet.sections.flatMap((s) => s.blocks.flatMap(cautionsOf)),
  ];
  const all = [...new Map(duties.map((c) => [c.id + c.text, c])).values()];

  test.each(all)('$id', ({ text, stands, duty }) => {
    expect(duty.length).toBeGreaterThan(10);
    expect(stands.length).toBeGreaterThan(0);
    for (const part of stands) {
      expect(screenOf(part), `${part} of the screen`).toContain(text);
      expect(packed(paperOf(part)), `${part} of the paper`).toContain(packed(text));
    }
    expect(screen).toContain(text);
  });

  test('which is this place, and a sentence that moves or goes is noticed here', () => {
    const places = Object.fromEntries(all.map(({ id, stands }) => [id, stands.join(' ')]));
    expect(places).toEqual({
      kill: 'card log dangers',
      rules: 'card target dangers',
      behind: 'card places',
      approach: 'card log places',
      never: 'card target',
      thin: 'target',
      gas: 'dangers',
      line: 'card dangers',
      hose: 'dangers checklist',
      release: 'dangers checklist',
      relief: 'dangers checklist',
      weight: 'dangers checklist',
      vent: 'card dangers',
      knuckle: 'dangers checklist',
      bleed: 'card dangers',
      bulge: 'dangers',
      water: 'dangers checklist',
      'after stop': 'card emergency',
      'after leak': 'emergency',
      'after burst': 'emergency',
      'screen gone': 'card emergency',
      'gauge lost': 'card emergency',
      frost: 'emergency checklist',
      paper: 'log',
    });
  });

  test('and no part is without one', () => {
    for (const part of parts)
      expect(
        all.filter((c) => c.stands.includes(part)),
        part,
      ).not.toHaveLength(0);
    expect(all.length).toBeGreaterThan(20);
  });

  /** What the screen shows of a part. */
  function screenOf(part: SheetPart): string {
    if (part === 'card') return sheet.card.cautions.map((c) => c.text).join('\n');
    if (part === 'log') return sheet.log.cautions.map((c) => c.text).join('\n');
    return sheet.sections
      .filter((s) => s.part === part)
      .flatMap((s) => s.blocks.flatMap(textsOf))
      .join('\n');
  }

  /** Card and log are sheets of their own; a section runs from its title to the next one. */
  function paperOf(part: SheetPart): string {
    if (part === 'card') return pages[0];
    if (part === 'log') return pages[1];
    const behind = packed(pages.slice(3).map(withoutTitleBlock).join(' '));
    const titles = sheet.sections.map((s) => packed(s.title));
    return sheet.sections
      .map((s, i) => (s.part === part ? behind.split(titles[i])[1]?.split(titles[i + 1] ?? '\u0000')[0] : ''))
      .join(' ');
  }
});

test('a range narrower than the last digit of its figure is not printed', () => {
  const { holds: _, ...duty } = fuel.duty ?? { workingPressure_bar: 18 };
  const plan = planOf({ ...fuel, duty });
  const hold = { minutes: { value: 60, low: 59.9, high: 60.2 }, valve: 'open' as const };
  const steps = plan.steps.map((step) => (step.kind === 'final hold' ? { ...step, hold } : step));
  const rows = planSheet({ ...plan, steps }, orders).steps;
  expect(rows.find((row) => row.hold.startsWith('60'))?.hold).toBe('60 min');
});

test('a plan of thirty steps and six girths still has its card on one page', async () => {
  const duty = fuel.duty as NonNullable<TankFile['duty']>;
  const holds = Array.from({ length: 9 }, (_, i) => ({ pressure_bar: 15 + 1.3 * i, minutes: 11 }));
  const girths = Array.from({ length: 6 }, (_, i) => ({ name: `girth ${i + 1}`, at_mm: 80 * (i + 1) }));
  const { readings: _, ...day } = fuel.day as NonNullable<TankFile['day']>;
  const long = await pdf(planOf({ ...fuel, girths, day, duty: { ...duty, holds } }));
  const sheets = pagesOf(long).map(sheetOf);
  expect(
    planSheet(planOf({ ...fuel, girths, day, duty: { ...duty, holds } }), orders).steps.length,
  ).toBeGreaterThan(25);
  expect(sheets.filter((s) => s === 'Director’s card')).toHaveLength(1);
  expect(packed(pagesOf(long)[0])).toContain(packed('When no gauge can be believed: pump off and release.'));
});

test('a name is printed as it was given, whatever it means to a typesetter', async () => {
  const name = 'Tank #1 *bold* _x_ $y$ \\ [a] @b <c> `d` "e" ~f';
  const girths = fuel.girths?.map((g, i) => (i === 1 ? { ...g, name: '#panic() lower' } : g)) ?? [];
  const readings = fuel.day?.readings?.map((r, i) => (i === 1 ? { ...r, girth: '#panic() lower' } : r)) ?? [];
  const text = pagesOf(await pdf(planOf({ ...fuel, name, girths, day: { ...fuel.day, readings } })));
  expect(packed(text[0])).toContain(packed(name));
  expect(packed(text[1])).toContain(packed('#panic() lower'));
});

function textsOf(block: Block): string[] {
  switch (block.kind) {
    case 'lines':
      return [...block.lines];
    case 'boxes':
      return [...block.items];
    case 'cautions':
      return block.cautions.map((c) => c.text);
    case 'figures':
      return block.rows.map((row) => `${row.figure} ${row.text}`);
    case 'table':
      return block.rows.map((row) => row.join(' '));
  }
}

const cautionsOf = (block: Block) => (block.kind === 'cautions' ? block.cautions : []);

/** The title block stands first in every page of the file. */
function withoutTitleBlock(page: string): string {
  const end = page.indexOf('INVENTED DATA');
  return page.slice(end + 'INVENTED DATA'.length);
}
