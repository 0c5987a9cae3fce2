/** Draws once a frame, and only where something has changed since the frame before. */
import { useEffect } from 'react';
import { useDay } from '../state/live.ts';
import { trace } from '../state/trace.ts';

/** @param draw a new one draws at once */
export function useFrames(draw: () => void): void {
  useEffect(() => {
    let drawn = -1;
    let seen: unknown;
    let frame = 0;
    const next = (): void => {
      frame = requestAnimationFrame(next);
      const { state } = useDay.getState();
      if (trace.version === drawn && state?.seq === seen) return;
      drawn = trace.version;
      seen = state?.seq;
      draw();
    };
    next();
    return () => cancelAnimationFrame(frame);
  }, [draw]);
}
