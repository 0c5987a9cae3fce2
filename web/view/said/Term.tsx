/** A term that opens its sentence, its formula and its source. */
import { lazy, Suspense, useRef, useState } from 'react';
import { useManner } from '../../state/manner.ts';
import { termOf, type TermName } from '../../words/glossary.ts';
import { words } from '../../words/say.ts';

// Boxes beside a word are a fifth of what the page would load first, and most openings of the page need none.
const Meaning = lazy(() => import('./Meaning.tsx').then((m) => ({ default: m.Meaning })));

export function Term({ name, children }: { readonly name: TermName; readonly children?: string }) {
  const { decimal } = useManner();
  const button = useRef<HTMLButtonElement>(null);
  const [open, setOpen] = useState(false);
  const written = termOf(name);
  // A percentage takes the reader's decimal mark; the Rp0.2 of the standards is a name and keeps its own.
  const marked = (text: string): string => text.replace(/(\d)\.(\d+ %)/g, `$1${decimal}$2`);
  const entry = { ...written, term: marked(written.term), sentence: marked(written.sentence) };
  const shown = children ?? entry.term;
  return (
    <>
      <button
        ref={button}
        type="button"
        className="term"
        aria-label={words('glossaryOpen', { term: shown })}
        aria-haspopup="dialog"
        aria-expanded={open}
        onClick={() => setOpen(true)}
      >
        {shown}
      </button>
      {open ? (
        <Suspense>
          <Meaning entry={entry} beside={button} onClose={() => setOpen(false)} />
        </Suspense>
      ) : null}
    </>
  );
}
