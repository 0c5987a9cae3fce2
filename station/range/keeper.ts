/**
 * Keeps the shell solutions of the tanks asked for last, so that a changed certificate or coupon does not ask for them
 * again: they are solutions of steels, and serve any range of steel that they span.
 */
import { inputsOf, type SteelDraw } from '@hoopwright/core/steel';
import type { ShellRun } from '@hoopwright/core/stretch';
import { keepLast } from './answers.ts';

export interface Kept {
  readonly draw: SteelDraw;
  readonly run: ShellRun;
}

export interface Keeper {
  /** Solutions that serve these steels; undefined where there are none, or the steels lie outside them. */
  serving(tank: string, draws: readonly SteelDraw[]): readonly Kept[] | undefined;
  keep(tank: string, runs: readonly Kept[]): void;
}

/** Standard deviations within which a fit may be asked, and the share of steels that must lie within. */
const REACH = 3;
const COVERED = 0.9;

export function openKeeper(most = 6): Keeper {
  const kept = new Map<string, readonly Kept[]>();
  return {
    serving: (tank, draws) => {
      const runs = kept.get(tank);
      return runs !== undefined &&
        spanned(
          draws,
          runs.map(({ draw }) => draw),
        )
        ? runs
        : undefined;
    },
    keep: (tank, runs) => keepLast(kept, most, [tank, runs]),
  };
}

/** Inputs that shape the path: not the rate (a factor on holds) and not the seam. */
const SHAPING = [0, 1, 2, 3, 4, 6, 7];

function spanned(draws: readonly SteelDraw[], design: readonly SteelDraw[]): boolean {
  const rows = design.map(inputsOf);
  const span = SHAPING.map((k) => {
    const column = rows.map((row) => row[k]);
    const mean = column.reduce((a, b) => a + b, 0) / column.length;
    const deviation = Math.sqrt(column.reduce((a, b) => a + (b - mean) ** 2, 0) / column.length);
    return { mean, deviation };
  });
  const within = draws.filter((draw) => {
    const inputs = inputsOf(draw);
    return SHAPING.every((k, i) => Math.abs(inputs[k] - span[i].mean) <= REACH * span[i].deviation + 1e-9);
  });
  return within.length >= COVERED * draws.length;
}

/** What a keeper holds, as text; `stamp` names the program that solved it. */
export const keptText = (stamp: string, tank: string, runs: readonly Kept[]): string =>
  JSON.stringify({ stamp, tank, runs });

/** A keeper that starts with what such a text holds; empty where the text is damaged or of another program. */
export function keeperFrom(text: string | undefined, stamp: string): Keeper {
  const keeper = openKeeper();
  try {
    const held: unknown = text === undefined ? undefined : JSON.parse(text);
    if (isHeld(held) && held.stamp === stamp) keeper.keep(held.tank, held.runs);
  } catch {
    // A damaged copy is only a lost head start.
  }
  return keeper;
}

interface Held {
  readonly stamp: string;
  readonly tank: string;
  readonly runs: readonly Kept[];
}

/** Only the program itself writes such a text: its frame is looked at, not every number. */
const isHeld = (value: unknown): value is Held =>
  typeof value === 'object' && value !== null && 'stamp' in value && 'tank' in value && 'runs' in value;
