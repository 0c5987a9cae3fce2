/**
 * A file of a tensile test, as machines and people write it, becomes a test in inside units, with every thing taken for
 * granted as a note; or issues that name the line and what to say. No figure is guessed where two readings suit.
 */
import type { CouponTest } from '@hoopwright/core/steel';
import type { Issue } from '../issue/issue.ts';
import { figuresOf } from './figures.ts';
import type { CouponHints } from './hints.ts';
import { engineering, pulledUpward, secondsIn } from './inside.ts';
import type { Note } from './note.ts';
import { pickColumns } from './pick.ts';
import { type Specimen, specimenOf } from './preface.ts';
import { inSequence } from './sequence.ts';
import { settleUnits } from './settle.ts';
import { type Rows, rowsOf } from './sheet/row.ts';
import { tableOf } from './sheet/table.ts';
import { textOf } from './sheet/text.ts';
import { sizeOf } from './size.ts';

export type CouponRead =
  | {
      readonly ok: true;
      readonly test: CouponTest;
      /** Line of each point of the test. */
      readonly lines: readonly number[];
      readonly specimen: Specimen;
      readonly notes: readonly Note[];
    }
  | { readonly ok: false; readonly issues: readonly Issue[] };

export const readCouponFile = (file: string | Uint8Array, hints: CouponHints = {}): CouponRead => {
  const rows = rowsOf(typeof file === 'string' ? file : textOf(file), hints.delimiter);
  const table = tableOf(rows);
  if (!table) return { ok: false, issues: [noTable(rows)] };
  if (table.again !== undefined) return { ok: false, issues: [headingsAgain(table.again)] };
  const pick = pickColumns(table, hints);
  if (!pick.ok) return pick;
  const { picked } = pick;
  const read = figuresOf(table, picked, hints);
  if (!read.ok) return read;
  const sequence = inSequence(read.figures, rows.cut);
  if (!sequence.ok) return sequence;
  const specimen = specimenOf(table.preface);
  const sized = sizeOf(picked, specimen, hints);
  if (!sized.ok) return sized;
  const { figures, notes: turned } = pulledUpward(sequence.figures);
  const settled = settleUnits(figures, picked, sized.size);
  if (!settled.ok) return settled;
  const curve = engineering(figures, picked, settled.reading);
  if (!curve.ok) return curve;
  const clock = secondsIn(figures, picked, Math.max(...curve.strain.slice(-3)));
  const test: CouponTest = {
    strain: curve.strain,
    stress: curve.stress,
    ...(figures.time && { time: figures.time.map((t) => t * clock.factor) }),
    ...(picked.stretch.meaning === 'crosshead' && { extension: 'crosshead' as const }),
  };
  const taken = [
    specimen.notes,
    picked.notes,
    read.notes,
    sequence.notes,
    turned,
    settled.notes,
    curve.notes,
  ];
  return { ok: true, test, lines: figures.lines, specimen, notes: [...taken.flat(), ...clock.notes] };
};

const noTable = ({ rows }: Rows): Issue => ({
  path: rows.length > 0 ? `line ${rows[0].line}` : 'line 1',
  expected: 'rows of figures side by side: strain and stress, or extension and force',
  received:
    rows.length > 0 ? `${rows.length} line${rows.length === 1 ? '' : 's'} without them` : 'an empty file',
  suggestion: 'export the test as text with one row per reading',
});

const headingsAgain = (line: number): Issue => ({
  path: `line ${line}`,
  expected: 'one test in the file',
  received: 'the headings once more',
  suggestion: 'a second test begins here: put it into a file of its own',
});
