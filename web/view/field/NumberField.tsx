/**
 * A number with its unit, typed as people type: read back beside the field as soon as it is understood, asked about where
 * it may mean two things, answered with a sentence where it means none.
 */
import type { Manner } from '@hoopwright/report/figure';
import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import { useManner } from '../../state/manner.ts';
import { type Kind, shownText, understand, type Understood, unitOf } from '../../state/file/stated.ts';
import type { TermName } from '../../words/glossary.ts';
import { words } from '../../words/say.ts';
import { Term } from '../said/Term.tsx';

export interface NumberFieldProps {
  readonly label: string;
  /** Opens what the label means. */
  readonly term?: TermName;
  readonly kind: Kind;
  /** In file units; undefined: nothing is stated. */
  readonly value: number | undefined;
  /** What is against the value though it can be read. */
  readonly against?: string | undefined;
  /** Where nothing need be stated: what is taken then. */
  readonly otherwise?: string;
  readonly onValue: (value: number | undefined) => void;
  readonly onFault?: (sentence: string | undefined) => void;
  /** The person has come to the field. */
  readonly onBegin?: () => void;
  readonly onDone?: (kept: boolean) => void;
  readonly grabsFocus?: boolean;
}

export function NumberField(props: NumberFieldProps) {
  const { label, term, kind, value, against, otherwise, onValue, onFault, onBegin, onDone, grabsFocus } =
    props;
  const manner = useManner();
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [typed, setTyped] = useState<string>();
  const began = useRef(value);
  useEffect(() => {
    if (grabsFocus === true) input.current?.select();
  }, [grabsFocus]);
  const faultTo = useRef(onFault);
  faultTo.current = onFault;
  // What could not be read goes with its field: nothing would be left to mend.
  useEffect(() => () => faultTo.current?.(undefined), []);
  const shown = typed ?? (value === undefined ? '' : shownText(manner, kind, value));
  const meant = typed === undefined ? undefined : meaning(manner, kind, typed, otherwise);
  const fault =
    meant?.kind === 'fault' ? meant.sentence : meant?.kind === 'asked' ? words('askedFault') : undefined;
  const { unit } = unitOf(manner, kind);

  const type = (text: string): void => {
    setTyped(text);
    const now = meaning(manner, kind, text, otherwise);
    onFault?.(now.kind === 'fault' ? now.sentence : now.kind === 'asked' ? words('askedFault') : undefined);
    if (now.kind === 'value') onValue(now.value);
    if (now.kind === 'nothing') onValue(undefined);
  };
  const choose = (chosen: number): void => {
    onFault?.(undefined);
    onValue(chosen);
    setTyped(undefined);
    input.current?.focus();
  };
  const leave = (): void => {
    if (meant?.kind === 'fault' || meant?.kind === 'asked') return;
    setTyped(undefined);
    onDone?.(true);
  };
  const key = (event: KeyboardEvent): void => {
    if (event.key === 'Enter' && fault === undefined) {
      setTyped(undefined);
      onDone?.(true);
    }
    if (event.key !== 'Escape') return;
    event.stopPropagation();
    onFault?.(undefined);
    // A text that could not be read has changed nothing: what is drawn stands.
    if (value !== began.current) onValue(began.current);
    setTyped(undefined);
    onDone?.(false);
  };

  return (
    <div className={`field${fault === undefined && against === undefined ? '' : ' faulty'}`}>
      {term === undefined ? <label htmlFor={id}>{label}</label> : <Term name={term}>{label}</Term>}
      <span className="entry">
        <input
          ref={input}
          id={id}
          {...(term === undefined ? {} : { 'aria-label': label })}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          spellCheck={false}
          value={shown}
          placeholder={otherwise}
          aria-invalid={fault !== undefined || against !== undefined}
          aria-describedby={`${id}-says`}
          onFocus={() => {
            began.current = value;
            onBegin?.();
          }}
          onChange={(event) => type(event.target.value)}
          onKeyDown={key}
          onBlur={leave}
        />
        {unit === '' ? null : <span className="unit">{unit}</span>}
      </span>
      <span className="says" id={`${id}-says`} aria-live="polite">
        {meant?.kind === 'value' ? (
          <span className="read-back">{words('readBack', { value: meant.readBack })}</span>
        ) : null}
        {meant?.kind === 'asked' ? <Choices choices={meant.choices} onChoice={choose} /> : null}
        {meant?.kind === 'fault' ? <span className="fault">{meant.sentence}</span> : null}
        {fault === undefined && against !== undefined ? <span className="fault">{against}</span> : null}
      </span>
    </div>
  );
}

type Meaning = Understood | { readonly kind: 'nothing' };

const meaning = (manner: Manner, kind: Kind, text: string, otherwise: string | undefined): Meaning =>
  text.trim() === '' && otherwise !== undefined ? { kind: 'nothing' } : understand(manner, kind, text);

interface ChoicesProps {
  readonly choices: Extract<Understood, { kind: 'asked' }>['choices'];
  readonly onChoice: (value: number) => void;
}

function Choices({ choices, onChoice }: ChoicesProps) {
  return (
    <span className="asked">
      {words('askedWhich')}
      {choices.map(({ value, readBack }) => (
        <button
          key={readBack}
          type="button"
          onMouseDown={(e) => e.preventDefault()}
          onClick={() => onChoice(value)}
        >
          {readBack}
        </button>
      ))}
    </span>
  );
}
