/** The handle on a curve: dragged, or moved with the arrow keys, it takes the tank through its stretch. */
import { say, saySigned } from '@hoopwright/report/figure';
import type { Point } from '@hoopwright/report/sheet';
import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { useBoard } from '../state/board.ts';
import { moveHand } from '../state/draw.ts';
import { useManner } from '../state/manner.ts';
import { momentOf } from '../work/moment.ts';
import type { ForecastView, MomentView } from '../work/ask.ts';
import { words } from '../words/say.ts';

export interface HandleProps {
  readonly forecast: ForecastView;
  /** Where a moment stands on the curve; undefined: outside of the panel. */
  readonly at: (moment: MomentView) => Point | undefined;
  readonly box: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  readonly label: string;
  /** Told of the moment under the pointer while nothing is dragged. */
  readonly onHover?: (moment: MomentView | undefined) => void;
}

/** The stretch in its order: filled, up with the holds, on to the maximum, and the release. */
export const momentsOf = ({ start, path }: ForecastView): readonly MomentView[] => [start, ...path];

export const handTo = (forecast: ForecastView, moment: MomentView): void =>
  void moveHand(
    moment === forecast.start
      ? { kind: 'stop', stop: 'welded' }
      : { kind: 'place', phase: moment.phase, growth: moment.largest.growth, pressure: moment.pressure },
  );

export function Handle({ forecast, at, box, label, onHover }: HandleProps) {
  const manner = useManner();
  const cursor = useBoard((b) => b.cursor);
  const area = useRef<SVGRectElement>(null);
  const moments = momentsOf(forecast);
  const moment = momentOf(forecast, cursor) ?? forecast.start;
  const index = moments.indexOf(moment);
  const place = at(moment);

  const nearest = (event: PointerEvent): MomentView | undefined => {
    const pointer = onScene(area.current, event);
    let best: { readonly moment: MomentView; readonly far: number } | undefined;
    for (const one of moments) {
      const [x, y] = at(one) ?? [Infinity, Infinity];
      const far = Math.hypot(x - pointer[0], y - pointer[1]);
      if (best === undefined || far < best.far) best = { moment: one, far };
    }
    return best?.moment;
  };
  const drag = (event: PointerEvent): void => {
    const under = nearest(event);
    if (event.buttons === 1) {
      if (under !== undefined) handTo(forecast, under);
    } else onHover?.(under);
  };
  const press = (event: PointerEvent): void => {
    area.current?.setPointerCapture(event.pointerId);
    drag(event);
  };
  const key = (event: KeyboardEvent): void => {
    const by = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1, PageUp: 10, PageDown: -10 }[
      event.key
    ];
    const to =
      event.key === 'Home'
        ? 0
        : event.key === 'End'
          ? moments.length - 1
          : by === undefined
            ? undefined
            : index + by;
    if (to === undefined) return;
    event.preventDefault();
    handTo(forecast, moments[Math.max(0, Math.min(moments.length - 1, to))]);
  };

  return (
    <g
      className="handle"
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-valuemin={0}
      aria-valuemax={moments.length - 1}
      aria-valuenow={index}
      aria-valuetext={words('handAt', {
        pressure: say(manner, 'pressure', moment.pressure),
        growth: saySigned(manner, 'growth', moment.largest.growth),
        volume: say(manner, 'volume', moment.pumped.all),
      })}
      onKeyDown={key}
    >
      <rect
        ref={area}
        className="reach"
        x={box.left - 6}
        y={box.top}
        width={box.right - box.left + 12}
        height={box.bottom - box.top + 6}
        onPointerDown={press}
        onPointerMove={drag}
        onPointerLeave={() => onHover?.(undefined)}
      />
      {place === undefined ? null : (
        <>
          <path className="accent-line cross" d={`M${box.left} ${place[1]}H${place[0]}V${box.bottom}`} />
          <circle className="knob" cx={place[0]} cy={place[1]} r={6} />
        </>
      )}
    </g>
  );
}

function onScene(area: SVGRectElement | null, event: PointerEvent): Point {
  const turned = area?.getScreenCTM()?.inverse();
  if (turned === undefined) return [0, 0];
  const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(turned);
  return [x, y];
}
