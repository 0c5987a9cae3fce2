/** Where in its stretch the tank stands: stops by name, and a handle for everything between. */
import { say, saySigned } from '@hoopwright/report/figure';
import { TIMES } from '@hoopwright/report/drawing';
import { MiniCurve } from '../chart/MiniCurve.tsx';
import { STOPS, type Stop } from '../work/ask.ts';
import { useBoard } from '../state/board.ts';
import { moveHand } from '../state/draw.ts';
import { useManner } from '../state/manner.ts';
import { look, useLooking } from '../state/view.ts';
import { momentOf } from '../work/moment.ts';
import { words } from '../words/say.ts';
import { Choice } from './field/Choice.tsx';

const STOP_WORDS = {
  welded: 'stopWelded',
  under: 'stopUnder',
  left: 'stopLeft',
  maximum: 'stopMaximum',
} as const satisfies Record<Stop, string>;

export function Hand() {
  const cursor = useBoard((b) => b.cursor);
  const drawn = useBoard((b) => b.drawn);
  const manner = useManner();
  if (drawn === undefined) return null;
  const { forecast } = drawn;
  const moment = momentOf(forecast, cursor) ?? forecast.start;
  const stop = cursor.kind === 'stop' ? cursor.stop : 'between';
  return (
    <div className="hand">
      <Choice<Stop | 'between'>
        label={words('hand')}
        value={stop}
        choices={STOPS.filter((one) => one !== 'maximum' || forecast.maximum !== undefined).map((one) => ({
          value: one,
          words: words(STOP_WORDS[one]),
        }))}
        onChoice={(chosen) =>
          chosen === 'between' ? undefined : void moveHand({ kind: 'stop', stop: chosen })
        }
      />
      <MiniCurve forecast={forecast} />
      <p className="at" aria-live="polite">
        {words('handAt', {
          pressure: say(manner, 'pressure', moment.pressure),
          growth: saySigned(manner, 'growth', moment.largest.growth),
          volume: say(manner, 'volume', moment.pumped.all),
        })}
      </p>
    </div>
  );
}

const DRAWN = ['auto', ...TIMES] as const;
const COLOURS = ['none', 'strain', 'wall', 'margin'] as const;
const COLOUR_WORDS = {
  none: 'colourNone',
  strain: 'colourStrain',
  wall: 'colourWall',
  margin: 'colourMargin',
} as const;

export function DrawnHow() {
  const { times, colour } = useLooking();
  return (
    <div className="drawn-how">
      <Choice<(typeof DRAWN)[number]>
        label={words('growthDrawn')}
        value={times ?? 'auto'}
        choices={DRAWN.map((value) => ({
          value,
          words: value === 'auto' ? words('growthAuto') : words('growthTimes', { times: value }),
        }))}
        onChoice={(value) => look({ times: value === 'auto' ? undefined : value })}
      />
      <Choice<(typeof COLOURS)[number]>
        label={words('wallColour')}
        value={colour ?? 'none'}
        choices={COLOURS.map((value) => ({ value, words: words(COLOUR_WORDS[value]) }))}
        onChoice={(value) => look({ colour: value === 'none' ? undefined : value })}
      />
    </div>
  );
}
