/** The tank that is rehearsed on: of one steel out of what its evidence allows, or a varied one where there is none. */
import { diceOf } from '@hoopwright/core/gauge';
import { drawnTank, variedTank } from '@hoopwright/core/stretch';
import type { Tank } from '@hoopwright/core/tank';
import type { CouponFiles } from '@hoopwright/wire/evidence';
import type { ParsedTank } from '@hoopwright/wire/tank';
import { plateOf, steelOf } from '../range/steelRange.ts';

export interface RealTankAsked {
  readonly given: Extract<ParsedTank, { ok: true }>;
  readonly files: CouponFiles;
  readonly seed: number;
}

export function realTank({ given, files, seed }: RealTankAsked): Tank {
  const dice = diceOf(seed).named('tank');
  const draws = steelOf(given, files)?.belief.draws ?? [];
  if (draws.length === 0) return variedTank(given.tank, dice);
  return drawnTank(given.tank, plateOf(given.tank), draws[dice.below(draws.length)]);
}
