/** The range of a plan: shell solutions for a few drawn steels, quick tanks for all of them, each through the whole day. */
import { DAY_RUNS, fitQuickTank, type QuickTank, stretchRange, WANTED_RUNS } from '@hoopwright/core/stretch';
import { stretchPressure, type Tank } from '@hoopwright/core/tank';
import type { CouponFiles } from '@hoopwright/wire/evidence';
import type { Solved, Stretchable } from '@hoopwright/wire/advice';
import { drawsOn, type Foreseen, type PlanRange } from '@hoopwright/wire/plan';
import type { ParsedTank } from '@hoopwright/wire/tank';
import { shellsAsked } from '../range/asked.ts';
import { plateOf, type SteelRange, steelOf } from '../range/steelRange.ts';
import type { ShellRunner } from '../range/runner.ts';
import type { ShellMessage } from '../worker/shell.ts';

const SEED = 20_260;

export interface RangeAsked {
  readonly given: Extract<ParsedTank, { ok: true }>;
  readonly steel: SteelRange;
  readonly run: ShellRunner;
  readonly progress?: (fraction: number) => void;
}

/** From a foreseen day to its range. */
export type Ranging = (foreseen: Foreseen, flow: number | undefined) => PlanRange;

/** Solves the shells; what comes back ranges any day of this tank at its stretch pressure. */
export async function rangingFor(
  { given, steel, run, progress }: RangeAsked,
  target: number,
): Promise<Ranging> {
  const { tank, duty } = given;
  const steels = steel.belief.draws;
  const shells = shellsOf(given, steel, target);
  const quick = await quickOn(tank, shells, run, ({ done, all }) => progress?.(done / all));
  const whole = stretchRange(quick, steels, { target, duty, seed: SEED }).settled;
  return (foreseen, flow) => ({
    ...drawsOn(foreseen, quick, steels, flow),
    maximum: whole.maximum.wide,
    survive99: {
      value: whole.survived.value,
      ...(whole.survived.assured === undefined ? {} : { assured: whole.survived.assured }),
    },
    basis: steel.belief.account.flatMap((piece) => (piece.kind === 'counted' ? [piece.name] : [])),
  });
}

const shellsOf = (
  { tank }: RangeAsked['given'],
  { belief }: SteelRange,
  target: number,
  fitted = WANTED_RUNS,
): ShellMessage[] => shellsAsked(tank, plateOf(tank), belief.draws, target, fitted);

/** The shells that a plan of this tank wants solved; none where its steel has no range or it has no duty. */
export function shellsFor(given: RangeAsked['given'], files: CouponFiles): ShellMessage[] {
  const steel = given.flowFrom === 'stated' ? undefined : steelOf(given, files);
  if (steel === undefined || given.duty === undefined) return [];
  return shellsOf(given, steel, stretchPressure(given.duty));
}

/** Quick tank and steels for the day of a plan; undefined where its steel has no range or it has no duty. */
export async function stretchableFor(
  given: RangeAsked['given'],
  files: CouponFiles,
  run: ShellRunner,
  progress?: (solved: Solved) => void,
): Promise<Stretchable | undefined> {
  const steel = given.flowFrom === 'stated' ? undefined : steelOf(given, files);
  if (steel === undefined || given.duty === undefined) return undefined;
  const shells = shellsOf(given, steel, stretchPressure(given.duty), DAY_RUNS);
  return { quick: await quickOn(given.tank, shells, run, progress), draws: steel.belief.draws };
}

/** The quick tank of these shells, solved on all cores. */
async function quickOn(
  tank: Tank,
  shells: readonly ShellMessage[],
  run: ShellRunner,
  told?: (solved: Solved) => void,
): Promise<QuickTank> {
  let done = 0;
  const runs = await run(shells, { done: () => told?.({ done: ++done, all: shells.length }) });
  const fitted = runs.map((one, i) => ({ draw: shells[i].draw, run: one }));
  return fitQuickTank(tank, plateOf(tank), fitted);
}
