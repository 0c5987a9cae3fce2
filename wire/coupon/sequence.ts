/** The order of the rows: time runs on, no row comes twice, the last line is whole, there is one test. */
import type { Issue } from '../issue/issue.ts';
import type { Figures } from './figures.ts';
import { type Note, noteOnLines } from './note.ts';

export type Sequence =
  | { readonly ok: true; readonly figures: Figures; readonly notes: readonly Note[] }
  | { readonly ok: false; readonly issues: Issue[] };

/** More rows than this part that run back in time are a clock that cannot be used, not rows out of place. */
const OUT_OF_PLACE = 0.02;

/** `cut`: the file ends without a line end. */
export const inSequence = (figures: Figures, cut: boolean): Sequence => {
  const restart = secondTest(figures);
  if (restart !== undefined) return { ok: false, issues: [twoTests(restart)] };
  const notes: Note[] = [];
  let kept = without(figures, repeated(figures), 'the same as the row before; left out', notes);
  const back = runningBack(kept);
  if (back.length > OUT_OF_PLACE * kept.lines.length) {
    const lines = back.map((k) => kept.lines[k]);
    notes.push(noteOnLines(lines, 'time runs back; the order of the lines is kept, no strain rate is taken'));
    kept = timeless(kept);
  } else kept = without(kept, back, 'time runs back; left out', notes);
  if (cut)
    kept = without(
      kept,
      tornEnd(kept),
      'the file ends within this line and its figure is out of course; left out',
      notes,
    );
  return { ok: true, figures: kept, notes };
};

const timeless = ({ stretch, load, lines }: Figures): Figures => ({ stretch, load, lines });

const without = (figures: Figures, places: readonly number[], says: string, notes: Note[]): Figures => {
  if (places.length === 0) return figures;
  notes.push(
    noteOnLines(
      places.map((k) => figures.lines[k]),
      says,
    ),
  );
  const gone = new Set(places);
  const kept = (values: readonly number[]): number[] => values.filter((_, k) => !gone.has(k));
  return {
    stretch: kept(figures.stretch),
    load: kept(figures.load),
    ...(figures.time && { time: kept(figures.time) }),
    lines: kept(figures.lines),
  };
};

/** Two rows alike in every figure. Without time this is left to the eye: a slow test may well read the same twice. */
const repeated = ({ stretch, load, time }: Figures): number[] =>
  stretch.flatMap((_, k) => {
    const same =
      k > 0 && time && time[k] === time[k - 1] && stretch[k] === stretch[k - 1] && load[k] === load[k - 1];
    return same ? [k] : [];
  });

const runningBack = ({ time }: Figures): number[] => {
  if (!time) return [];
  let latest = -Infinity;
  return time.flatMap((t, k) => {
    if (t < latest) return [k];
    latest = t;
    return [];
  });
};

/** Time falls back by half of what had passed, and so does the stretch: place of the first such row. */
const secondTest = ({ time, stretch, lines }: Figures): number | undefined => {
  if (!time) return undefined;
  const k = time.findIndex((t, j) => {
    if (j < 5 || j > time.length - 5) return false;
    const passed = time[j - 1] - time[0];
    const stretched = stretch[j - 1] - stretch[0];
    const stays = time[j + 1] < time[j - 1] && time[j + 4] < time[j - 1];
    return stays && time[j - 1] - t > 0.5 * passed && stretch[j - 1] - stretch[j] > 0.5 * stretched;
  });
  return k < 0 ? undefined : lines[k];
};

const twoTests = (line: number): Issue => ({
  path: `line ${line}`,
  expected: 'one test in the file',
  received: 'time and stretch that begin anew',
  suggestion: 'a second test begins here: put it into a file of its own',
});

/** Last row whose stretch or load leaves the course of the rows before it by twenty of their steps. */
const tornEnd = ({ stretch, load }: Figures): number[] => {
  const last = stretch.length - 1;
  const leaves = (values: readonly number[]): boolean => {
    const steps = values
      .slice(-12, -1)
      .map((value, k, near) => (k === 0 ? 0 : Math.abs(value - near[k - 1])));
    return Math.abs(values[last] - values[last - 1]) > 20 * Math.max(...steps);
  };
  return leaves(stretch) || leaves(load) ? [last] : [];
};
