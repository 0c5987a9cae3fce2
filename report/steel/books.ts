/** What standards promise of a grade and mills deliver, each figure with its source and how sure it is. */
import {
  type Grade,
  minimaOf,
  type Minimum,
  type Physical,
  physicalOf,
  type ProductForm,
  type Sourced,
  strengthenedOf,
  type Typical,
  typicalOf,
} from '@hoopwright/core/steel';
import { fromKgPerM3 } from '@hoopwright/core/units';
import { fixed, say } from '../figure/figure.ts';
import { type Manner, USUAL_MANNER } from '../figure/manner.ts';
import { STEEL_ENGLISH } from './english.ts';
import { filled } from './filled.ts';

/** Lines, the heading first. Where sources differ both stand, and it is said. */
export function booksText(grade: Grade, form: ProductForm, manner: Manner = USUAL_MANNER): string[] {
  const least = minimaOf(grade, form);
  const typical = typicalOf(grade);
  return [
    filled('books', { grade }),
    ...least.map((row) => leastText(row, manner)),
    ...(new Set(least.map(({ proof02 }) => proof02)).size > 1 ? [STEEL_ENGLISH.conflict] : []),
    ...(typical.length === 0 ? [STEEL_ENGLISH.noTypical] : typical.map((row) => typicalText(row, manner))),
    ...physicalOf(grade).map((row) => physicalText(row, manner)),
    ...strengthenedOf(grade).map((row) =>
      filled('strengthened', { value: say(manner, 'stress', row.proof), ...sourceOf(row) }),
    ),
  ];
}

const sourceOf = ({ source, confidence }: Sourced): Record<string, string> => ({
  source,
  confidence: STEEL_ENGLISH[confidence],
});

function leastText(row: Minimum, manner: Manner): string {
  const stress = (value: number): string => say(manner, 'stress', value);
  const { proof10, strength, strengthTo, elongation } = row;
  return filled('least', {
    form: row.form ?? STEEL_ENGLISH.anyForm,
    proof02: stress(row.proof02),
    proof10: proof10 === undefined ? '' : filled('leastProof10', { value: stress(proof10) }),
    strength:
      stress(strength) + (strengthTo === undefined ? '' : filled('upTo', { value: stress(strengthTo) })),
    elongation:
      elongation === undefined ? '' : filled('leastElongation', { value: say(manner, 'share', elongation) }),
    ...sourceOf(row),
  });
}

const typicalText = (row: Typical, manner: Manner): string =>
  filled('typical', {
    form: row.form,
    thickness: `${row.thickness} mm`,
    proof02: say(manner, 'stress', row.proof02),
    proof10: say(manner, 'stress', row.proof10),
    strength: say(manner, 'stress', row.strength),
    ...sourceOf(row),
  });

function physicalText(row: Physical, manner: Manner): string {
  const { young, poisson, density } = row;
  if (young !== undefined) return filled('young', { value: say(manner, 'stress', young), ...sourceOf(row) });
  if (poisson !== undefined) return filled('poisson', { value: fixed(manner, poisson, 2), ...sourceOf(row) });
  return filled('density', { value: fixed(manner, (density ?? 0) / fromKgPerM3(1), 0), ...sourceOf(row) });
}
