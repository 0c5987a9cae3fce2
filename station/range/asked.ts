/** The shell solutions that a quick tank is fitted to: which steels, and which of them are held at the release pressure. */
import type { Steel, SteelDraw } from '@hoopwright/core/steel';
import { runsFor, WANTED_RUNS } from '@hoopwright/core/stretch';
import type { Tank } from '@hoopwright/core/tank';
import type { ShellMessage } from '../worker/shell.ts';

/**
 * Only those that are fitted go through a final hold: the error is that of the path.
 * @param fitted how many are
 */
export const shellsAsked = (
  tank: Tank,
  plate: Steel,
  steels: readonly SteelDraw[],
  target: number,
  fitted = WANTED_RUNS,
): ShellMessage[] =>
  chosen(steels, fitted).map((draw, i) => ({ tank, plate, draw, ...(i < fitted ? { target } : {}) }));

/** Even steps through the steels, which stand in the order of their likeliest explanations: fitted ones, then those held back. */
function chosen(steels: readonly SteelDraw[], fitted: number): SteelDraw[] {
  const count = Math.min(steels.length, runsFor(fitted));
  const spread = Array.from(
    { length: count },
    (_, k) => steels[Math.floor(((k + 0.5) * steels.length) / count)],
  );
  const isHeld = (k: number): boolean => k % EACH === 1;
  return [...spread.filter((_, k) => !isHeld(k)), ...spread.filter((_, k) => isHeld(k))];
}
/** One of so many is held back by the fit. */
const EACH = 3;
