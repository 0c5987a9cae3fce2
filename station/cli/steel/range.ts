/** The range of a tank file's steel for a command: coupons from beside the file, shell solutions on all cores, a progress line. */
import { couponsBeside } from '../../range/coupons.ts';
import type { Keeper } from '../../range/keeper.ts';
import { openRunner } from '../../range/runner.ts';
import { type SteelRange, steelOf, steelRange } from '../../range/steelRange.ts';
import type { Desk } from '../desk/desk.ts';
import { progressLine } from '../desk/progress.ts';
import type { GoodTank } from '../desk/tankInput.ts';

/** Undefined where the file holds no evidence. */
export async function rangeFor(
  desk: Desk,
  path: string,
  given: GoodTank,
  { target, keeper }: { readonly target?: number; readonly keeper?: Keeper } = {},
): Promise<SteelRange | undefined> {
  const files = await couponsBeside(path, given, (file) => desk.readBytes(file));
  const progress = progressLine(desk, 'range');
  const runner = openRunner();
  try {
    return await steelRange(given, files, runner.run, {
      progress: (fraction) => {
        progress.show(fraction);
      },
      ...(target === undefined ? {} : { target }),
      ...(keeper === undefined ? {} : { keeper }),
    });
  } finally {
    progress.clear();
    await runner.close();
  }
}

/** What the tests say of the steel, without carrying it through the shell. */
export const steelFor = async (desk: Desk, path: string, given: GoodTank): Promise<SteelRange | undefined> =>
  steelOf(given, await couponsBeside(path, given, (file) => desk.readBytes(file)));
