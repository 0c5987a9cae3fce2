/** Stop is silenced only by a deliberate press: held down until a bar has filled, with finger or key. */
import type { Cause } from '@hoopwright/wire/day';
import { useEffect, useRef, useState } from 'react';
import { useManner } from '../../state/manner.ts';
import { say } from '../../words/day/say.ts';
import { causeText } from '../said/reasons.ts';
import { useDay } from '../state/live.ts';
import { give, useName } from '../state/orders.ts';
import { silence } from '../state/sound.ts';

/** ms that the key is held. */
export const HELD = 1000;

/** Acknowledges the oldest cause first: each wants a press of its own. */
export function Silence({ causes }: { readonly causes: readonly Cause[] }) {
  const by = useName();
  const manner = useManner();
  const [first] = causes;
  const done = (): void => {
    silence([first]);
    if (useDay.getState().role === 'director') void give({ order: 'acknowledge', by, cause: first.seq });
  };
  return (
    <HeldKey
      key={first.seq}
      onHeld={done}
      label={say('silence')}
      named={say('silenceNamed', { cause: causeText(first, manner) })}
    />
  );
}

interface HeldKeyProps {
  readonly label: string;
  readonly named: string;
  readonly onHeld: () => void;
}

export function HeldKey({ label, named, onHeld }: HeldKeyProps) {
  const [down, setDown] = useState(false);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const up = (): void => {
    clearTimeout(timer.current);
    timer.current = undefined;
    setDown(false);
  };
  const press = (): void => {
    if (timer.current !== undefined) return;
    setDown(true);
    timer.current = setTimeout(() => {
      up();
      onHeld();
    }, HELD);
  };
  useEffect(() => () => clearTimeout(timer.current), []);
  return (
    <button
      type="button"
      className={`key held${down ? ' down' : ''}`}
      aria-label={named}
      onPointerDown={press}
      onPointerUp={up}
      onPointerLeave={up}
      onPointerCancel={up}
      onContextMenu={(event) => event.preventDefault()}
      onKeyDown={(event) => {
        if (event.key === 'Enter' || event.key === ' ') {
          event.preventDefault();
          press();
        }
      }}
      onKeyUp={up}
      onBlur={up}
    >
      {label}
    </button>
  );
}
