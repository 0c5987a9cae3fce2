/** A point on a curve with its figures, which go where there is room. */
import { lettering, type Mark, type Point, type Run, TEXT } from '../sheet/mark.ts';
import type { Places } from '../sheet/settle.ts';

export interface Labelled {
  readonly marks: readonly Mark[];
  readonly places: readonly Places[];
}

const LEADING = TEXT + 2.5;

/** Dot at a place with lines of figures below it to the right, above it to the right, or farther off. */
export function labelledPoint(
  at: Point,
  lines: readonly (readonly Run[])[],
  side: 'below' | 'above',
  of: string,
): Labelled {
  const [x, y] = at;
  const set = (dx: number, top: number) =>
    lines.map((runs, i) => lettering([x + dx, top + i * LEADING], runs, { clear: true, of }));
  const below = y + 15;
  const above = y - 7 - (lines.length - 1) * LEADING;
  const [first, second] = side === 'below' ? [below, above] : [above, above - LEADING];
  return {
    marks: [{ kind: 'ring', at, radius: 3, line: 'narrow', filled: true, of }],
    places: [[set(8, first), set(8, second), set(90, first), set(180, first)]],
  };
}

export const together = (parts: readonly Labelled[]): Labelled => ({
  marks: parts.flatMap(({ marks }) => marks),
  places: parts.flatMap(({ places }) => places),
});
