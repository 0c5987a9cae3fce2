/** The coupon files that a tank file names: read from beside it, or out of the attachments of its project. */
import { isAbsolute, join, normalize, dirname } from 'node:path';
import { type CouponFiles, couponPaths } from '@hoopwright/wire/evidence';
import type { ParsedTank } from '@hoopwright/wire/tank';
import type { Attachments } from '../store/store.ts';

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

/**
 * A tank file names its coupons by path; in a project the last part of the path is the name of the attachment. Without a
 * project there are none.
 */
export function couponsAttached(attachments: Attachments, project: string | undefined): CouponFiles {
  const files = new Map<string, Uint8Array>();
  if (project === undefined) return files;
  for (const { id, name } of attachments.list(project, 'kept')) {
    const content = attachments.bytes(project, id);
    if (content === undefined) continue;
    files.set(name, content);
    files.set(`coupons/${name}`, content);
  }
  return files;
}
