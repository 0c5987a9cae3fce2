/** The shell solutions that a quick tank is fitted to: which steels, and which of them are held at the release pressure. */
import type { Steel, SteelDraw } from '@hoopwright/core/steel';
import { WANTED_RUNS } from '@hoopwright/core/stretch';
import type { Tank } from '@hoopwright/core/tank';
import type { ShellMessage } from '../worker/shell.ts';

/** Those that are fitted, and half as many held back to measure the error. */
const RUNS = Math.ceil(1.5 * WANTED_RUNS);

/** Only those that are fitted go through a final hold: the error is that of the path. */
export const shellsAsked = (
  tank: Tank,
  plate: Steel,
  steels: readonly SteelDraw[],
  target: number,
): ShellMessage[] =>
  steels.slice(0, RUNS).map((draw, i) => ({ tank, plate, draw, ...(i < WANTED_RUNS ? { target } : {}) }));
