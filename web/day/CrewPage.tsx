/** Which of the crew's pages this window shows. */
import { useEffect } from 'react';
import { say } from '../words/day/say.ts';
import { DaysPage } from './days/DaysPage.tsx';
import { Director } from './role/Director.tsx';
import { NoteTaker } from './role/NoteTaker.tsx';
import { Pump } from './role/Pump.tsx';
import { Replay } from './role/Replay.tsx';
import { Viewer } from './role/Viewer.tsx';
import { follow, useDay } from './state/live.ts';
import { usePlace } from './state/place.ts';

export function CrewPage() {
  const { record, replay } = usePlace();
  if (record === undefined) return <DaysPage />;
  return replay ? <Replay record={record} /> : <Day record={record} />;
}

function Day({ record }: { readonly record: string }) {
  useEffect(() => follow(record), [record]);
  const link = useDay((d) => d.link);
  const there = useDay((d) => d.state !== undefined && d.record === record);
  const why = useDay((d) => d.why);
  if (link === 'refused')
    return (
      <main className="crew-opening">
        {/access/.test(why ?? '') ? say('noAccess') : say('notThere', { why: why ?? '' })}
      </main>
    );
  if (!there) return <main className="crew-opening">{say(link === 'lost' ? 'unreachable' : 'opening')}</main>;
  return <Screen />;
}

/** At the laptop the screen that was chosen; elsewhere that of the link. */
function Screen() {
  const chosen = usePlace((p) => p.screen);
  const role = useDay((d) => d.role);
  const own = useDay((d) => d.own);
  switch (own ? (chosen ?? role) : role) {
    case 'director':
      return <Director />;
    case 'note taker':
      return <NoteTaker />;
    case 'pump':
      return <Pump />;
    case 'viewer':
      return <Viewer />;
  }
}
