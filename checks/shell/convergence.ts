/** Observed order of convergence of the shell on nested meshes, at fixed load steps. The tables go into VERIFICATION.md. */
import { heightOf, midPlastic, outsideRadius } from '../../core/shell/read.ts';
import { type Shell, shellOf } from '../../core/shell/shell.ts';
import { solverFor } from '../../core/shell/solve.ts';
import type { State } from '../../core/shell/state.ts';
import { pumpStep, walkFrom } from '../../core/stretch/walk.ts';
import type { Tank } from '../../core/tank/tank.ts';
import { type Check, plusMinus, type Source } from '../check.ts';
import { SWIFT_STEEL, TANK_C3 } from './tankC3.ts';

export interface Study {
  readonly what: string;
  readonly unit: string;
  readonly rows: readonly {
    readonly elements: number;
    readonly value: number;
    /** Logarithm to base 2 of successive differences; undefined on the two coarsest meshes. */
    readonly order: number | undefined;
  }[];
}

/** Litres of room a step: the same on every mesh. */
const ELASTIC = [0.05, 0.05];
const PLASTIC = [0.2, 0.1, 0.1, 0.1, ...Array.from({ length: 20 }, () => 0.1)];

const SPLITS = [1, 2, 4, 8, 16];
const COARSEST = 20;

function study(
  what: string,
  unit: string,
  tank: Tank,
  steps: readonly number[],
  read: (shell: Shell, state: State) => number,
): Study {
  const values = SPLITS.map((split) => {
    const shell = shellOf(tank, { elements: COARSEST, layers: 5, split });
    const walk = walkFrom(solverFor(shell, 0, tank.length / 2, 1e-8));
    for (const litres of steps) {
      const settled = pumpStep(walk, litres * 1e6, 0);
      if (settled.kind === 'failed')
        throw new Error(`${what}, split ${split}: ${settled.reason} after ${walk.now.volume} mm³`);
    }
    return { elements: shell.length.length, value: read(shell, walk.now) };
  });
  const order = (i: number): number | undefined =>
    i < 2
      ? undefined
      : Math.log2(
          Math.abs((values[i - 1].value - values[i - 2].value) / (values[i].value - values[i - 1].value)),
        );
  return { what, unit, rows: values.map((row, i) => ({ ...row, order: order(i) })) };
}

const hemisphere = {
  shape: { kind: 'hemispherical' },
  wall: 2,
  straightFlange: 0,
  steel: SWIFT_STEEL,
} as const;
const CAPSULE: Tank = { ...TANK_C3, name: 'capsule', heads: { top: hemisphere, bottom: hemisphere } };

let known: readonly Study[] | undefined;

export function studies(): readonly Study[] {
  known ??= [
    study(
      'elastic edge bending: outside radius at the joint of a cylinder and a hemisphere, after 0.1 L',
      'mm',
      CAPSULE,
      ELASTIC,
      (shell, state) => outsideRadius(shell, state, 0),
    ),
    study(
      'C3 after 2.5 L: rise of the pole',
      'mm',
      TANK_C3,
      PLASTIC,
      (shell, state) => (heightOf(shell, state) - TANK_C3.length - 2 * 125) / 2,
    ),
    study(
      'C3 after 2.5 L: plastic strain at mid-wall beside the middle',
      '1',
      TANK_C3,
      PLASTIC,
      (shell, state) => midPlastic(shell, state, shell.length.length - 1),
    ),
  ];
  return known;
}

const orderCheck = (study_: number, row: number, name: string): Check => ({
  id: `order/${name}-${row}`,
  what: `observed order of convergence, ${name}, meshes ${row - 1} to ${row + 1} of five`,
  ours: () => studies()[study_].rows[row].order ?? 0,
  theirs: 2,
  unit: '1',
  tolerance: plusMinus(0.2),
  reason:
    'a two-node element with one point is of second order; rounding and plastic fronts leave a tenth or two',
  standing: 'published',
});

export const convergence: Source = {
  key: 'zienkiewicz-1977',
  citation:
    'Zienkiewicz, Bauer, Morgan & Onate, Int. J. Numer. Meth. Engng 11 (1977) 1545: the one-point element; order 2 by interpolation theory',
  checks: [
    ...[2, 3, 4].map((row) => orderCheck(0, row, 'elastic edge bending')),
    ...[2, 3, 4].map((row) => orderCheck(1, row, 'pole rise of C3')),
  ],
};
