/** What a plan of this tank is made from, as digests: when one of them changes, the plan is out of date. */
import { type CouponFiles, couponPaths } from '@hoopwright/wire/evidence';
import { type MadeFrom, tankDigest } from '@hoopwright/wire/plan';
import type { ParsedTank } from '@hoopwright/wire/tank';
import { sha256 } from '../store/hash.ts';
import { PROGRAM } from './version.ts';

type GoodTank = Extract<ParsedTank, { ok: true }>;

/** A file that can no longer be read is another tank than any that was planned. */
export function madeFromNow(given: ParsedTank, files: CouponFiles): MadeFrom {
  if (!given.ok) return { tank: '', program: PROGRAM };
  const evidence = evidenceDigest(given, files);
  return {
    tank: tankDigest(given.file, sha256),
    ...(evidence === undefined ? {} : { evidence }),
    program: PROGRAM,
  };
}

/**
 * SHA-256 over name and SHA-256 of every coupon file that the tank file names, in its order; one that is missing counts as
 * missing. Undefined where none is named, or where somebody stated the flow curve and no coupon is asked.
 */
export function evidenceDigest(given: GoodTank, files: CouponFiles): string | undefined {
  const named = given.flowFrom === 'stated' ? [] : couponPaths(given.file);
  if (named.length === 0) return undefined;
  const digests = named.map((name) => {
    const content = files.get(name);
    return [name, content === undefined ? null : sha256(content)];
  });
  return sha256(JSON.stringify(digests));
}
