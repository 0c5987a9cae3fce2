/** The range of the stretch of the tank on the board, where it belongs to what is drawn. */
import type { RangeFile } from '@hoopwright/wire/forecast';
import { useBoard } from '../board.ts';
import { rangeIsOf, useSteel } from './steel.ts';

export function useStretchRange(): RangeFile | undefined {
  const draft = useBoard((b) => b.draft);
  const stretch = useSteel((s) => s.range?.stretch ?? undefined);
  return rangeIsOf(draft) ? stretch : undefined;
}
