/** The coupon files that a tank file names, read from beside it. */
import { isAbsolute, join, normalize, dirname } from 'node:path';
import { type CouponFiles, couponPaths } from '@hoopwright/wire/evidence';
import type { ParsedTank } from '@hoopwright/wire/tank';

/** Reads what can be read; a file that is missing is simply not in the map. Paths that leave the folder are not read. */
export async function couponsBeside(
  tankPath: string,
  given: Extract<ParsedTank, { ok: true }>,
  read: (path: string) => Promise<Uint8Array>,
): Promise<CouponFiles> {
  const folder = tankPath === '-' ? '.' : dirname(tankPath);
  const files = new Map<string, Uint8Array>();
  for (const name of new Set(couponPaths(given.file))) {
    if (isAbsolute(name) || normalize(name).startsWith('..')) continue;
    try {
      files.set(name, await read(join(folder, name)));
    } catch {
      // Named in the answer as missing.
    }
  }
  return files;
}
