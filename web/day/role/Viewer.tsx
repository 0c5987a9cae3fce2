/** A viewer reads: the director's screen without a key that writes. */
import { useState } from 'react';
import { say } from '../../words/day/say.ts';
import { Frame } from '../part/Frame.tsx';
import { ArmSound } from '../part/ArmSound.tsx';
import { StateWord } from '../part/StateWord.tsx';
import { ThreeFigures } from '../part/ThreeFigures.tsx';
import { Middle } from './Director.tsx';
import { More } from './More.tsx';

export function Viewer() {
  const [more, setMore] = useState(false);
  return (
    <Frame screen="viewer">
      <main className="director">
        <StateWord />
        <ThreeFigures />
        {more ? <More mayAct={false} /> : <Middle />}
        <div className="keys" role="group">
          <ArmSound />
          <button
            type="button"
            className="key more"
            aria-expanded={more}
            data-act="more"
            onClick={() => setMore(!more)}
          >
            {say(more ? 'less' : 'more')}
          </button>
        </div>
      </main>
    </Frame>
  );
}
