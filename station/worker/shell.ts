/** Entry of the pool's threads: one shell solution of one drawn steel, to which the quick tank is fitted. */
import type { Steel, SteelDraw } from '@hoopwright/core/steel';
import { type ShellRun, shellRun } from '@hoopwright/core/stretch';
import type { Tank } from '@hoopwright/core/tank';

export interface ShellMessage {
  /** Parts made of the plate hold the very object `plate`; a message keeps that. */
  readonly tank: Tank;
  readonly plate: Steel;
  readonly draw: SteelDraw;
  /** Release pressure, MPa, for the final hold. */
  readonly target?: number;
}

/** The pool calls it by its name. */
export const answerShell = ({ tank, plate, draw, target }: ShellMessage): ShellRun =>
  shellRun(tank, plate, draw, target);
