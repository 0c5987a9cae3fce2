/** What the tests say of the steel, as lines of plain text. */
import {
  type Account,
  type Belief,
  curveRange,
  type Range,
  rangeOf,
  type SteelDraw,
} from '@hoopwright/core/steel';
import type { StretchRange } from '@hoopwright/core/stretch';
import type { RollingSaid, SeamSaid } from '@hoopwright/wire/evidence';
import { rangeFile } from '@hoopwright/wire/forecast';
import { seamText } from '../coupon/words.ts';
import { fixed, say } from '../figure/figure.ts';
import { type Manner, USUAL_MANNER } from '../figure/manner.ts';
import { survival } from '../answer/range.ts';
import { STEEL_ENGLISH, type SteelSentence } from './english.ts';
import { filled } from './filled.ts';
import { booksText } from './books.ts';
import { quickText } from './quick.ts';
import { rollingText } from './rolling.ts';

export interface SteelSubject {
  readonly tank: string;
  /** Nominal wall, mm. */
  readonly wall: number;
  readonly belief: Belief;
  /** Absent where nothing is rolled. */
  readonly rolling?: RollingSaid;
  readonly seams?: readonly SeamSaid[];
  /** °C; absent without a heat analysis. */
  readonly md30?: number;
  readonly stretch?: StretchRange;
}

/** Plastic strains at which the curve is told. */
const TOLD = [0.002, 0.01, 0.02, 0.05, 0.1, 0.2, 0.4];

export const steelText = (subject: SteelSubject, manner: Manner = USUAL_MANNER): string[] => {
  const { belief, rolling, seams = [], tank, wall, stretch } = subject;
  const { grade, form } = belief.evidence.plate;
  const { draws } = belief;
  const three = (
    key: SteelSentence,
    read: (draw: SteelDraw) => number,
    text: (x: number) => string,
  ): string => {
    const { median, wide } = rangeOf(draws.map(read));
    return filled(key, { median: text(median), low: text(wide[0]), high: text(wide[1]) });
  };
  const ratio = (x: number): string => fixed(manner, x, 3);
  return [
    filled('heading', { tank }),
    filled('curve', { rate: String(draws[0].rate.reference) }),
    ...curveRange(draws, TOLD).map(({ plastic, stress }) => curveRow(plastic, stress, manner)),
    three('biaxial', (draw) => draw.biaxialFactor, ratio),
    three(
      'rate',
      (draw) => draw.rate.perEfold,
      (x) => fixed(manner, x, 1),
    ),
    three(
      'wall',
      (draw) => wall * draw.wallFactor,
      (x) => say(manner, 'wall', x),
    ),
    three('seam', (draw) => draw.seamStrength, ratio),
    three(
      'coldWork',
      (draw) => draw.coldWork,
      (x) => say(manner, 'strain', x),
    ),
    ...(rolling === undefined ? [] : [rollingText(rolling, manner)]),
    STEEL_ENGLISH.evidence,
    ...belief.account.map((piece) => accountText(piece, manner)),
    ...seams.map(({ name, seam }) => filled('seamTest', { name, says: seamText(seam, manner) })),
    ...booksText(grade, form, manner),
    ...(subject.md30 === undefined ? [] : [filled('md30', { value: fixed(manner, subject.md30, 0) })]),
    ...(stretch === undefined ? [STEEL_ENGLISH.noStretch] : stretchText(stretch, manner)),
    STEEL_ENGLISH.proves,
  ];
};

function curveRow(plastic: number, { median, half, wide }: Range, manner: Manner): string {
  const stress = (x: number): string => say(manner, 'stress', x);
  return filled('curveRow', {
    strain: say(manner, 'strain', plastic),
    median: stress(median),
    halfLow: stress(half[0]),
    halfHigh: stress(half[1]),
    low: stress(wide[0]),
    high: stress(wide[1]),
  });
}

/** Under this chance a piece of evidence is said to contradict the rest. */
const DISAGREES = 0.05;
const DOUBTFUL = 0.2;

/** One piece of evidence, or what was assumed for want of it. */
export function accountText(piece: Account, manner: Manner = USUAL_MANNER): string {
  switch (piece.kind) {
    case 'excluded':
      return filled('excluded', { name: piece.name, reason: piece.reason });
    case 'assumed':
      return filled('assumed', { what: piece.what, reason: piece.reason });
    case 'counted': {
      const { name, of, doubt = 0, agreement = 1 } = piece;
      return [
        filled(`counted ${of}`, { name }),
        ...(doubt > DOUBTFUL ? [filled('doubt', { share: say(manner, 'share', doubt) })] : []),
        ...(agreement < DISAGREES
          ? [filled('disagrees', { share: say(manner, 'share', 1 - agreement) })]
          : []),
      ].join(' ');
    }
  }
}

function stretchText(stretch: StretchRange, manner: Manner): string[] {
  const { settled, next } = stretch;
  const { growth, bursts, shares, unexplained } = settled;
  const percent = (x: number): string => say(manner, 'growth', x);
  const list = [...shares, { name: STEEL_ENGLISH.together, share: unexplained }]
    .map(({ name, share }) => filled('owesOne', { name, share: say(manner, 'share', share) }))
    .join(', ');
  const [first] = next;
  return [
    Number.isFinite(growth.wide[1])
      ? filled('growth', {
          low: percent(growth.wide[0]),
          median: percent(growth.median),
          high: percent(growth.wide[1]),
        })
      : filled('growthBurst', {
          share: say(manner, 'share', bursts),
          median: Number.isFinite(growth.median) ? percent(growth.median) : '–',
        }),
    survival(stretch, manner).join(' '),
    filled('owes', { list }),
    ...(first === undefined
      ? []
      : [filled('next', { measure: first.measure, share: say(manner, 'share', first.width) })]),
    quickText(rangeFile(stretch), manner),
  ];
}
