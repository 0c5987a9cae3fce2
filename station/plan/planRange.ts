/** The range of a plan: shell solutions for a few drawn steels, quick tanks for all of them, each through the whole day. */
import { fitQuickTank, stretchRange, WANTED_RUNS } from '@hoopwright/core/stretch';
import { drawsOn, type Foreseen, type PlanRange } from '@hoopwright/wire/plan';
import type { ParsedTank } from '@hoopwright/wire/tank';
import { plateOf, type SteelRange } from '../range/steelRange.ts';
import type { ShellRunner } from '../range/runner.ts';

/** Shell solutions: those that are fitted, and half as many held back to measure the error. */
const RUNS = Math.ceil(1.5 * WANTED_RUNS);
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
  const plate = plateOf(tank);
  const steels = steel.belief.draws;
  const chosen = steels.slice(0, RUNS);
  let done = 0;
  const runs = await run(
    chosen.map((draw) => ({ tank, plate, draw, target })),
    { done: () => progress?.(++done / chosen.length) },
  );
  const quick = fitQuickTank(
    tank,
    plate,
    runs.map((one, i) => ({ draw: chosen[i], run: one })),
  );
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
