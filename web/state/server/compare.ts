/** Sheets compared for the tank on the board, one after the other; a newer tank ends the older comparison. */
import type { Compared, SheetRow } from '@hoopwright/wire/compare';
import { create } from 'zustand';
import { useBoard } from '../board.ts';
import { valueAt } from '../file/edit.ts';
import { steelAtHand } from './steel.ts';
import { comparisonOf, compareWall } from './threads.ts';

export interface ComparedSheets {
  /** Sheets asked for, mm. */
  readonly walls: readonly number[];
  readonly rows: readonly SheetRow[];
  readonly unstretched: Compared['unstretched'];
  /** Number of the draft that the rows belong to. */
  readonly number: number;
}

/** Thicknesses that sheet is sold in (common practice, no source). */
const USUAL = [1, 1.5, 2, 2.5, 3];

export const useCompared = create<ComparedSheets>(() => ({
  walls: USUAL,
  rows: [],
  unstretched: null,
  number: -1,
}));

export function compareWalls(walls: readonly number[]): void {
  useCompared.setState({ walls, number: -1 });
}

let turn = 0;

/** Makes the rows for the tank on the board, unless they are there. */
export async function compareNow(): Promise<void> {
  const { number, draft } = useBoard.getState();
  const { walls, number: done } = useCompared.getState();
  if (done === number) return;
  const mine = ++turn;
  useCompared.setState({ number, rows: [] });
  const steel = steelAtHand(draft);
  const present = valueAt(draft, 'barrel.wall_mm');
  const rows: Compared['row'][] = [];
  const own = typeof present === 'number' ? await compareWall(draft, present, steel) : undefined;
  for (const wall of walls) {
    if (mine !== turn || useBoard.getState().number !== number) return;
    rows.push((wall === present ? own : undefined)?.row ?? (await compareWall(draft, wall, steel)).row);
    const { sheets, unstretched } = await comparisonOf(draft, rows, own?.unstretched ?? null);
    if (mine === turn) useCompared.setState({ rows: sheets, unstretched });
  }
}
