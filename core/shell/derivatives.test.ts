import { describe, expect, test } from 'vitest';
import { diceOf } from '../math/dice.ts';
import { assemble, thinWalls, workFor } from './assemble.ts';
import type { Loading, Work } from './work.ts';
import { type Shell, shellOf } from './shell.ts';
import { CREEPING, EVEN, EVERYTHING } from './specimen.ts';
import { cloneState, type State, unformed } from './state.ts';

/** A coarse mesh: every kind of element stands in it, and the dense differences stay cheap. */
const SETTINGS = { elements: 14, layers: 5 };

/** Pressures and weights far beyond any tank, so that a wrong term of theirs would show beside the stiffness of steel. */
const cases: [string, Shell, Loading, number, number][] = [
  [
    'everything at once, with head of water and rate effect',
    shellOf(EVERYTHING, SETTINGS),
    { pressure: 431, weight: 0.7, gauge: 255 },
    40,
    6e-3,
  ],
  [
    'a head far thinner than its barrel',
    shellOf(
      { ...EVEN, courses: [{ length: 617, wall: 3.9, steel: CREEPING }] },
      { ...SETTINGS, elements: 24 },
    ),
    { pressure: 220, weight: 0, gauge: 0 },
    0,
    9e-4,
  ],
];

/** Displacements of a tank grown by a fraction, roughened by dice so that nothing cancels. */
function roughened(shell: Shell, growth: number): State {
  const state = unformed(shell);
  const dice = diceOf(5);
  for (let k = 0; k < state.move.length; k++)
    state.move[k] =
      (growth / 6e-3) * (k % 3 === 2 ? 2e-4 : 4e-3) * dice.normal() +
      (k % 3 === 0 ? growth * shell.R[k / 3] : 0);
  return state;
}

/** Entry (row, column) of the symmetric block matrix. */
function entry({ parent }: Shell, { matrix: { diagonal, link } }: Work, row: number, column: number): number {
  const [i, r, j, c] = [Math.floor(row / 3), row % 3, Math.floor(column / 3), column % 3];
  if (i === j) return diagonal[9 * i + 3 * r + c];
  if (parent[i] === j) return link[9 * i + 3 * r + c];
  if (parent[j] === i) return link[9 * j + 3 * c + r];
  return 0;
}

describe.each(cases)('%s', (_, shell, loading, time, growth) => {
  const start = unformed(shell);
  const work = workFor(shell);
  const other = workFor(shell);
  const state = roughened(shell, growth);
  thinWalls(shell, state.move, work);
  other.thinning.set(work.thinning);
  // Twice, so that the increments guessed are those found and no straight step of the return is left.
  assemble(shell, start, state, loading, time, work);
  assemble(shell, start, state, loading, time, work);

  /** Residual and volume with one displacement moved. */
  function moved(k: number, by: number): { residual: Float64Array; volume: number } {
    const trial = cloneState(state);
    trial.move[k] += by;
    expect(assemble(shell, start, trial, loading, time, other)).toBe(true);
    return { residual: other.residual.slice(), volume: other.volume };
  }

  const size = state.move.length;
  const step = (k: number): number => (k % 3 === 2 ? 2e-7 : 1e-5);

  test('layers yield and layers do not, so that both tangents are tried', () => {
    const yielded = state.plasticEq.filter((ep) => ep > 1e-6).length;
    expect(yielded).toBeGreaterThan(0.2 * state.plasticEq.length);
    expect(yielded).toBeLessThan(state.plasticEq.length);
  });

  test('the stiffness is the derivative of the residual', () => {
    for (let k = 0; k < size; k++) {
      const h = step(k);
      const [up, down] = [moved(k, h), moved(k, -h)];
      for (let row = 0; row < size; row++) {
        const slope = (up.residual[row] - down.residual[row]) / (2 * h);
        const scale = Math.sqrt(Math.abs(entry(shell, work, k, k) * entry(shell, work, row, row)));
        // What the differences leave: steps of 1e-5 mm across curves and logarithms that bend, 3e-6 at most.
        const miss = Math.abs(slope - entry(shell, work, row, k)) / scale;
        if (miss > 1e-5) expect(`${row}, ${k}: ${miss}`).toBe('under 1e-5');
      }
    }
  });

  test('the area is the derivative of the volume', () => {
    const largest = Math.max(...work.area.map(Math.abs));
    for (let k = 0; k < size; k++) {
      const h = step(k);
      const slope = (moved(k, h).volume - moved(k, -h).volume) / (2 * h);
      // A volume of 1e8 mm³ is rounded to 1e-8 mm³: 1e-3 mm² over 2e-5 mm, 0.05 mm² over a turn of 4e-7, of areas of 1e5.
      expect(Math.abs(slope - work.area[k])).toBeLessThan((k % 3 === 2 ? 1e-6 : 5e-8) * largest);
    }
  });
});
