import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { firstYieldRefusal, flowOf } from './flow.ts';
import { twoSlopeOf, twoSlopePlastic } from './flow-two-slope.ts';
import type { FlowLaw } from './hardening.ts';

const laws: FlowLaw[] = [
  { law: 'swift', K: 1350, n: 0.45, e0: 0.0155 },
  { law: 'voce', yield: 249, rise: 1031, steepness: 2.18 },
  { law: 'ludwik', yield: 224, K: 1230, n: 0.724 },
  { law: 'ludwigson', K: 1349, n: 0.497, k1: 5.144, k2: -21.3 },
  { law: 'hollomon', K: 916, n: 0.26 },
  { law: 'two-slope', Rp02: 170, Rm: 485 },
  { law: 'two-slope', Rp02: 420, Rm: 560 },
  { law: 'points', plastic: [0, 0.006, 0.02, 0.07, 0.3], stress: [222, 251, 307, 402, 741] },
  { law: 'points', plastic: [0.002, 0.005, 0.03, 0.1, 0.4], stress: [225.7, 254.7, 323.3, 454.1, 857.1] },
];

const at = (law: FlowLaw, ep: number, factor = 1): { stress: number; slope: number } => {
  const out = new Float64Array(2);
  flowOf(law, factor).at(ep, out);
  return { stress: out[0], slope: out[1] };
};

describe.each(laws)('$law', (law) => {
  test('the slope is the derivative of the stress', () => {
    // Central difference of step d: its own error is d^2 f'''/6 (under 3e-6 of a power law at d = x / 300, more
    // where a cubic meets its neighbour and the third derivative jumps), and rounding 1e-13 of the stress over d.
    fc.assert(
      fc.property(fc.double({ min: 1e-5, max: 0.6, noNaN: true }), (ep) => {
        const d = ep / 1000;
        const slope = at(law, ep).slope;
        const difference = (at(law, ep + d).stress - at(law, ep - d).stress) / (2 * d);
        expect(Math.abs(difference - slope)).toBeLessThan(
          2e-3 * Math.abs(slope) + (1e-12 * at(law, ep).stress) / d,
        );
      }),
      { seed: 41, numRuns: 400 },
    );
  });

  test('the stress is the integral of the slope from zero', () => {
    // In ln(ep), where every law is smooth; the part under 1e-12 is straight. Trapezoids, 40000 of them.
    const flow = flowOf(law);
    const out = new Float64Array(2);
    const [from, to, n] = [Math.log(1e-12), Math.log(0.35), 40000];
    let sum = 0;
    for (let i = 0; i <= n; i++) {
      const ep = Math.exp(from + ((to - from) * i) / n);
      flow.at(ep, out);
      sum += (i === 0 || i === n ? 0.5 : 1) * out[1] * ep;
    }
    const rise = (sum * (to - from)) / n;
    expect(Math.abs(at(law, 0.35).stress - at(law, 0).stress - rise)).toBeLessThan(
      1e-6 * at(law, 0.35).stress,
    );
  });

  test('stress and slope are finite and positive at zero strain', () => {
    const { stress, slope } = at(law, 0);
    expect(stress).toBeGreaterThan(0);
    expect(slope).toBeGreaterThan(0);
    expect(slope).toBeLessThan(1e10);
  });

  test('the factor multiplies stress and slope', () => {
    for (const ep of [0, 0.0031, 0.17, 0.93]) {
      const [plain, raised] = [at(law, ep), at(law, ep, 1.067)];
      expect(raised.stress / plain.stress).toBeCloseTo(1.067, 12);
      expect(raised.slope / plain.slope).toBeCloseTo(1.067, 12);
    }
  });
});

test('the two-slope curve gives back the strain that the code states at each stress', () => {
  const curve = twoSlopeOf(170, 485);
  for (const ep of [2.2e-5, 0.0007, 0.0123, 0.21, 0.47]) {
    const { stress } = at({ law: 'two-slope', Rp02: 170, Rm: 485 }, ep);
    expect(twoSlopePlastic(curve, stress) / ep).toBeCloseTo(1, 6);
  }
});

test('a curve through points keeps its last slope beyond them and says where they end', () => {
  const law: FlowLaw = { law: 'points', plastic: [0, 0.01, 0.05, 0.2], stress: [210, 281, 369, 611] };
  expect(flowOf(law).evidence).toBe(0.2);
  const last = at(law, 0.2);
  expect(at(law, 0.5).stress).toBeCloseTo(last.stress + 0.3 * last.slope, 9);
});

test('points that rise are joined by a curve that rises', () => {
  fc.assert(
    fc.property(
      fc.array(
        fc.tuple(
          fc.double({ min: 1e-4, max: 0.1, noNaN: true }),
          fc.double({ min: 0, max: 90, noNaN: true }),
        ),
        {
          minLength: 2,
          maxLength: 12,
        },
      ),
      (steps) => {
        let [ep, stress] = [0, 200];
        const plastic = [0];
        const stresses = [200];
        for (const [dx, dy] of steps) {
          plastic.push((ep += dx));
          stresses.push((stress += dy));
        }
        const flow = flowOf({ law: 'points', plastic, stress: stresses });
        const out = new Float64Array(2);
        for (let i = 0; i <= 300; i++) {
          flow.at((ep * i) / 300, out);
          expect(out[1]).toBeGreaterThanOrEqual(-1e-9 * Math.abs(stress / ep));
        }
      },
    ),
    { seed: 7, numRuns: 200 },
  );
});

test('a pure power law is refused for first yield, with the stress it would give', () => {
  expect(firstYieldRefusal({ law: 'hollomon', K: 1400, n: 0.44 })).toContain('91 MPa at 0.2 %');
  expect(firstYieldRefusal(laws[0])).toBeUndefined();
});

test('parameters that make no curve are thrown back with their numbers', () => {
  expect(() => flowOf({ law: 'swift', K: 1350, n: 0.45, e0: 0 })).toThrow('zero strain');
  expect(() => flowOf({ law: 'two-slope', Rp02: 500, Rm: 485 })).toThrow('Rp0.2 500 and Rm 485');
  expect(() => flowOf({ law: 'points', plastic: [0, 0.1, 0.1], stress: [1, 2, 3] })).toThrow('must rise');
});
