/** What the sheet holds, each part a link: the way down a long page, and by the keyboard. */
import type { PlanSheet } from '@hoopwright/report/plan';
import type { ReactNode } from 'react';
import { words } from '../../words/say.ts';

interface ContentsProps {
  readonly sheet: PlanSheet | undefined;
  /** Links to what follows the plan itself. */
  readonly children?: ReactNode;
}

export function Contents({ sheet, children }: ContentsProps) {
  return (
    <nav id="contents" aria-label={words('planParts')} className="to-parts">
      {sheet === undefined ? null : (
        <>
          <a href="#steps">{words('planSteps')}</a>
          {sheet.sections.map(({ title }, i) => (
            <a key={title} href={`#${partId(i)}`}>
              {title}
            </a>
          ))}
        </>
      )}
      {children}
    </nav>
  );
}

/** @param place of a section in the plan's sheet */
export const partId = (place: number): string => `part-${place + 1}`;

/** Back to the contents; shown where the page is narrow, and so long. */
export function Back() {
  return (
    <a href="#contents" className="to-contents">
      {words('planToContents')}
    </a>
  );
}
