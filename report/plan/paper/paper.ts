/** The papers of the day from a plan: director's card, log sheet, holds, and what stands behind. One maker for all. */
import type { FrozenPlan, Plan } from '@hoopwright/wire/plan';
import { type PlanSheet, planSheet, type SheetOrders } from '../planSheet.ts';
import { TEMPLATE } from './template.ts';
import { paperWord, type PaperWord } from './words.ts';

/** What a typesetter needs: a fixed template and everything that is said, as data. */
export interface PaperSource {
  readonly template: string;
  /** JSON. */
  readonly sheet: string;
  /** Seconds since 1970-01-01 UTC that the file gives as its making: the day of freezing, 0 for a draft. */
  readonly created: number;
}

export interface PaperOrders extends SheetOrders {
  readonly paper: 'A4' | 'Letter';
  /** What stands as the project in the title block. */
  readonly project?: string;
}

export function planPaper(given: Plan | FrozenPlan, orders: PaperOrders): PaperSource {
  const sheet = planSheet(given, orders);
  const frozen = 'frozen' in given ? given.frozen : undefined;
  return {
    template: TEMPLATE,
    sheet: JSON.stringify(dataOf(sheet, orders)),
    created: frozen === undefined ? 0 : Math.floor(Date.parse(`${frozen.date}T00:00:00Z`) / 1000),
  };
}

/** On the card first, before any row: what keeps people alive. The rest stands at its foot. */
const HEAD = new Set(['kill', 'behind', 'approach', 'nobody approaches', 'never']);

function dataOf(sheet: PlanSheet, { paper, project }: PaperOrders): object {
  const { card } = sheet;
  const invented = /INVENTED/i.test(sheet.tank);
  const texts = (kept: boolean): string[] =>
    card.cautions.filter((c) => HEAD.has(c.id) === kept).map((c) => c.text);
  return {
    paper,
    title: `${sheet.tank}: ${card.title}`,
    project: project ?? paperWord('unnamed'),
    tank: sheet.tank,
    serial: sheet.serial === '' ? paperWord('none') : sheet.serial,
    revision: sheet.revision,
    digest: sheet.digest,
    forecast: sheet.outOfDate === undefined ? sheet.forecast : paperWord('outOfDate'),
    outOfDate: sheet.outOfDate ?? '',
    invented: invented ? paperWord('invented') : '',
    unitsLine: `${sheet.units.pressure}, ${sheet.units.girth}, ${sheet.units.litres}`,
    units: sheet.units,
    girths: sheet.girths,
    gauges: sheet.gauges,
    main: sheet.main,
    counts: sheet.counts,
    steps: sheet.steps,
    cardTitle: card.title,
    cardHead: texts(true),
    cardFoot: texts(false),
    stops: card.stops,
    ifs: card.ifs,
    logTitle: sheet.log.title,
    logHead: sheet.log.cautions.map((c) => c.text),
    holdTitle: paperWord('holds'),
    holdRule: sheet.holdRule,
    headRule: paperWord('headRule'),
    heads: [paperWord('headStart'), ...sheet.holds, paperWord('headEnd')],
    behindTitle: paperWord('behind'),
    sections: sheet.sections.map((section) => ({
      ...section,
      blocks: section.blocks.map((block) =>
        block.kind === 'cautions' ? { kind: block.kind, cautions: block.cautions.map((c) => c.text) } : block,
      ),
    })),
    words: wordsOf(sheet),
  };
}

const TEMPLATE_WORDS: readonly PaperWord[] = [
  'project',
  'tank',
  'serial',
  'revision',
  'page',
  'pageOf',
  'paper',
  'digest',
  'units',
  'forecast',
  'none',
  'change',
  'strokes',
  'litres',
  'stop',
  'foreseen',
  'time',
  'temperature',
  'initials',
  'notRead',
  'rate',
  'signature',
];

const wordsOf = ({ roles }: PlanSheet): object => ({
  ...Object.fromEntries(TEMPLATE_WORDS.map((word) => [word, paperWord(word)])),
  who: [
    { label: paperWord('whoDirector'), name: roles.director ?? '' },
    { label: paperWord('whoPump'), name: roles.pump ?? '' },
    { label: paperWord('whoNotes'), name: roles.noteTaker ?? '' },
    { label: paperWord('whoDate'), name: '' },
  ],
});
