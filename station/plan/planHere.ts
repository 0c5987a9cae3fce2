/** A plan made on this machine: steel from its evidence, ranges from shell solutions on all cores. */
import { stretchPressure } from '@hoopwright/core/tank';
import type { CouponFiles } from '@hoopwright/wire/evidence';
import { type PlanAnswer, planFor } from '@hoopwright/wire/plan';
import type { ParsedTank } from '@hoopwright/wire/tank';
import type { ShellRunner } from '../range/runner.ts';
import { steelOf } from '../range/steelRange.ts';
import { sha256 } from '../store/hash.ts';
import { evidenceDigest } from './madeFrom.ts';
import { rangingFor } from './planRange.ts';
import { PROGRAM } from './version.ts';

export interface PlanAsked {
  readonly given: Extract<ParsedTank, { ok: true }>;
  readonly files: CouponFiles;
  readonly run: ShellRunner;
  /** Fraction done, 0..1. */
  readonly progress?: (fraction: number) => void;
}

/** The shell solutions of the range take longest; the day itself is three forecasts. */
export const RANGE_SHARE = 0.9;

/**
 * A flow curve that somebody stated is taken as it stands, without a range; else the steel in the middle of its evidence,
 * and a range where there is any.
 */
export async function planHere({ given, files, run, progress }: PlanAsked): Promise<PlanAnswer> {
  const steel = given.flowFrom === 'stated' ? undefined : steelOf(given, files);
  const { duty } = given;
  const share = steel === undefined ? 0 : RANGE_SHARE;
  const ranging =
    steel === undefined || duty === undefined
      ? undefined
      : await rangingFor(
          {
            given,
            steel,
            run,
            progress: (fraction) => progress?.(share * fraction),
          },
          stretchPressure(duty),
        );
  const evidence = evidenceDigest(given, files);
  return planFor({
    ...given,
    ...(evidence === undefined ? {} : { evidence }),
    tank: steel?.tank ?? given.tank,
    program: PROGRAM,
    hash: sha256,
    progress: (fraction) => {
      progress?.(share + (1 - share) * fraction);
      return false;
    },
    ...(ranging === undefined ? {} : { range: (foreseen, orders) => ranging(foreseen, orders.duty.pump) }),
  });
}
