/** Numbered notes on a sheet. */
import { lettering, type Mark, SMALL } from './mark.ts';
import { wrapped } from './measure.ts';

export interface Column {
  readonly left: number;
  readonly width: number;
}

const INDENT = 18;
const LEADING = SMALL + 4;

/** Each note wrapped to the column; the last line ends at `bottom`. */
export function noteList(
  column: Column,
  bottom: number,
  notes: readonly string[],
): { marks: Mark[]; top: number } {
  const lines = notes.flatMap((note, i) =>
    wrapped(note, SMALL, column.width - INDENT).map((text, k) => ({
      text,
      number: k === 0 ? `${i + 1}` : '',
    })),
  );
  const top = bottom - lines.length * LEADING;
  return {
    top,
    marks: lines.flatMap(({ text, number }, i) => {
      const y = top + (i + 1) * LEADING - 3;
      const body = lettering([column.left + INDENT, y], text, { size: SMALL, of: 'note' });
      return number === ''
        ? [body]
        : [
            lettering([column.left, y], [{ text: number, tone: 'faint' }], {
              size: SMALL,
              of: 'note number',
            }),
            body,
          ];
    }),
  };
}
