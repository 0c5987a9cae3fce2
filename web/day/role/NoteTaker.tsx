/** The note taker's screen: where it stands in one line, the row, remarks and photos, what was written. */
import { useState } from 'react';
import { say } from '../../words/day/say.ts';
import { ArmSound } from '../part/ArmSound.tsx';
import { Frame } from '../part/Frame.tsx';
import { HeadToCopy } from '../part/Head.tsx';
import { RemarkForm } from '../entry/Remark.tsx';
import { Row } from '../entry/Row.tsx';
import { Rows } from '../entry/Rows.tsx';
import { StateWord } from '../part/StateWord.tsx';
import { NotNow } from '../part/Steps.tsx';
import { ThreeFigures } from '../part/ThreeFigures.tsx';
import { useDay } from '../state/live.ts';
import { SetUp } from './SetUp.tsx';

export function NoteTaker() {
  const phase = useDay((d) => d.state?.phase);
  // After the release a row may still be half typed: the screen changes only when it is asked to.
  const early = phase === 'set up' || phase === 'before';
  const [measuring, setMeasuring] = useState<boolean>();
  const measures = measuring ?? early;
  return (
    <Frame screen="note taker">
      <main className="note-taker">
        <StateWord />
        <ThreeFigures />
        {measures ? (
          <SetUp mayAct />
        ) : (
          <div className="notes-two">
            <div>
              <Row />
              <NotNow />
            </div>
            <div>
              <RemarkForm />
              <Rows />
            </div>
          </div>
        )}
        <HeadToCopy />
        <div className="keys" role="group">
          <ArmSound />
          <button type="button" className="key" data-act="measures" onClick={() => setMeasuring(!measures)}>
            {say(measures ? 'rowTitle' : 'moreMeasures')}
          </button>
        </div>
      </main>
    </Frame>
  );
}
