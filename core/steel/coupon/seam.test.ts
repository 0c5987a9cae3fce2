import { describe, expect, test } from 'vitest';
import { preloadResult, seamResult, type SeamFigures } from './seam.ts';

/** Points of K (e0 + ep)^n, dense enough that straight lines between them are right to 1e-4. */
const coupon = (
  K: number,
  figures: { strength?: number; uniform?: number } = {},
  e0 = 0.0291,
): SeamFigures => {
  const plastic = Array.from({ length: 400 }, (_, k) => 0.0001 + 0.0009 * k);
  const stress = plastic.map((ep) => K * (e0 + ep) ** 0.46);
  return { ...figures, youngUsed: 196_000, trueCurve: { plastic, stress, ends: 'uniform' } };
};

const plates = [
  coupon(1300, { strength: 611, uniform: 0.52 }),
  coupon(1320, { strength: 617, uniform: 0.5 }),
  coupon(1311, { strength: 613, uniform: 0.51 }),
];

/** A bar of seam (width share `share`) and plate in series: at each force the extensions add up. */
const inSeries = (seamK: number, share: number): SeamFigures => {
  const young = 196_000;
  const pulled = (K: number, ep: number) => {
    const sigma = K * (0.0291 + ep) ** 0.46;
    const strain = Math.expm1(ep + sigma / young);
    return { strain, force: sigma / (1 + strain) };
  };
  const strainUnder = (K: number, force: number) => {
    let [low, high] = [0, 0.4];
    if (pulled(K, 0).force > force) return force / young;
    for (let step = 0; step < 60; step++) {
      const middle = (low + high) / 2;
      if (pulled(K, middle).force < force) low = middle;
      else high = middle;
    }
    return pulled(K, low).strain;
  };
  const forces = Array.from({ length: 480 }, (_, k) => 250 + 0.45 * k);
  const points = forces.map((force) => {
    const strain = share * strainUnder(seamK, force) + (1 - share) * strainUnder(1311, force);
    const stress = force * (1 + strain);
    return { plastic: Math.log1p(strain) - stress / young, stress };
  });
  const from = points.findIndex(({ plastic }) => plastic > 1e-6);
  const [plastic, stress] = [
    points.slice(from).map((p) => p.plastic),
    points.slice(from).map((p) => p.stress),
  ];
  return { youngUsed: young, trueCurve: { plastic, stress, ends: 'uniform' } };
};

describe('a coupon across the seam', () => {
  test('has its factors over the middle plate coupon', () => {
    const result = seamResult(coupon(1250, { strength: 580, uniform: 0.34 }), plates, { broke: 'seam' });
    expect(result.strengthFactor).toBeCloseTo(580 / 613, 6);
    expect(result.uniformFactor).toBeCloseTo(0.34 / 0.51, 6);
    expect(result.flowFactor).toBeCloseTo(1250 / 1311, 3);
    expect(result.match.map(({ verdict }) => verdict)).toEqual(Array(5).fill('under'));
    expect(result).toMatchObject({ matchOf: 'gauge', broke: 'seam' });
  });

  test('within 2 % of the plate is even', () => {
    const verdicts = seamResult(coupon(1330), plates).match.map(({ verdict }) => verdict);
    expect(verdicts).toEqual(Array(5).fill('even'));
  });

  test.each([1180, 1440])('seam metal of K %d in series with plate is told apart by its width', (K) => {
    const result = seamResult(inSeries(K, 0.24), plates, { place: { seamWidth: 12, gauge: 50 } });
    // The plate's curve is laid down at 18 strains; straight lines between them bulge by up to 0.6 %.
    for (const { ratio, plastic } of result.match)
      expect(Math.abs(ratio / (K / 1311) - 1), `at ${plastic}`).toBeLessThan(0.02);
    expect(result.matchOf).toBe('metal');
    expect(result.match.length).toBeGreaterThanOrEqual(3);
    const whole = seamResult(inSeries(K, 0.24), plates);
    expect(Math.abs(whole.flowFactor! - 1)).toBeLessThan(Math.abs(result.flowFactor! - 1));
  });

  test('without plate coupons gives no factor, and says nothing of where it broke unless told', () => {
    expect(seamResult(coupon(1250, { strength: 580 }), [])).toEqual({
      match: [],
      matchOf: 'gauge',
      broke: 'not stated',
    });
  });
});

test('a preloaded coupon tells what the preload gave and what it left', () => {
  const after = { ...coupon(1311, { uniform: 0.41 }), proof02: 412 };
  const before = plates.map((plate, k) => ({ ...plate, proof02: 281 + 3 * k }));
  const result = preloadResult(after, before, 400);
  expect(result.proofFactor).toBeCloseTo(412 / 284, 6);
  expect(result.kept).toBeCloseTo(1.03, 6);
  expect([result.uniformLeft, result.uniformOfPlate]).toEqual([0.41, 0.51]);
});
