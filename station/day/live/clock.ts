/** The day's clocks: real ones, or for a rehearsal ones that run faster. */
import type { Clocks } from '../../store/recorder.ts';

export interface DayClock {
  readonly now: () => Clocks;
  /** Times real time. */
  readonly speed: number;
}

/** @param from wall clock at which it begins; `real` counts ms of real time */
export function fastClock(speed: number, from: number, real: () => number): DayClock {
  const began = real();
  return {
    speed,
    now: () => {
      const mono_ms = speed * (real() - began);
      return { mono_ms, wall_ms: from + mono_ms };
    },
  };
}
