/** Ranges for the server: of several requests from one window only the newest is worth finishing; solutions are kept. */
import type { CouponFiles } from '@hoopwright/wire/evidence';
import type { ParsedTank } from '@hoopwright/wire/tank';
import { openKeeper } from './keeper.ts';
import type { ShellRunner } from './runner.ts';
import { type SteelRange, steelRange } from './steelRange.ts';

export interface Ranger {
  /** Undefined: the file holds no evidence. */
  range(
    window: string,
    given: Extract<ParsedTank, { ok: true }>,
    files: CouponFiles,
  ): Promise<SteelRange | undefined | 'overtaken'>;
  /** What this window asked for before is not wanted any more. */
  overtake(window: string): void;
}

export function openRanger(run: ShellRunner): Ranger {
  const keeper = openKeeper();
  const newest = new Map<string, AbortController>();
  const overtake = (window: string): void => newest.get(window)?.abort();
  return {
    overtake,
    range: async (window, given, files) => {
      overtake(window);
      const mine = new AbortController();
      newest.set(window, mine);
      try {
        return await steelRange(given, files, run, { keeper, signal: mine.signal });
      } catch (error) {
        if (mine.signal.aborted) return 'overtaken';
        throw error;
      } finally {
        if (newest.get(window) === mine) newest.delete(window);
      }
    },
  };
}
