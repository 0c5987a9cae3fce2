/** The row of keys. No key acts by one touch: it says first what it will do, and a second key elsewhere does it. */
import { type ReactNode, useEffect, useRef, useState } from 'react';
import { say } from '../../words/day/say.ts';

export interface Deed {
  readonly name: string;
  readonly label: string;
  /** What it will do, in whole sentences. */
  readonly will: string;
  /** What stands against doing it now; it can be done all the same. */
  readonly against?: string | undefined;
  /** It cannot be done now, and why. */
  readonly barred?: string | undefined;
  /** A reason is asked for, with this one to begin with. */
  readonly why?: string;
  /** More that is asked for. */
  readonly more?: ReactNode;
  readonly grave?: boolean;
  /** False keeps the question open: something in it cannot be taken. */
  readonly onDo: (why: string) => Promise<boolean>;
}

export interface KeysProps {
  readonly deeds: readonly Deed[];
  /** Keys that change nothing and act at once. */
  readonly children?: ReactNode;
}

export function Keys({ deeds, children }: KeysProps) {
  const [asked, setAsked] = useState<string>();
  const deed = deeds.find(({ name }) => name === asked);
  if (deed !== undefined) return <Question key={deed.name} deed={deed} onDone={() => setAsked(undefined)} />;
  return (
    <div className="keys" role="group">
      {deeds.map(({ name, label, grave }) => (
        <button
          key={name}
          type="button"
          className={`key${grave === true ? ' grave' : ''}`}
          data-deed={name}
          onClick={() => setAsked(name)}
        >
          {label}
        </button>
      ))}
      {children}
    </div>
  );
}

/** ms in which the second key does nothing: a finger that strikes twice has not decided. */
const DECIDE = 500;

export function Question({ deed, onDone }: { readonly deed: Deed; readonly onDone: () => void }) {
  const { label, will, against, barred, why: first, more, onDo } = deed;
  const [why, setWhy] = useState(first ?? '');
  const [busy, setBusy] = useState(false);
  const [ready, setReady] = useState(false);
  const back = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    back.current?.focus();
    const timer = setTimeout(() => setReady(true), DECIDE);
    return () => clearTimeout(timer);
  }, []);
  const act = async (): Promise<void> => {
    setBusy(true);
    const done = await onDo(why.trim());
    setBusy(false);
    if (done) onDone();
  };
  const missing = first !== undefined && why.trim() === '';
  return (
    <section
      className="question"
      aria-label={label}
      onKeyDown={(event) => {
        if (event.key === 'Escape') onDone();
      }}
    >
      <button type="button" className="key" data-answer="back" ref={back} onClick={onDone}>
        {say('back')}
      </button>
      <div className="asked">
        <p>{will}</p>
        {barred === undefined ? null : <p className="strong">{barred}</p>}
        {against === undefined ? null : <p className="strong">{say('goOnAgainst', { why: against })}</p>}
        {first === undefined ? null : (
          <label className="line-field">
            <span>{say('whyGiven')}</span>
            <input type="text" value={why} maxLength={500} onChange={(event) => setWhy(event.target.value)} />
          </label>
        )}
        {more}
      </div>
      <button
        type="button"
        className="key decide"
        data-answer="yes"
        disabled={!ready || busy || missing || barred !== undefined}
        onClick={() => void act()}
      >
        {busy ? say('sending') : say('doIt', { deed: label })}
      </button>
    </section>
  );
}
