/** What a term means, in a box beside it; fetched when the first term is opened. */
import type { RefObject } from 'react';
import { Dialog, Popover } from 'react-aria-components';
import type { Term } from '../../words/glossary.ts';
import { words } from '../../words/say.ts';

export interface MeaningProps {
  /** In the reader's decimal mark. */
  readonly entry: Term;
  readonly beside: RefObject<HTMLElement | null>;
  readonly onClose: () => void;
}

export function Meaning({ entry: { term, sentence, formula, source }, beside, onClose }: MeaningProps) {
  return (
    <Popover
      className="meaning"
      placement="bottom start"
      triggerRef={beside}
      isOpen
      onOpenChange={(open) => open || onClose()}
    >
      <Dialog aria-label={term}>
        <p>
          <strong>{term}</strong>
        </p>
        <p>{sentence}</p>
        {formula === undefined ? null : (
          <p>
            <span className="small">{words('glossaryFormula')}</span>{' '}
            <span className="formula">{formula}</span>
          </p>
        )}
        <p className="small">
          {words('glossarySource')}: {source}
        </p>
      </Dialog>
    </Popover>
  );
}
