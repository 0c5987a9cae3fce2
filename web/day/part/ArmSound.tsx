/** The sound is armed by hearing it, before the first pressure. */
import { useState } from 'react';
import { say } from '../../words/day/say.ts';
import { useDay } from '../state/live.ts';
import { give, tell, useName } from '../state/orders.ts';
import { heard, tryTones, useSound } from '../state/sound.ts';

export function ArmSound() {
  const armed = useSound((s) => s.armed);
  const [asking, setAsking] = useState(false);
  const role = useDay((d) => d.role);
  const by = useName();
  if (armed) return null;
  if (!asking)
    return (
      <button
        type="button"
        className="key"
        data-act="arm"
        onClick={() => {
          setAsking(true);
          void tryTones();
        }}
      >
        {say('arm')}
      </button>
    );
  const answer = (yes: boolean): void => {
    setAsking(false);
    heard(yes);
    if (!yes) tell(say('armNoDo'));
    else if (role !== 'viewer') void give({ order: 'sound armed', by });
  };
  return (
    <span className="arm-ask" role="group" aria-label={say('armAsk')}>
      <span>{say('armAsk')}</span>
      <button type="button" className="key" data-act="heard" onClick={() => answer(true)}>
        {say('armYes')}
      </button>
      <button type="button" className="key" data-act="not heard" onClick={() => answer(false)}>
        {say('armNo')}
      </button>
    </span>
  );
}
