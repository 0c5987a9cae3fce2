/** From a tank file with evidence to the range of its steel and of its stretch. */
import { believe, type Belief, middleDraw, type Steel, type SteelDraw } from '@hoopwright/core/steel';
import { drawnTank, fitQuickTank, type StretchRange, stretchRange } from '@hoopwright/core/stretch';
import { stretchPressure, type Tank } from '@hoopwright/core/tank';
import { type CouponFiles, evidenceOf, type EvidenceRead, hasSteelEvidence } from '@hoopwright/wire/evidence';
import type { ParsedTank } from '@hoopwright/wire/tank';
import type { ShellMessage } from '../worker/shell.ts';
import { shellsAsked } from './asked.ts';
import { EVIDENCE_WORDS } from './words.ts';
import type { Keeper, Kept } from './keeper.ts';
import type { ShellRunner } from './runner.ts';

type GoodTank = Extract<ParsedTank, { ok: true }>;

export interface SteelRange {
  readonly read: EvidenceRead;
  readonly belief: Belief;
  /** Each input at its median. */
  readonly middle: SteelDraw;
  /** The tank with the steel in the middle of the range. */
  readonly tank: Tank;
  /** Absent where the file asks for no release pressure. */
  readonly stretch?: StretchRange;
}

export interface RangeWatch {
  /** Fraction done, 0..1. */
  readonly progress?: (fraction: number) => void;
  readonly signal?: AbortSignal;
}

/** Steels that stand for the range. 99-of-100 at 95 % confidence needs 299 (stats/range.ts). */
export const DRAWS = 400;
/** Any number does; the same one gives the same range. */
const SEED = 20_260;

/** What the tests say of the steel; quick (no shell solution). */
export function steelOf(given: GoodTank, files: CouponFiles): SteelRange | undefined {
  if (!hasSteelEvidence(given.file)) return undefined;
  const read = evidenceOf(given.file, given.tank, files, EVIDENCE_WORDS);
  const belief = believe(read.evidence, { seed: SEED, draws: DRAWS });
  const middle = middleDraw(belief.draws);
  return { read, belief, middle, tank: drawnTank(given.tank, plateOf(given.tank), middle) };
}

/** The same carried through shell solutions to growth, litres and maximum. Undefined where the file has no evidence. */
export async function steelRange(
  given: GoodTank,
  files: CouponFiles,
  run: ShellRunner,
  options: RangeWatch & { readonly target?: number; readonly keeper?: Keeper } = {},
): Promise<SteelRange | undefined> {
  const steel = steelOf(given, files);
  const { duty } = given;
  const target = options.target ?? (duty === undefined ? undefined : stretchPressure(duty));
  if (steel === undefined || target === undefined) return steel;
  const plate = plateOf(given.tank);
  const key = keyOf(given.tank, plate, target);
  const kept = options.keeper?.serving(key, steel.belief.draws);
  const runs =
    kept ?? (await solved(shellsAsked(given.tank, plate, steel.belief.draws, target), run, options));
  if (kept === undefined) options.keeper?.keep(key, runs);
  const quick = fitQuickTank(given.tank, plate, runs);
  return { ...steel, stretch: stretchRange(quick, steel.belief.draws, { target, duty, seed: SEED }) };
}

/** What the shell sees of a tank but for the drawn steel: the flow curve that the file makes do with is not part of it. */
function keyOf(tank: Tank, plate: Steel, target: number): string {
  const { young, poisson, density } = plate;
  const parts = (_: string, value: unknown): unknown =>
    value === plate ? { young, poisson, density } : value;
  return JSON.stringify([tank, target], parts);
}

async function solved(
  messages: readonly ShellMessage[],
  run: ShellRunner,
  options: RangeWatch,
): Promise<Kept[]> {
  let done = 0;
  const runs = await run(messages, {
    done: () => options.progress?.(++done / messages.length),
    ...(options.signal === undefined ? {} : { signal: options.signal }),
  });
  return runs.map((one, i) => ({ draw: messages[i].draw, run: one }));
}

/** Steel of the longest course: the object that every part of the plate shares. */
export const plateOf = (tank: Tank): Steel =>
  tank.courses.reduce((a, b) => (b.length > a.length ? b : a)).steel;
