import { type FlowLaw, flowOf } from '@hoopwright/core/steel';
import { describe, expect, test } from 'vitest';
import { scaledFlow, seamSteel, toFlowLaw, toSteel } from './toSteel.ts';

const LAWS: readonly FlowLaw[] = [
  { law: 'swift', K: 1343, n: 0.562, e0: 0.0466 },
  { law: 'voce', yield: 249, rise: 1031, steepness: 2.18 },
  { law: 'ludwik', yield: 224, K: 1230, n: 0.724 },
  { law: 'ludwigson', K: 1349, n: 0.497, k1: 5.144, k2: -21.3 },
  { law: 'hollomon', K: 916, n: 0.26 },
  { law: 'two-slope', Rp02: 170, Rm: 485 },
  { law: 'points', plastic: [0.002, 0.05, 0.2], stress: [226, 363, 606] },
];

describe.each(LAWS)('a $law seam of strength 0.85', (law) => {
  test.each([0.003, 0.04, 0.17])(
    'carries 0.85 times the stress of its plate at plastic strain %d',
    (plastic) => {
      const [scaled, factored] = [new Float64Array(2), new Float64Array(2)];
      flowOf(scaledFlow(law, 0.85)).at(plastic, scaled);
      flowOf(law, 0.85).at(plastic, factored);
      // Both are the same sum in another order: rounding only.
      expect(scaled[0] / factored[0]).toBeCloseTo(1, 12);
      expect(scaled[1] / factored[1]).toBeCloseTo(1, 9);
    },
  );
});

test('a law of the file keeps its numbers under the names of the core', () => {
  expect(toFlowLaw({ law: 'voce', yield_MPa: 249, rise_MPa: 1031, steepness: 2.18 })).toEqual(LAWS[1]);
  expect(toFlowLaw({ law: 'ludwigson', K_MPa: 1349, n: 0.497, k1: 5.144, k2: -21.3 })).toEqual(LAWS[3]);
  expect(toFlowLaw({ law: 'two-slope', Rp02_MPa: 170, Rm_MPa: 485 })).toEqual(LAWS[5]);
  expect(toFlowLaw({ law: 'points', plastic: [0.002, 0.05, 0.2], stress_MPa: [226, 363, 606] })).toEqual(
    LAWS[6],
  );
});

test('a seam as strong as its plate is of the very same steel', () => {
  const plate = toSteel({}, LAWS[0]);
  expect(seamSteel(plate, 1)).toBe(plate);
});
