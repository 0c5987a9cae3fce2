/**
 * Observed order of convergence of the shell on nested meshes, at fixed load steps: the tables of VERIFICATION.md.
 * A value is compared over all load steps of a window (root mean square), not at one of them, where an element that
 * yields a step sooner would pass for an error of discretisation.
 */
import { type Shell, shellOf } from '../../core/shell/shell.ts';
import { solverFor } from '../../core/shell/solve.ts';
import type { State } from '../../core/shell/state.ts';
import { pressureStep, pumpStep, walkFrom } from '../../core/stretch/walk.ts';
import type { Tank } from '../../core/tank/tank.ts';
import { type Check, plusMinus, type Source } from '../check.ts';
import { SWIFT_STEEL, TANK_C3 } from './tankC3.ts';

export interface StudyRow {
  readonly elements: number;
  /** Value at the last load step of the window. */
  readonly value: number;
  /** Root mean square over the window of the difference from the mesh before. */
  readonly change: number | undefined;
  /** Logarithm to base 2 of the ratio of successive changes. */
  readonly order: number | undefined;
}

export interface Study {
  readonly what: string;
  readonly unit: string;
  readonly rows: readonly StudyRow[];
}

interface Loads {
  /** One pressure step first, MPa. */
  readonly pressure: number;
  /** Then steps of room made, litres: the same on every mesh. */
  readonly litres: readonly number[];
}

const SPLITS = [1, 2, 4, 8, 16];
const COARSEST = 20;
/** A thousandth of the usual one, so that what is left unbalanced does not pass for an order. */
const TIGHT = 1e-8;

/** The value after each load step, mesh by mesh, coarse to fine. */
function runs(tank: Tank, loads: Loads, read: (shell: Shell, state: State) => number): Run[] {
  return SPLITS.map((split) => {
    const shell = shellOf(tank, { elements: COARSEST, layers: 5, split });
    const walk = walkFrom(solverFor(shell, 0, tank.length / 2, TIGHT));
    pressureStep(walk, loads.pressure, 0);
    const values = loads.litres.map((litres) => {
      const settled = pumpStep(walk, litres * 1e6, 0);
      if (settled.kind === 'failed') throw new Error(`${tank.name}, split ${split}: ${settled.reason}`);
      return read(shell, walk.now);
    });
    return { elements: shell.length.length, values };
  });
}

interface Run {
  readonly elements: number;
  readonly values: readonly number[];
}

function study(what: string, unit: string, all: readonly Run[], from: number, to: number): Study {
  const window = all.map((run) => ({ ...run, values: run.values.slice(from, to) }));
  const changes = window.map((run, i) => (i === 0 ? undefined : rms(run.values, window[i - 1].values)));
  const rows = window.map((run, i): StudyRow => {
    const [before, now] = [changes[i - 1], changes[i]];
    const order = before === undefined || now === undefined ? undefined : Math.log2(before / now);
    return { elements: run.elements, value: run.values[run.values.length - 1], change: now, order };
  });
  return { what, unit, rows };
}

const rms = (a: readonly number[], b: readonly number[]): number =>
  Math.sqrt(a.reduce((sum, x, i) => sum + (x - b[i]) ** 2, 0) / a.length);

const hemisphere = {
  shape: { kind: 'hemispherical' },
  wall: 2,
  straightFlange: 0,
  steel: SWIFT_STEEL,
} as const;
const CAPSULE: Tank = { ...TANK_C3, name: 'capsule', heads: { top: hemisphere, bottom: hemisphere } };

const steps = (n: number, litres: number): number[] => Array.from({ length: n }, () => litres);

const poleRise = (shell: Shell, state: State): number => -state.move[3 * shell.mesh.spine[0] + 1];

/** Movement of the tangent line, outward. */
function jointRise(shell: Shell, state: State): number {
  const first = shell.mesh.pieces.find((piece) => piece.span.part === 'barrel');
  return first === undefined ? Number.NaN : state.move[3 * first.from];
}

let known: readonly Study[] | undefined;

/** Through first yield of heads and barrel; then, for information, on to 3.7 L more, where a plastic front lingers. */
export function studies(): readonly Study[] {
  if (known !== undefined) return known;
  const elastic = runs(CAPSULE, { pressure: 0.2, litres: steps(3, 0.02) }, jointRise);
  const plastic = runs(TANK_C3, { pressure: 1.1, litres: steps(40, 0.1) }, poleRise);
  known = [
    study('elastic edge bending, cylinder and hemisphere: movement of the tangent line', 'mm', elastic, 0, 3),
    study('C3 through yield, 0.1 to 1.5 L after 1.1 MPa: rise of a pole', 'mm', plastic, 0, 15),
    study(
      'C3 beyond yield, 1.6 to 4.0 L after 1.1 MPa: rise of a pole (for information)',
      'mm',
      plastic,
      15,
      40,
    ),
  ];
  return known;
}

const orderCheck = (which: number, row: number, name: string): Check => ({
  id: `order/${name}-${row}`,
  what: `observed order of convergence, ${name}, meshes ${row - 1}, ${row} and ${row + 1} of 5`,
  ours: () => studies()[which].rows[row].order ?? 0,
  theirs: 2,
  unit: '1',
  tolerance: plusMinus(0.2),
  reason: 'bound set for this project: plastic fronts that pass from element to element leave a tenth or two',
  standing: 'published',
});

export const convergence: Source = {
  key: 'zienkiewicz-1977',
  citation:
    'Zienkiewicz, Bauer, Morgan & Oñate, Int. J. Numer. Meth. Engng 11 (1977) 1545: linear element with one point; its order is 2 by interpolation theory',
  checks: [
    ...[3, 4].map((row) => orderCheck(0, row, 'elastic edge bending')),
    ...[3, 4].map((row) => orderCheck(1, row, 'pole rise of C3 through yield')),
  ],
};
