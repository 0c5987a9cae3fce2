import { describe, expect, test } from 'vitest';
import { FAULTS, faultTrial } from './faults.ts';
import { quickOf } from './world.ts';

// Three of each here; the soak (bench/faults.soak.ts) has hundreds.
const quick = quickOf(36, 54_000);
const seeds = [55_001, 55_002, 55_003];
/** A tenth of the 4 % that is planned. */
const SOON = 0.004;

describe('what is wrong with an invented tank or its instruments', () => {
  for (const fault of FAULTS.filter((one) => one !== 'none'))
    test(`${fault}: called soon after it shows, with the truth among the first two explanations`, () => {
      for (const seed of seeds) {
        const { called, observable, explained, truth } = faultTrial({ seed, fault, quick });
        expect((called ?? Infinity) - (observable ?? called ?? 0)).toBeLessThan(SOON);
        expect(explained?.ranked.slice(0, 2).map(({ explanation }) => explanation)).toContain(truth);
      }
    });

  test('is not called where nothing is wrong', () => {
    for (const seed of seeds) expect(faultTrial({ seed, fault: 'none', quick }).called).toBeUndefined();
  });
});
