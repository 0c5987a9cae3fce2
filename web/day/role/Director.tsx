/** The director's screen: state, three numbers, curve, tank, this step and the next, keys; the rest behind one key. */
import { useState } from 'react';
import { useManner } from '../../state/manner.ts';
import { say } from '../../words/day/say.ts';
import { DayCurve } from '../chart/DayCurve.tsx';
import { DayTank } from '../chart/DayTank.tsx';
import { Frame } from '../part/Frame.tsx';
import { ArmSound } from '../part/ArmSound.tsx';
import { HeadToCopy } from '../part/Head.tsx';
import { Keys } from '../part/Keys.tsx';
import { StateWord } from '../part/StateWord.tsx';
import { Steps } from '../part/Steps.tsx';
import { ThreeFigures } from '../part/ThreeFigures.tsx';
import { useNow } from '../state/clock.ts';
import { useDay } from '../state/live.ts';
import { useName } from '../state/orders.ts';
import { useSound } from '../state/sound.ts';
import { wordOf } from '../tells/word.ts';
import { useConfirmStep } from './ConfirmStep.tsx';
import { deedsOf } from './deeds.tsx';
import { useEnd } from './EndDay.tsx';
import { More } from './More.tsx';
import { SetUp } from './SetUp.tsx';

export function Director() {
  const [more, setMore] = useState(false);
  const phase = useDay((d) => d.state?.phase);
  const early = phase === 'set up' || phase === 'before';
  return (
    <Frame screen="director">
      <main className="director" data-phase={phase}>
        <StateWord mayAct />
        <ThreeFigures />
        {more ? <More mayAct /> : early || phase === 'after' ? <SetUp mayAct /> : <Middle />}
        {more ? null : <HeadToCopy />}
        <DirectorKeys more={more} onMore={setMore} />
      </main>
    </Frame>
  );
}

export const Middle = () => (
  <div className="middle">
    <DayCurve />
    <DayTank />
    <Steps />
  </div>
);

interface DirectorKeysProps {
  readonly more: boolean;
  readonly onMore: (more: boolean) => void;
}

function DirectorKeys({ more, onMore }: DirectorKeysProps) {
  const state = useDay((d) => d.state);
  const link = useDay((d) => d.link);
  const now = useNow();
  const by = useName();
  const manner = useManner();
  const armed = useSound((s) => s.armed);
  const confirm = useConfirmStep();
  const end = useEnd();
  if (state === undefined) return null;
  const spoken = wordOf(state, now, link);
  const deeds = [confirm, ...deedsOf({ state, spoken, armed, by, manner }), end].filter(
    (deed) => deed !== undefined,
  );
  return (
    <Keys deeds={deeds}>
      <ArmSound />
      <button
        type="button"
        className="key more"
        aria-expanded={more}
        data-act="more"
        onClick={() => onMore(!more)}
      >
        {say(more ? 'less' : 'more')}
      </button>
    </Keys>
  );
}
