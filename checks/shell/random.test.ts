import { expect, test } from 'vitest';
import { diceOf } from '../../core/math/dice.ts';
import { randomEnd } from './randomEnd.ts';

const SEEDS = Array.from({ length: 40 }, (_, i) => 40_000 + i);

test('40 random but buildable tanks end in a whole path or a stated reason, with numbers throughout', () => {
  const ends = SEEDS.map((seed) => ({ seed, ...randomEnd(diceOf(seed)) }));
  for (const { seed, finite, whole, reason } of ends) {
    expect(finite, `seed ${seed}: every number is one`).toBe(true);
    expect(whole || reason !== undefined, `seed ${seed}: whole, or a reason`).toBe(true);
  }
  expect(ends.filter(({ whole }) => whole).length).toBeGreaterThan(0.9 * SEEDS.length);
}, 120_000);
