/** Names at the ends of lines, instead of a legend. */
import { lettering, type Mark, type Point, type Run, SMALL } from '../sheet/mark.ts';
import { runsWidth } from '../sheet/measure.ts';
import { spread } from '../sheet/spread.ts';
import type { Panel } from './panel.ts';

export interface LineEnd {
  readonly name: string;
  readonly bold: boolean;
  readonly at: Point;
}

/** Lines that leave through the top are named above it, the others to the right of their end; names are moved apart. */
export function endLabels(panel: Panel, ends: readonly LineEnd[]): Mark[] {
  const through = (end: LineEnd): boolean => end.at[1] < panel.top + 1 && end.at[0] < panel.right - 1;
  return [
    ...aboveTop(panel, ends.filter(through)),
    ...rightOf(
      panel,
      ends.filter((end) => !through(end)),
    ),
  ];
}

const runOf = ({ name, bold }: LineEnd): Run => ({ text: name, ...(bold ? { bold: true } : {}) });

function rightOf(panel: Panel, ends: readonly LineEnd[]): Mark[] {
  const sorted = [...ends].sort((a, b) => a.at[1] - b.at[1]);
  const heights = spread(
    sorted.map(({ at }) => at[1]),
    SMALL + 3,
    panel.top + 2,
    panel.bottom,
  );
  return sorted.map((end, i) =>
    lettering([end.at[0] + 5, heights[i] + 3.6], [runOf(end)], {
      size: SMALL,
      clear: true,
      of: `line: ${end.name}`,
    }),
  );
}

function aboveTop(panel: Panel, ends: readonly LineEnd[]): Mark[] {
  const sorted = [...ends].sort((a, b) => a.at[0] - b.at[0]);
  const widest = Math.max(0, ...sorted.map((end) => runsWidth({ runs: [runOf(end)], size: SMALL })));
  const places = spread(
    sorted.map(({ at }) => at[0]),
    widest + 8,
    panel.left + 90,
    panel.right,
  );
  return sorted.map((end, i) =>
    lettering([places[i], panel.top - 5], [runOf(end)], {
      size: SMALL,
      anchor: 'middle',
      of: `line: ${end.name}`,
    }),
  );
}
