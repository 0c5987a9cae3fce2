/**
 * Measured tensile tests of annealed 304L bar, from the raw files: K. N. Karlson et al., Tomography of Materials and
 * Structures 2 (2023) 100007, doi 10.1016/j.tmater.2023.100007 (Sandia National Laboratories, BSD-3-Clause). The files
 * stay in the reference folder beside the clone; without it these tests are skipped and say so.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type CouponResult, evaluateCoupon, trueStressAt } from '@hoopwright/core/steel';
import { type CouponHints, readCouponFile } from '@hoopwright/wire/coupon';
import { describe, expect, test } from 'vitest';

const folder = fileURLToPath(new URL('../../shared/reference/304L-tension/', import.meta.url));
const there = existsSync(folder);
if (!there)
  console.log('Skipped: the raw 304L tests are not beside this clone (../shared/reference/304L-tension).');

const evaluated = (name: string, hints: CouponHints = {}): CouponResult => {
  const read = readCouponFile(readFileSync(`${folder}${name}`), hints);
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return evaluateCoupon(read.test);
};

/** Eight E8 bars in the order of the paper: Rp0.2, Rm (MPa), engineering strain at maximum force. */
const PUBLISHED = [
  [222.4, 579.7, 0.62],
  [219.1, 575.6, 0.667],
  [216.6, 574.9, 0.622],
  [215.4, 573.6, 0.646],
  [229.7, 578.9, 0.569],
  [230.2, 581.4, 0.555],
  [231.1, 581.6, 0.578],
  [234.6, 583.0, 0.565],
] as const;

/** The files at hand are the first four of them: each is nearer to its own bar than to any other (tested below). */
const BARS = ['R1S1-Large.dat', 'R1S2-Large.dat', 'R2S1-Large.dat', 'R2S2-Large.dat'] as const;

const NAMED: CouponHints = { strain: 'engineering_strain', stress: 'engineering_stress', stressUnit: 'ksi' };

const figures = (result: CouponResult): readonly [number, number, number] => [
  result.proof02!,
  result.strength!,
  result.uniform! + result.strength! / result.youngUsed,
];

describe.skipIf(!there)('E8 bars of 304L', () => {
  test.each([
    ['named columns and ksi', NAMED],
    ['no hint at all', {}],
  ])(
    'Rp0.2 within 2 %, Rm within 0.5 %, uniform strain within 10 % of the published ones (%s)',
    (_, hints) => {
      BARS.forEach((name, k) => {
        const [proof, strength, uniform] = figures(evaluated(name, hints));
        expect(Math.abs(proof / PUBLISHED[k][0] - 1), `Rp0.2 of ${name}`).toBeLessThan(0.02);
        expect(Math.abs(strength / PUBLISHED[k][1] - 1), `Rm of ${name}`).toBeLessThan(0.005);
        expect(Math.abs(uniform / PUBLISHED[k][2] - 1), `uniform strain of ${name}`).toBeLessThan(0.1);
      });
    },
  );

  test('each file is nearest to the published bar of its own place', () => {
    BARS.forEach((name, k) => {
      const [proof, strength] = figures(evaluated(name));
      const far = PUBLISHED.map(([p, r]) => Math.hypot(proof / p - 1, strength / r - 1));
      expect(far.indexOf(Math.min(...far)), name).toBe(k);
    });
  });

  test('a handful of shaken readings in the elastic part carry no modulus, and it is said', () => {
    for (const name of BARS) {
      const result = evaluated(name);
      expect(result.young, name).toBeUndefined();
      expect(
        result.findings.map(({ kind }) => kind),
        name,
      ).toContain('no-slope');
    }
  });

  test('the mean true curve is within 3 % of the published mean of eight bars', () => {
    // MPa, computed from all eight files; four of them are softer at yield (Rp0.2 218 against 225 MPa).
    const mean = [
      [0.002, 225.7],
      [0.005, 254.7],
      [0.01, 275.2],
      [0.02, 301.3],
      [0.03, 323.3],
      [0.04, 344.0],
      [0.05, 363.4],
      [0.07, 401.8],
      [0.1, 454.1],
      [0.15, 533.3],
      [0.2, 606.0],
      [0.25, 675.3],
      [0.3, 740.2],
      [0.35, 800.9],
      [0.4, 857.1],
    ] as const;
    const curves = BARS.map((name) => evaluated(name).trueCurve);
    for (const [ep, stress] of mean) {
      const ours = curves.reduce((sum, curve) => sum + trueStressAt(curve, ep)! / curves.length, 0);
      expect(Math.abs(ours / stress - 1), `at ${ep}: ${ours}`).toBeLessThan(0.03);
    }
  });

  test('every bar may be used, whatever its pauses and unloadings', () => {
    for (const name of BARS) expect(evaluated(name).verdict.usable, name).toBe(true);
  });
});

const SLOW = ['Ring1-1_Pull_0.0001', 'Ring2-12-Pull2_0.0001', 'Ring3-1_Pull_0.0001'];
const FAST = ['Ring1-17_Pull_0.01', 'Ring2-7_Pull_0.01', 'Ring3-20_Pull_0.01'];
const small = (name: string): CouponResult => evaluated(`SML4188-${name}.csv`);

/** Rise of true stress over two decades of rate for the whole series of small bars, and its tolerance; fractions. */
const RATE_EFFECT = [
  [0.01, 0.05, 0.02],
  [0.05, 0.03, 0.015],
  [0.1, 0.025, 0.015],
] as const;

describe.skipIf(!there)('small bars of 304L at two rates', () => {
  test('the rates are read from the clock: about two decades apart', () => {
    for (const name of SLOW) expect(small(name).rate! / 1.5e-4).toBeCloseTo(1, 0);
    for (const name of FAST) expect(small(name).rate! / 1.4e-2).toBeCloseTo(1, 0);
  });

  // Bars of one ring that are numbered as neighbours: what differs from place to place in the stock is nearly out of the way.
  test('the neighbours 1 and 20 of ring 3 show the rate effect of the series', () => {
    const [slow, fast] = [small('Ring3-1_Pull_0.0001'), small('Ring3-20_Pull_0.01')];
    for (const [ep, effect, tolerance] of RATE_EFFECT) {
      const ours = trueStressAt(fast.trueCurve, ep)! / trueStressAt(slow.trueCurve, ep)! - 1;
      expect(Math.abs(ours - effect), `at ${ep}: ${ours}`).toBeLessThan(tolerance);
    }
  });

  // The plain means of three and three bars give +12.6, +8.2 and +6.1 %: outside the tolerance above, but so is their
  // scatter. Two and two degrees of freedom: Student's t 2.78 for 95 %.
  test('three and three bars agree with it within their scatter, which is larger than the effect', () => {
    for (const [ep, effect] of RATE_EFFECT) {
      const logs = [SLOW, FAST].map((names) =>
        names.map((name) => Math.log(trueStressAt(small(name).trueCurve, ep)!)),
      );
      const [slow, fast] = logs.map(
        (values) => values.reduce((sum, value) => sum + value, 0) / values.length,
      );
      const squares = logs.map((values, k) =>
        values.reduce((sum, value) => sum + (value - [slow, fast][k]) ** 2, 0),
      );
      const error = Math.sqrt(((squares[0] + squares[1]) / 4) * (1 / 3 + 1 / 3));
      const ours = fast - slow;
      expect(ours, `at ${ep}`).toBeGreaterThan(0);
      expect(Math.abs(ours - Math.log1p(effect)), `at ${ep}: ${ours} +- ${error}`).toBeLessThan(2.78 * error);
    }
  });
});
