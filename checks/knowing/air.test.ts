import { expect, test } from 'vitest';
import { airTrials } from './air.ts';

// Two hundred first steps take a moment; the soak (bench/knowing.soak.ts) has two thousand of each kind.
test.each(['strokes', 'litres'] as const)(
  'by %s, air of 0.2 to 3 L is found within its stated range in nine of ten first steps',
  (supply) => {
    const { held, trials, halfWidth } = airTrials(200, 51_000, supply);
    console.log(
      `air by ${supply}: ${held} of ${trials} within the 90 % range, half width ${halfWidth.toFixed(2)} L`,
    );
    expect(held / trials).toBeGreaterThanOrEqual(0.9);
    // A range as wide as the least air that counts would find anything.
    expect(halfWidth).toBeLessThan(0.5);
  },
);
