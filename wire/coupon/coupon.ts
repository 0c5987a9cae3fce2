/**
 * A file of a tensile test, as machines and people write it, becomes a test in inside units, with every thing taken for
 * granted as a note; or issues that name the line and what to say. No figure is guessed where two readings suit.
 */
import type { CouponTest } from '@hoopwright/core/steel';
import { type Issue, shown } from '../issue/issue.ts';
import { figuresOf } from './figures.ts';
import type { CouponHints } from './hints.ts';
import { engineering, pulledUpward, secondsIn } from './inside.ts';
import type { Note } from './note.ts';
import { pickColumns } from './pick.ts';
import { type Specimen, specimenOf } from './preface.ts';
import { inSequence } from './sequence.ts';
import { settleUnits } from './settle.ts';
import { type Rows, rowsOf } from './sheet/row.ts';
import { type Table, tableOf } from './sheet/table.ts';
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
  const opened = opening(typeof file === 'string' ? file : textOf(file), hints);
  if (!opened.ok) return opened;
  const { picked, figures, specimen } = opened;
  const sized = sizeOf(picked, specimen, hints);
  if (!sized.ok) return sized;
  const settled = settleUnits(figures, picked, sized.size);
  if (!settled.ok) return settled;
  const curve = engineering(figures, picked, settled.reading);
  if (!curve.ok) return curve;
  const clock = secondsIn(figures, picked, curve.strain[curve.strain.length - 1]);
  const test: CouponTest = {
    strain: curve.strain,
    stress: curve.stress,
    ...(figures.time && { time: figures.time.map((t) => t * clock.factor) }),
    ...(picked.stretch.meaning === 'crosshead' && { extension: 'crosshead' as const }),
  };
  const notes = [...specimen.notes, ...opened.notes, ...settled.notes, ...curve.notes, ...clock.notes];
  return { ok: true, test, lines: figures.lines, specimen, notes };
};

/** Text to figures of known meaning, before any unit. */
const opening = (text: string, hints: CouponHints) => {
  const rows = rowsOf(text, hints.delimiter);
  const table = tableOf(rows);
  const stopped = table ? stoppedBy(table, rows) : noTable(rows);
  if (!table || stopped) return { ok: false as const, issues: stopped ? [stopped] : [] };
  const pick = pickColumns(table, hints);
  if (!pick.ok) return pick;
  const { picked } = pick;
  const read = figuresOf(table, picked, hints);
  if (!read.ok) return read;
  const sequence = inSequence(read.figures, rows.cut);
  if (!sequence.ok) return sequence;
  const { figures, notes: turned } = pulledUpward(sequence.figures);
  const notes = [...picked.notes, ...read.notes, ...sequence.notes, ...turned];
  return { ok: true as const, picked, figures, specimen: specimenOf(table.preface), notes };
};

const stoppedBy = (table: Table, rows: Rows): Issue | undefined =>
  table.again === undefined ? doubledBy(table, rows) : headingsAgain(table.again);

const noTable = ({ rows }: Rows): Issue => ({
  path: rows.length > 0 ? `line ${rows[0].line}` : 'line 1',
  expected: 'rows of figures side by side: strain and stress, or extension and force',
  received:
    rows.length > 0 ? `${rows.length} line${rows.length === 1 ? '' : 's'} without them` : 'an empty file',
  suggestion: 'export the test as text with one row per reading',
});

/** More fields than headings and no point in any of them: the decimal commas have parted the figures in two. */
const doubledBy = (table: Table, { delimiter }: Rows): Issue | undefined => {
  const above = table.preface[table.preface.length - 1];
  const pointless = table.rows.every(({ text }) => !text.includes('.'));
  if (delimiter !== ',' || table.headings.length > 0 || !above || !pointless) return undefined;
  if (above.fields.length < 2 || above.fields.length >= table.width) return undefined;
  return {
    path: `line ${table.rows[0].line}`,
    expected: `${above.fields.length} fields, as the headings in line ${above.line}`,
    received: `${table.width} fields: ${shown(table.rows[0].text)}`,
    suggestion:
      'decimal commas between commas cannot be told apart: export with semicolons or with decimal points',
  };
};

const headingsAgain = (line: number): Issue => ({
  path: `line ${line}`,
  expected: 'one test in the file',
  received: 'the headings once more',
  suggestion: 'a second test begins here: put it into a file of its own',
});
