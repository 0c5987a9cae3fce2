/** Links to the papers and the text of a frozen plan, in the units of this person. */
import type { Manner } from '@hoopwright/report/figure';
import { useManner } from '../../state/manner.ts';
import { words } from '../../words/say.ts';

export const SIZES = ['A4', 'Letter'] as const;

export const paperQuery = (size: (typeof SIZES)[number], { units, decimal }: Manner): string =>
  `size=${size}&units=${units}${decimal === ',' ? '&decimal=comma' : ''}`;

interface PapersProps {
  readonly project: string;
  readonly line: { readonly digest: string; readonly revision: string };
}

export function Papers({ project, line: { digest, revision } }: PapersProps) {
  const manner = useManner();
  const at = `/api/projects/${project}/plans/${digest}`;
  return (
    <span className="papers">
      {SIZES.map((size) => (
        <a
          key={size}
          href={`${at}/paper?${paperQuery(size, manner)}`}
          download
          aria-label={words('frozenPaperNamed', { revision, size })}
        >
          {words('frozenPaper', { size })}
        </a>
      ))}
      <a href={`${at}/file`} download aria-label={words('frozenFileNamed', { revision })}>
        {words('frozenFile')}
      </a>
    </span>
  );
}
