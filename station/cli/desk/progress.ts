/** A progress line on standard error once something takes over a second. */
import type { Desk } from './desk.ts';

export interface Progress {
  /** Called with a fraction done; never asks to stop. */
  readonly show: (fraction: number) => boolean;
  readonly clear: () => void;
}

export function progressLine(desk: Desk, what: string): Progress {
  const start = desk.seconds();
  let shown = -1;
  return {
    show: (fraction) => {
      const percent = Math.floor(100 * fraction);
      if (desk.seconds() - start < 1 || percent === shown) return false;
      if (desk.terminal) desk.err(`\r${what}: ${percent} % `);
      else if (shown < 0) desk.err(`${what}: working …\n`);
      shown = percent;
      return false;
    },
    clear: () => {
      if (desk.terminal && shown >= 0) desk.err('\r\u001B[K');
    },
  };
}
