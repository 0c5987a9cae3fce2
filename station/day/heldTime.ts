/** For tests: a clock that stands still until it is moved, and the timers that wait on it. */
export interface HeldTime {
  readonly later: (ms: number, work: () => void) => () => void;
  readonly real: () => number;
  readonly wall: () => number;
  /** Moves on by so many ms; timers go off when they are due. */
  pass(ms: number): Promise<void>;
  /** The wall clock alone jumps: the laptop slept, or its clock was set. */
  jump(ms: number): void;
}

interface Timer {
  readonly due: number;
  readonly work: () => void;
}

const START = 1_790_000_000_000;

export function heldTime(): HeldTime {
  let now = 0;
  let off = START;
  const timers = new Set<Timer>();
  const settle = (): Promise<void> => new Promise((resolve) => void setImmediate(resolve));
  const next = (until: number): Timer | undefined =>
    [...timers].filter(({ due }) => due <= until).sort((a, b) => a.due - b.due)[0];
  return {
    later: (ms, work) => {
      const timer = { due: now + ms, work };
      timers.add(timer);
      return () => void timers.delete(timer);
    },
    real: () => now,
    wall: () => now + off,
    jump: (ms) => {
      off += ms;
    },
    pass: async (ms) => {
      const until = now + ms;
      await settle();
      for (let timer = next(until); timer !== undefined; timer = next(until)) {
        timers.delete(timer);
        now = Math.max(now, timer.due);
        timer.work();
        await settle();
      }
      now = until;
      await settle();
    },
  };
}
