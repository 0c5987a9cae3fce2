/** Every channel over time, one strip above the other, drawn once a frame from the lowest and highest of the trace. */
import { useCallback, useRef } from 'react';
import { useManner, useReading } from '../../state/manner.ts';
import { say } from '../../words/day/say.ts';
import { useDay } from '../state/live.ts';
import { trace } from '../state/trace.ts';
import { useSize } from './useSize.ts';
import { drawStrips } from './drawStrips.ts';
import { useFrames } from './useFrames.ts';

/** px for each channel. */
const STRIP = 38;

export function Strips() {
  const [around, { width }] = useSize<HTMLDivElement>();
  const count = useDay((d) => d.state?.channels.length ?? 0);
  const canvas = useRef<HTMLCanvasElement>(null);
  const look = useReading((r) => r.look);
  const manner = useManner();
  const height = STRIP * count + 24;
  const draw = useCallback(() => {
    const { state } = useDay.getState();
    if (canvas.current !== null && state !== undefined && width > 0)
      drawStrips(canvas.current, { state, trace, manner, width, height, look });
  }, [width, height, manner, look]);
  useFrames(draw);
  const ratio = window.devicePixelRatio;
  return (
    <figure className="strips" ref={around} aria-label={say('stripsTitle')}>
      <canvas
        ref={canvas}
        width={width * ratio}
        height={height * ratio}
        style={{ width, height }}
        aria-hidden="true"
        data-chart="strips"
      />
    </figure>
  );
}
