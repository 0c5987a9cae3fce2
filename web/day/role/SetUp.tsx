/** Before and after, at no pressure: what is still to measure, where it is, and what was found. */
import type { Measure } from '@hoopwright/wire/day';
import { useState } from 'react';
import { useManner } from '../../state/manner.ts';
import { say } from '../../words/day/say.ts';
import { DayTank } from '../chart/DayTank.tsx';
import { MeasureForm } from '../entry/MeasureForm.tsx';
import { growthText, pressureText } from '../said/figures.ts';
import { measureText, promptText } from '../said/measures.ts';
import { useDay } from '../state/live.ts';
import { measured, nextPrompt, type Prompt, promptsOf } from '../tells/measures.ts';

export function SetUp({ mayAct }: { readonly mayAct: boolean }) {
  const state = useDay((d) => d.state);
  const [chosen, setChosen] = useState<Prompt>();
  if (state === undefined) return null;
  const late = state.phase === 'after' || state.phase === 'ended';
  const when: Measure['when'] = late ? 'after' : 'before';
  const prompt = chosen ?? nextPrompt(state, when);
  const asked = prompt ?? promptsOf(state)[0];
  return (
    <div className="set-up">
      <DayTank place={prompt?.place} />
      <section className="measures" aria-label={say('measuresTitle')}>
        <h2>{say(late ? 'measuresAfter' : 'measuresBefore')}</h2>
        {state.follows === undefined ? null : <Stretched />}
        <Table chosen={prompt} />
      </section>
      {mayAct ? (
        <section className="measure-form">
          <MeasureForm
            key={`${asked.what} ${asked.place ?? ''} ${when}`}
            prompt={asked}
            all={promptsOf(state)}
            when={when}
            done={prompt === undefined}
            onChoose={setChosen}
            onWritten={() => setChosen(undefined)}
          />
        </section>
      ) : null}
    </div>
  );
}

/** What an earlier day left: it changes what is foreseen. */
function Stretched() {
  const follows = useDay((d) => d.state?.follows);
  const manner = useManner();
  if (follows === undefined) return null;
  const pressure = pressureText(manner, follows.highest_bar);
  const left = Object.entries(follows.left_percent ?? {}).map(([name, percent]) =>
    say('growthOf', { name, growth: growthText(manner, percent) }),
  );
  return (
    <p className="quiet" data-follows={follows.record}>
      {left.length === 0
        ? say('follows', { pressure })
        : say('followsLeft', { pressure, left: left.join(', ') })}
    </p>
  );
}

export function Table({ chosen }: { readonly chosen: Prompt | undefined }) {
  const state = useDay((d) => d.state);
  const manner = useManner();
  if (state === undefined) return null;
  return (
    <table className="figures measures-table">
      <caption className="unseen">{say('measuresTitle')}</caption>
      <thead>
        <tr>
          <th scope="col">{say('colWhat')}</th>
          <th scope="col">{say('colBefore')}</th>
          <th scope="col">{say('colAfter')}</th>
        </tr>
      </thead>
      <tbody>
        {promptsOf(state).map((prompt) => {
          const here = chosen?.what === prompt.what && chosen.place === prompt.place;
          const [before, after] = (['before', 'after'] as const).map((when) => measured(state, prompt, when));
          return (
            <tr key={`${prompt.what} ${prompt.place ?? ''}`} className={here ? 'here' : ''}>
              <th scope="row">{promptText(prompt)}</th>
              <td title={before === undefined ? '' : `${before.by}, ${before.with}`}>
                {measureText(before, manner)}
              </td>
              <td title={after === undefined ? '' : `${after.by}, ${after.with}`}>
                {measureText(after, manner)}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
