/** One word of state, large, its first reason under it, later causes under that. Shape and place tell the words apart. */
import type { Cause } from '@hoopwright/wire/day';
import { useManner } from '../../state/manner.ts';
import { say } from '../../words/day/say.ts';
import { clockText } from '../said/figures.ts';
import { reasonText } from '../said/reasons.ts';
import { useNow, useSilence } from '../state/clock.ts';
import { useDay } from '../state/live.ts';
import { type Reason, type Spoken, type Word, wordOf } from '../tells/word.ts';
import { Silence } from './Silence.tsx';

/** @param mayAct the director's screen, on which a cause can be acknowledged */
export function StateWord({ mayAct = false }: { readonly mayAct?: boolean }) {
  const state = useDay((d) => d.state);
  const link = useDay((d) => d.link);
  const now_ms = useNow();
  const silence_s = useSilence();
  const manner = useManner();
  if (state === undefined) return null;
  const spoken = wordOf(state, now_ms, link);
  const [first, ...later] = spoken.reasons;
  const text = (reason: Reason): string => reasonText(reason, state, manner, { now_ms, silence_s });
  const loud = state.causes.filter(({ acknowledged }) => acknowledged === undefined);
  return (
    <section className="state-word" data-word={spoken.word} aria-label={say('stateTitle')}>
      <h1 role="status">
        <span className="word">{wordText(spoken, state.end?.name)}</span>
      </h1>
      <div className="reasons">
        {first === undefined ? null : (
          <p className="first-reason" role={isAlarm(spoken.word) ? 'alert' : undefined}>
            {text(first)}
            {first.kind === 'cause' ? <CauseAt cause={first.cause} /> : null}
          </p>
        )}
        {later.length === 0 ? null : (
          <ol className="later">
            {later.slice(0, MOST).map((reason, i) => (
              <li key={i}>
                {text(reason)}
                {reason.kind === 'cause' ? <CauseAt cause={reason.cause} /> : null}
              </li>
            ))}
          </ol>
        )}
      </div>
      {mayAct && loud.length > 0 ? <Silence causes={loud} /> : null}
    </section>
  );
}

/** Later causes beside the first; the rest stands behind the key. */
const MOST = 2;

const isAlarm = (word: Word): boolean =>
  word === 'stop and release' || word === 'bleed again' || word === 'broken off';

const wordText = ({ word }: Spoken, end: 'done' | 'broken off' | 'leaked' | 'burst' | undefined): string =>
  word === 'ended' ? say('word ended', { end: say(`end ${end ?? 'broken off'}`) }) : say(`word ${word}`);

const CauseAt = ({ cause }: { readonly cause: Cause }) => (
  <span className="at"> {say('causeAt', { time: clockText(cause.wall_ms), step: cause.step })}</span>
);
