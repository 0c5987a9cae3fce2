/** The stretch as a small curve, pressure over growth of the largest girth, with the handle. */
import type { Point } from '@hoopwright/report/sheet';
import { LINES } from '@hoopwright/report/sheet';
import type { ForecastView, MomentView } from '../work/ask.ts';
import { words } from '../words/say.ts';
import { Handle } from './Handle.tsx';

const WIDTH = 560;
const HEIGHT = 86;
const BOX = { left: 8, right: WIDTH - 8, top: 8, bottom: HEIGHT - 8 };

export function MiniCurve({ forecast }: { readonly forecast: ForecastView }) {
  const turn = forecast.held ?? forecast.arrived;
  const way = forecast.path.filter(({ phase }) => phase !== 'release');
  const back = forecast.path.filter(({ phase }) => phase === 'release');
  const most =
    turn === undefined ? 1.02 * Math.max(...way.map((m) => m.largest.growth)) : 1.6 * turn.largest.growth;
  const shown = way.filter((m) => m.largest.growth <= most);
  const top = 1.06 * Math.max(...shown.map((m) => m.pressure), forecast.target ?? 0);
  const at = ({ largest, pressure }: MomentView): Point | undefined =>
    largest.growth > most
      ? undefined
      : [
          BOX.left + ((BOX.right - BOX.left) * Math.max(0, largest.growth)) / most,
          BOX.bottom - ((BOX.bottom - BOX.top) * pressure) / top,
        ];
  const line = (moments: readonly MomentView[]): string =>
    `M${moments.flatMap((m) => at(m) ?? []).reduce<string>((d, v, i) => d + (i === 0 ? '' : i % 2 === 0 ? 'L' : ' ') + v.toFixed(1), '')}`;
  const last = turn === undefined ? way.length : way.findLastIndex((m) => m.time === turn.time) + 1;
  return (
    <svg
      className="scene mini"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="group"
      aria-label={words('handSlider')}
    >
      <path
        className="line ink-line"
        strokeWidth={LINES.narrow.width}
        d={`M${BOX.left} ${BOX.top}V${BOX.bottom}H${BOX.right}`}
      />
      {way.length > 1 && last < way.length ? (
        <path
          className="line ink-line"
          strokeWidth={LINES.narrow.width}
          d={line(shown.slice(Math.max(0, last - 1)))}
        />
      ) : null}
      <path
        className="line ink-line"
        strokeWidth={LINES.bold.width}
        d={line([forecast.start, ...way.slice(0, last).filter((m) => m.largest.growth <= most)])}
      />
      {back.length === 0 || turn === undefined ? null : (
        <path className="line ink-line" strokeWidth={LINES.bold.width} d={line([turn, ...back])} />
      )}
      <Handle forecast={forecast} at={at} box={BOX} label={words('handSlider')} />
    </svg>
  );
}
