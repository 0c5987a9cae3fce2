/** Around every screen: the thin frame, hatched and with the word where it is no test; who, when, link, sound. */
import type { DayRole } from '@hoopwright/wire/day';
import { type ReactNode, useEffect } from 'react';
import { LOOKS, read, useReading } from '../../state/manner.ts';
import { say } from '../../words/day/say.ts';
import { words } from '../../words/say.ts';
import { ageText, clockText } from '../said/figures.ts';
import { Readying } from './Readying.tsx';
import { useNow, useSilence } from '../state/clock.ts';
import { useDay } from '../state/live.ts';
import { tell, useTold } from '../state/orders.ts';
import { addressOf, goTo } from '../state/place.ts';
import { soundFor, useSound } from '../state/sound.ts';

export interface FrameProps {
  readonly screen: DayRole;
  readonly children: ReactNode;
}

export function Frame({ screen, children }: FrameProps) {
  const kind = useDay((d) => (d.replay ? 'replay' : d.state?.about.kind));
  const causes = useDay((d) => d.state?.causes);
  const replay = useDay((d) => d.replay);
  useEffect(() => {
    if (causes !== undefined && !replay) soundFor(causes);
  }, [causes, replay]);
  return (
    <div className={`crew crew-${screen.replace(' ', '-')}`} data-kind={kind}>
      {kind === 'rehearsal' || kind === 'replay' ? <Hatching kind={kind} /> : null}
      <Strip screen={screen} />
      <Refused />
      {children}
    </div>
  );
}

/** The border says it in hatching, the words say it in letters: at the top and at the foot. */
function Hatching({ kind }: { readonly kind: 'rehearsal' | 'replay' }) {
  const long = say(kind === 'rehearsal' ? 'rehearsalLong' : 'replayLong');
  return (
    <>
      <div className="hatched" aria-hidden="true">
        <i className="edge top" />
        <i className="edge right" />
        <i className="edge bottom" />
        <i className="edge left" />
      </div>
      <p className="hatched-word top">{long}</p>
      <p className="hatched-word bottom" aria-hidden="true">
        {say(`kind ${kind}`)}
      </p>
    </>
  );
}

function Strip({ screen }: { readonly screen: DayRole }) {
  const state = useDay((d) => d.state);
  const now = useNow();
  const link = useDay((d) => d.link);
  const silence = useSilence();
  const title = state?.about.title ?? '';
  return (
    <header className="strip">
      <span className="strong">{say(`role ${screen}`)}</span>
      <Screens screen={screen} />
      <span className="title">{title}</span>
      <Readying />
      <span className="clock">{say('clock', { time: clockText(now) })}</span>
      <span data-link={link} className={link === 'lost' ? 'strong' : ''}>
        {link === 'lost'
          ? `${say('linkLost')} ${ageText(silence)}`
          : say(link === 'closed' ? 'linkClosed' : 'linkUp')}
      </span>
      <SoundState />
      <Looks />
    </header>
  );
}

/** At the laptop every screen may be looked at. */
function Screens({ screen }: { readonly screen: DayRole }) {
  const own = useDay((d) => d.own);
  const replay = useDay((d) => d.replay);
  const record = useDay((d) => d.record);
  if (!own || replay) return null;
  const others = (['director', 'note taker', 'pump', 'viewer'] as const).filter((one) => one !== screen);
  return (
    <nav aria-label={say('screens')}>
      {others.map((one) => (
        <a
          key={one}
          href={addressOf({ record, screen: one, replay: false })}
          onClick={(event) => {
            if (event.metaKey || event.ctrlKey || event.shiftKey) return;
            event.preventDefault();
            goTo({ record, screen: one, replay: false });
          }}
        >
          {say(`role ${one}`)}
        </a>
      ))}
      <a href="/days">{say('allDays')}</a>
    </nav>
  );
}

export function SoundState() {
  const { armed, sounding } = useSound();
  const replay = useDay((d) => d.replay);
  if (replay) return null;
  return (
    <span data-sound={armed ? 'armed' : 'unarmed'} className={armed && !sounding ? '' : 'strong'}>
      {sounding && armed ? say('soundOn') : say(armed ? 'soundArmed' : 'soundUnarmed')}
    </span>
  );
}

export function Looks() {
  const look = useReading((r) => r.look);
  useEffect(() => {
    document.documentElement.dataset['look'] = look;
  }, [look]);
  return (
    <label>
      <span className="unseen">{say('look')}</span>
      <select
        value={look}
        onChange={(event) => read({ look: LOOKS.find((one) => one === event.target.value) ?? 'daylight' })}
      >
        {LOOKS.map((one) => (
          <option key={one} value={one}>
            {words(({ daylight: 'lookDaylight', night: 'lookNight', sun: 'lookSun' } as const)[one])}
          </option>
        ))}
      </select>
    </label>
  );
}

function Refused() {
  const told = useTold((t) => t.told);
  if (told === undefined) return null;
  return (
    <p className="crew-told" role="alert">
      {told}
      <button type="button" className="key" onClick={() => tell(undefined)}>
        {say('less')}
      </button>
    </p>
  );
}
