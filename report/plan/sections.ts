/** What stands behind the card: target, water, dangers, what happens when, places, instruments, limits, checklist. */
import type { Plan } from '@hoopwright/wire/plan';
import type { Figures } from './figures.ts';
import { type Caution, cautionsIn, type SheetPart } from './words/caution.ts';
import { dangerRow } from './words/danger.ts';
import { catalogue } from './words/fill.ts';
import { assumedText, limitReason, limitText, openText, remarkText } from './words/limit.ts';
import { firstStepTexts, leakTexts, needRow, placeRow, targetTexts, waterTexts } from './words/target.ts';

export type Block =
  | { readonly kind: 'lines'; readonly lines: readonly string[] }
  /** A figure of its own in front of its sentence, so that the eye can run down them. */
  | {
      readonly kind: 'figures';
      readonly rows: readonly { readonly figure: string; readonly text: string }[];
    }
  | {
      readonly kind: 'table';
      readonly head: readonly string[];
      readonly rows: readonly (readonly string[])[];
    }
  | { readonly kind: 'cautions'; readonly cautions: readonly Caution[] }
  /** To be ticked, with room for a figure and initials. */
  | { readonly kind: 'boxes'; readonly items: readonly string[] };

export interface Section {
  readonly part: SheetPart;
  readonly title: string;
  readonly blocks: readonly Block[];
}

const ENGLISH = {
  target: 'What it is for',
  places: 'Where people are, and what is read from where',
  dangers: 'Dangers, largest first',
  emergency: 'When something happens',
  checklist: 'Before the vent is shut',
  instruments: 'Instruments and what they can see',
  limits: 'Limits',
  water: 'Water',
  reading: 'reading',
  by: 'by',
  from: 'from',
  upTo: 'up to',
  rangeNeeded: 'range needed',
  stepNeeded: 'step needed',
  range: 'range',
  step: 'step',
  limit: 'limit',
  because: 'because',
  'box zero': 'Every gauge is read with the vent open: that is its zero.',
  'box count': 'Everybody is counted behind the wall.',
} as const;

const filled = catalogue(ENGLISH);

export function sectionsOf(plan: Plan, f: Figures, cautions: readonly Caution[]): Section[] {
  const lines = (texts: readonly string[]): Block => ({ kind: 'lines', lines: texts });
  const said = (part: SheetPart): Block => ({ kind: 'cautions', cautions: cautionsIn(part, cautions) });
  return [
    {
      part: 'target',
      title: filled('target'),
      blocks: [
        lines(targetTexts(plan.target, f)),
        ...(plan.remarks.length === 0 ? [] : [lines(plan.remarks.map(remarkText))]),
        said('target'),
      ],
    },
    { part: 'target', title: filled('water'), blocks: [lines(waterTexts(plan.water, f))] },
    {
      part: 'dangers',
      title: filled('dangers'),
      blocks: [
        {
          kind: 'figures',
          rows: plan.dangers.map((danger) => dangerRow(danger, f, plan.target.pressure_bar)),
        },
        said('dangers'),
      ],
    },
    { part: 'emergency', title: filled('emergency'), blocks: [said('emergency')] },
    {
      part: 'places',
      title: filled('places'),
      blocks: [
        {
          kind: 'table',
          head: [filled('reading'), filled('by'), filled('from'), filled('upTo')],
          rows: plan.places.map((place) => placeRow(place, f)),
        },
        said('places'),
      ],
    },
    {
      part: 'places',
      title: filled('instruments'),
      blocks: [
        {
          kind: 'table',
          head: [
            filled('reading'),
            filled('rangeNeeded'),
            filled('stepNeeded'),
            filled('range'),
            filled('step'),
            '',
          ],
          rows: plan.instruments.map((need) => needRow(need, f)),
        },
        lines([...firstStepTexts(plan.firstStep, firstPoints(plan), f), ...leakTexts(plan.leak, f)]),
      ],
    },
    {
      part: 'target',
      title: filled('limits'),
      blocks: [
        {
          kind: 'table',
          head: [filled('limit'), filled('because')],
          rows: plan.limits.map((limit) => [limitText(limit, f), limitReason(limit, f)]),
        },
      ],
    },
    checklist(plan, cautions),
  ];
}

/** The seating is the first point. */
const firstPoints = ({ steps }: Plan): [string, string] => [
  steps.find((s) => s.kind === 'seat')?.number ?? '',
  steps.filter((s) => s.kind === 'first step').at(-1)?.number ?? '',
];

function checklist(plan: Plan, cautions: readonly Caution[]): Section {
  const known = cautionsIn('checklist', cautions).map((c) => c.text);
  return {
    part: 'checklist',
    title: filled('checklist'),
    blocks: [
      {
        kind: 'boxes',
        items: [...known, ...plan.open.map(openText), filled('box zero'), filled('box count')],
      },
      { kind: 'lines', lines: plan.assumed.map(assumedText) },
    ],
  };
}
