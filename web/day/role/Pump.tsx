/** The pump's screen: last order, pressure, target, strokes to it. Nothing else, and all of it huge. */
import { fixed } from '@hoopwright/report/figure';
import { useManner } from '../../state/manner.ts';
import { say } from '../../words/day/say.ts';
import { Frame } from '../part/Frame.tsx';
import { ArmSound } from '../part/ArmSound.tsx';
import { BigFigure } from '../part/BigFigure.tsx';
import { ageText, pressureFigure } from '../said/figures.ts';
import { useNow } from '../state/clock.ts';
import { useDay } from '../state/live.ts';
import { type PumpOrder, pumpOrder } from '../tells/pumpOrder.ts';

export function Pump() {
  const state = useDay((d) => d.state);
  const link = useDay((d) => d.link);
  const now = useNow();
  const manner = useManner();
  if (state === undefined) return null;
  const order = pumpOrder(state, now, link);
  return (
    <Frame screen="pump">
      <main className="pump" data-order={order.word}>
        <section className="pump-order">
          <h1 role="status">
            <span className="word">{say(`order ${order.word}`)}</span>
          </h1>
          <p>{whyOf(order)}</p>
          <p className="age">
            {state.step === undefined
              ? null
              : say('pumpSaid', {
                  age: ageText((now - state.step.begun_ms) / 1000),
                  step: state.step.number,
                })}
          </p>
        </section>
        <div className="pump-figures">
          <BigFigure
            name="pressure"
            label={say('pressure')}
            now={state.figures.pressure}
            figure={(value) => pressureFigure(manner, value)}
          />
          <Target order={order} />
          <Strokes order={order} />
        </div>
        <div className="keys">
          <ArmSound />
        </div>
      </main>
    </Frame>
  );
}

function Target({ order: { target_bar } }: { readonly order: PumpOrder }) {
  const manner = useManner();
  const shown = target_bar === undefined ? undefined : pressureFigure(manner, target_bar);
  return (
    <div className="big-figure" data-figure="target">
      <span className="label">{say('target')}</span>
      <span className="number">
        {shown === undefined ? '–' : shown.text}
        <span className="unit">{shown?.unit}</span>
      </span>
    </div>
  );
}

function Strokes({ order: { strokes, word } }: { readonly order: PumpOrder }) {
  const manner = useManner();
  const count = (value: number): string => fixed(manner, value, 0);
  if (word !== 'pump') return null;
  return (
    <div className="big-figure" data-figure="strokes">
      <span className="label">{say('strokesTo')}</span>
      <span className="number">{strokes === undefined ? '–' : count(strokes.value)}</span>
      <span className="age">
        {strokes === undefined
          ? say('strokesUnknown')
          : strokes.low === undefined || strokes.high === undefined
            ? null
            : say('strokesRange', { low: count(strokes.low), high: count(strokes.high) })}
      </span>
    </div>
  );
}

function whyOf({ word, because }: PumpOrder): string {
  if (because === 'link') return say('orderLinkWhy');
  if (because === 'broken off') return say('orderHoldWhy');
  if (because === 'old') return say('orderOldWhy');
  return say(WHY[word]);
}

const WHY = {
  wait: 'orderWaitWhy',
  pump: 'orderPumpWhy',
  keep: 'orderKeepWhy',
  shut: 'orderShutWhy',
  'let down': 'orderLetDownWhy',
  release: 'orderReleaseWhy',
  hold: 'orderHoldWhy',
  stop: 'orderStopWhy',
  read: 'orderReadWhy',
  ended: 'orderEndedWhy',
} as const;
