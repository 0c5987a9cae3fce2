import { describe, expect, test } from 'vitest';
import { drawOf, INPUTS, type SteelDraw } from '../../steel/belief/draw.ts';
import { normalQuantile } from '../../stats/normal.ts';
import { type Errors, steelAt, type Strays, type Unknowns, unknownsOf } from './unknowns.ts';

const ERRORS: Errors = { gauge: { gain: 0.005, zero: 0.01 }, girths: [] };
const STRAYS: Strays = { nearYield: 0.01, stretched: 0.001, loose: 0.001, final: 0.002 };
const ROLLING = INPUTS.indexOf('rolling');

const steel = (rolling: number): SteelDraw => drawOf([0.2, 0.1, 0.1, 0.05, 0, 1, 0, rolling, 1]);
const unknowns = (rolled: readonly number[]): Unknowns => unknownsOf(rolled.map(steel), ERRORS, STRAYS);
const at = (of: Unknowns, deviations: number): SteelDraw => {
  const z = new Float64Array(of.size);
  z[ROLLING] = deviations;
  return steelAt(of, z);
};

describe('rolling', () => {
  // Lognormal with a median of 0.2 % and a deviation of 0.35 in the logarithm, as the evidence has it.
  const rolled = Array.from(
    { length: 399 },
    (_, k) => 0.002 * Math.exp(0.35 * normalQuantile((k + 1) / 400)),
  );

  test('has the quantiles of the draws: skewed, and never under nothing', () => {
    const of = unknowns(rolled);
    for (const deviations of [-3, -2, -1, 0, 1, 2])
      expect(at(of, deviations).coldWork / (0.002 * Math.exp(0.35 * deviations))).toBeCloseTo(1, 1);
  });

  test('of a part that is not rolled stays nothing, whatever the numbers', () => {
    const of = unknowns([0, 0, 0]);
    for (const deviations of [-3, 0, 3]) expect(at(of, deviations).coldWork).toBeCloseTo(0, 8);
  });
});
