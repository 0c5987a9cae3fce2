/** A record as it stood, with a slider over its time. */
import { useEffect, useRef, useState } from 'react';
import { say } from '../../words/day/say.ts';
import { Frame } from '../part/Frame.tsx';
import { StateWord } from '../part/StateWord.tsx';
import { ThreeFigures } from '../part/ThreeFigures.tsx';
import { durationText } from '../said/figures.ts';
import { dayServer } from '../state/api.ts';
import { take, useDay } from '../state/live.ts';
import { Middle } from './Director.tsx';
import { More } from './More.tsx';

/** Times real time at which a replay plays. */
const SPEED = 60;
const TICK = 200;
/** ms of one step of the slider. */
const STEP = 1000;

export function Replay({ record }: { readonly record: string }) {
  const [span, setSpan] = useState<{ readonly from: number; readonly to: number }>();
  const [at, setAt] = useState(0);
  const [playing, setPlaying] = useState(false);
  const [more, setMore] = useState(false);
  const fetching = useRef<AbortController | undefined>(undefined);
  useEffect(() => {
    useDay.setState({ record, link: 'opening', state: undefined });
    void opened(record).then(setSpan);
  }, [record]);
  useEffect(() => {
    if (span === undefined) return;
    fetching.current?.abort();
    const mine = new AbortController();
    fetching.current = mine;
    dayServer.asItStood(record, span.from + at, mine.signal).then(
      (snapshot) => take(snapshot, true),
      () => undefined,
    );
  }, [record, span, at]);
  useEffect(() => {
    if (!playing || span === undefined) return undefined;
    const timer = setInterval(() => setAt((now) => Math.min(span.to - span.from, now + SPEED * TICK)), TICK);
    return () => clearInterval(timer);
  }, [playing, span]);
  const there = useDay((d) => d.state !== undefined);
  if (span === undefined || !there) return <main className="crew-opening">{say('opening')}</main>;
  const whole = span.to - span.from;
  return (
    <Frame screen="viewer">
      <main className="director">
        <StateWord />
        <ThreeFigures />
        {more ? <More mayAct={false} /> : <Middle />}
        <div className="keys replay-keys" role="group">
          <button type="button" className="key" data-act="play" onClick={() => setPlaying(!playing)}>
            {playing ? say('replayPause') : say('replayPlay', { speed: SPEED })}
          </button>
          <label className="slider">
            <span>
              {say('replayAt', { time: durationText(at / 1000), whole: durationText(whole / 1000) })}
            </span>
            <input
              type="range"
              aria-label={say('replayTime')}
              aria-valuetext={durationText(at / 1000)}
              min={0}
              max={whole}
              step={STEP}
              value={at}
              onChange={(event) => {
                setPlaying(false);
                setAt(Number(event.target.value));
              }}
            />
          </label>
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

async function opened(record: string): Promise<{ readonly from: number; readonly to: number }> {
  const { state } = await dayServer.snapshot(record);
  const from = state.about.began_ms;
  // Whole steps of the slider, so that its last one reaches the last entry.
  return { from, to: from + STEP * Math.max(1, Math.ceil((state.wall_ms - from) / STEP)) };
}
