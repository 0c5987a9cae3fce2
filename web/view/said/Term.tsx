/** A term that opens its sentence, its formula and its source. */
import { Button, Dialog, DialogTrigger, Popover } from 'react-aria-components';
import { useManner } from '../../state/manner.ts';
import { termOf, type TermName } from '../../words/glossary.ts';
import { words } from '../../words/say.ts';

export function Term({ name, children }: { readonly name: TermName; readonly children?: string }) {
  const { decimal } = useManner();
  const { formula, source, ...written } = termOf(name);
  // A percentage takes the reader's decimal mark; the Rp0.2 of the standards is a name and keeps its own.
  const marked = (text: string): string => text.replace(/(\d)\.(\d+ %)/g, `$1${decimal}$2`);
  const [term, sentence] = [marked(written.term), marked(written.sentence)];
  return (
    <DialogTrigger>
      <Button className="term" aria-label={words('glossaryOpen', { term: children ?? term })}>
        {children ?? term}
      </Button>
      <Popover className="meaning" placement="bottom start">
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
    </DialogTrigger>
  );
}
