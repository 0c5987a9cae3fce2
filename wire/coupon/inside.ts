/** From figures to the inside: engineering strain and stress (MPa) pulled upward, time in seconds. */
import { type Issue, shown } from '../issue/issue.ts';
import type { Figures } from './figures.ts';
import type { Note } from './note.ts';
import type { Picked } from './pick.ts';
import type { Reading } from './settle.ts';

/** Machines that count compression positive write a pull as negative. */
export const pulledUpward = (
  figures: Figures,
): { readonly figures: Figures; readonly notes: readonly Note[] } => {
  const notes: Note[] = [];
  const turned = (values: readonly number[], what: string): readonly number[] => {
    if (middleOf(values) >= 0) return values;
    notes.push({ says: `the ${what} is negative throughout: taken as tension` });
    return values.map((value) => -value);
  };
  const [stretch, load] = [turned(figures.stretch, 'stretch'), turned(figures.load, 'load')];
  return { figures: { ...figures, stretch, load }, notes };
};

const middleOf = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1];

export type Engineering =
  | {
      readonly ok: true;
      readonly strain: readonly number[];
      readonly stress: readonly number[];
      readonly notes: readonly Note[];
    }
  | { readonly ok: false; readonly issues: readonly Issue[] };

/** True strain and stress are turned into engineering ones; one of them alone cannot be. */
export const engineering = (figures: Figures, picked: Picked, reading: Reading): Engineering => {
  const [e, s] = reading.swapped ? [figures.load, figures.stretch] : [figures.stretch, figures.load];
  const strain = e.map((value) => value * reading.strainFactor);
  const stress = s.map((value) => value * reading.stressFactor);
  const { stretch, load } = picked;
  if (!stretch.isTrue && !load.isTrue) return { ok: true, strain, stress, notes: [] };
  if (stretch.isTrue !== load.isTrue) return { ok: false, issues: [halfTrue(picked)] };
  return {
    ok: true,
    strain: strain.map(Math.expm1),
    stress: stress.map((value, k) => value / Math.exp(strain[k])),
    notes: [
      {
        says: `${shown(stretch.name)} and ${shown(load.name)} are turned into engineering strain and stress`,
      },
    ],
  };
};

const halfTrue = ({ stretch, load }: Picked): Issue => ({
  path: `${shown(stretch.name)} and ${shown(load.name)}`,
  expected: 'engineering strain with engineering stress, or true strain with true stress',
  received: 'one of each',
  suggestion: 'name two columns that belong together: --strain COLUMN --stress COLUMN',
});

/** Average rates (1/s) of a tensile test that somebody waited for. */
const SLOWEST = 2e-6;
const FASTEST = 0.05;

/** Factor from the time column to seconds. Unnamed, seconds are taken where they give a rate that a machine pulls at. */
export const secondsIn = (
  { time }: Figures,
  { time: column }: Picked,
  far: number,
): { readonly factor: number; readonly notes: readonly Note[] } => {
  if (!time || !column) return { factor: 1, notes: [] };
  if (column.unit) return { factor: column.unit.factor, notes: [] };
  const rate = far / (time[time.length - 1] - time[0]);
  if (rate >= SLOWEST && rate <= FASTEST) return { factor: 1, notes: [] };
  const says = `${shown(column.name)} names no unit; in seconds the strain rate would be ${rate.toPrecision(2)} /s: say --time-unit`;
  return { factor: 1, notes: [{ says }] };
};
