import { describe, expect, test } from 'vitest';
import { madeCoupon, type CouponRecipe } from './made.ts';
import type { CouponTest } from './record.ts';
import { evaluateCoupon } from './coupon.ts';
import { flowOf } from '../flow.ts';

const recipe = (change: Partial<CouponRecipe> = {}): CouponRecipe => ({
  flow: flowOf({ law: 'swift', K: 1310, n: 0.46, e0: 0.0291 }),
  young: 193_000,
  rate: 2.4e-4,
  points: { elastic: 45, yield: 60, plastic: 140, neck: 25 },
  neck: { strain: 0.11, left: 0.68 },
  noise: { strain: 4e-6, stress: 0.6 },
  ...change,
});

/** Park & Miller: one seed, one sequence. */
const dice = (seed: number) => () => {
  seed = (seed * 48271) % 2147483647;
  return seed / 2147483647;
};

const made = (change: Partial<CouponRecipe> = {}, seed = 17) => madeCoupon(recipe(change), dice(seed));
const still = { noise: { strain: 0, stress: 0 } };

const mapped = (
  coupon: CouponTest,
  at: (strain: number, stress: number, k: number) => [number, number],
): CouponTest => {
  const points = coupon.strain.map((strain, k) => at(strain, coupon.stress[k], k));
  return { ...coupon, strain: points.map(([strain]) => strain), stress: points.map(([, stress]) => stress) };
};

const kinds = (coupon: CouponTest) => evaluateCoupon(coupon).findings.map(({ kind }) => kind);
const placeOf = (coupon: CouponTest, strain: number) => coupon.strain.findIndex((value) => value > strain);

/** Unloads from point `k` by `drop` MPa and loads again, four points each way. */
const withLoop = (coupon: CouponTest, k: number, drop: number): CouponTest => {
  const parts = [0.25, 0.5, 0.75, 1, 0.75, 0.5, 0.25].map((part) => part * drop);
  const splice = (values: readonly number[], of: (part: number) => number) => [
    ...values.slice(0, k + 1),
    ...parts.map((part) => values[k] - of(part)),
    ...values.slice(k + 1),
  ];
  return {
    strain: splice(coupon.strain, (part) => part / 193_000),
    stress: splice(coupon.stress, (part) => part),
  };
};

describe('a test without noise', () => {
  const { test: clean, truth } = made(still);
  const result = evaluateCoupon(clean);

  test('gives every figure of the law it was made from', () => {
    // The slope of engineering stress falls by twice the strain: 0.2 % over the window. Straight lines between points
    // 0.034 % apart bulge by less than 1e-4.
    expect(Math.abs(result.young! / truth.young - 1)).toBeLessThan(0.002);
    expect(result.proof02! / truth.proof02).toBeCloseTo(1, 3);
    expect(result.proof10! / truth.proof10).toBeCloseTo(1, 3);
    expect(result.strength! / truth.strength).toBeCloseTo(1, 6);
    expect(result.elongation! / truth.elongation).toBeCloseTo(1, 3);
    expect(result.rate! / 2.4e-4).toBeCloseTo(1, 6);
  });

  test('has Ag at the middle of the plateau, near the maximum', () => {
    // The plateau of 0.05 % is a twelfth of Ag wide and skew, as the neck falls faster than the curve rises.
    expect(Math.abs(result.uniform! / truth.uniform - 1)).toBeLessThan(0.03);
  });

  test('is usable and has nothing found', () => {
    expect(result.findings).toEqual([]);
    expect(result.verdict).toEqual({ usable: true, reasons: [] });
  });

  test('gives the true curve back up to uniform strain and not beyond', () => {
    const out = new Float64Array(2);
    const { plastic, stress, ends } = result.trueCurve;
    for (const k of [20, 60, 110, 160]) {
      recipe().flow.at(plastic[k], out);
      expect(stress[k] / out[0]).toBeCloseTo(1, 4);
    }
    expect(ends).toBe('uniform');
    expect(plastic[plastic.length - 1]).toBeLessThan(Math.log(1 + result.uniform! + 0.004));
  });
});

describe('a test with noise', () => {
  test('keeps to the truth: proof strengths to 1 %, Rm to 0.5 %, Ag to 5 %', () => {
    for (const seed of [3, 71, 905, 4412]) {
      const { test: noisy, truth } = made({}, seed);
      const result = evaluateCoupon(noisy);
      expect(Math.abs(result.young! / truth.young - 1), `E of seed ${seed}`).toBeLessThan(0.02);
      expect(Math.abs(result.proof02! / truth.proof02 - 1), `Rp0.2 of seed ${seed}`).toBeLessThan(0.01);
      expect(Math.abs(result.proof10! / truth.proof10 - 1), `Rp1.0 of seed ${seed}`).toBeLessThan(0.01);
      expect(Math.abs(result.strength! / truth.strength - 1), `Rm of seed ${seed}`).toBeLessThan(0.005);
      expect(Math.abs(result.uniform! / truth.uniform - 1), `Ag of seed ${seed}`).toBeLessThan(0.05);
    }
  });
});

describe('the elastic part', () => {
  test('a toe is taken off, and said', () => {
    const { test: clean, truth } = made(still);
    const late = mapped(clean, (strain, stress) => [strain + 0.0011 * (1 - Math.exp(-stress / 12)), stress]);
    const result = evaluateCoupon(late);
    expect(result.toe).toBeCloseTo(0.0011, 4);
    expect(Math.abs(result.proof02! / truth.proof02 - 1)).toBeLessThan(0.003);
    expect(result.findings.map(({ kind }) => kind)).toEqual(['toe']);
  });

  test('too few points give no modulus and the nominal offset line', () => {
    const { test: coarse } = made({ ...still, points: { elastic: 4, yield: 60, plastic: 140, neck: 25 } });
    const result = evaluateCoupon(coarse);
    expect(result.young).toBeUndefined();
    expect(result.youngUsed).toBe(200_000);
    expect(result.toe).toBe(0);
    expect(result.findings[0]).toMatchObject({ kind: 'no-slope', why: 'few' });
  });

  test('scatter about the line gives no modulus', () => {
    const result = evaluateCoupon(made({ noise: { strain: 9e-5, stress: 0.6 } }).test);
    expect(result.young).toBeUndefined();
    expect(result.findings.find(({ kind }) => kind === 'no-slope')).toMatchObject({ why: 'poor' });
  });

  test.each([152_000, 241_000])('a slope of %d MPa is not that of the steel', (young) => {
    const result = evaluateCoupon(made({ ...still, young }).test);
    expect(result.young).toBeUndefined();
    expect(result.findings.find(({ kind }) => kind === 'no-slope')).toMatchObject({ why: 'outside' });
  });

  test('slack without a slope gives no proof strength instead of a low one', () => {
    const { test: coarse } = made({ ...still, points: { elastic: 5, yield: 60, plastic: 140, neck: 25 } });
    const slack = mapped(coarse, (strain, stress, k) => [k === 0 ? 0 : strain + 0.004, stress]);
    const result = evaluateCoupon(slack);
    expect(result.proof02).toBeUndefined();
    expect(result.verdict.usable).toBe(false);
    expect(result.verdict.reasons.map(({ kind }) => kind)).toContain('slack');
  });

  test('crosshead travel gives Rm and nothing that rests on strain', () => {
    const { test: clean, truth } = made(still);
    const result = evaluateCoupon({ ...clean, extension: 'crosshead' });
    expect(result.strength).toBeCloseTo(truth.strength, 6);
    expect([result.young, result.proof02, result.uniform, result.elongation]).toEqual(
      Array(4).fill(undefined),
    );
    expect(result.verdict.usable).toBe(false);
  });
});

describe('unloading', () => {
  test.each([0.004, 0.03, 0.2])('a loop at %d strain changes no figure and is said', (strain) => {
    const { test: clean } = made(still);
    const plain = evaluateCoupon({ strain: clean.strain, stress: clean.stress });
    const looped = evaluateCoupon(withLoop(clean, placeOf(clean, strain), 160));
    expect(looped.findings.map(({ kind }) => kind)).toContain('loop');
    for (const key of ['proof02', 'proof10', 'strength', 'uniform', 'elongation'] as const)
      expect(looped[key]! / plain[key]!, key).toBeCloseTo(1, 5);
    expect(looped.verdict.usable).toBe(true);
  });

  test('a pause that lets the force sink is left out and is no slip', () => {
    const { test: clean } = made(still);
    const k = placeOf(clean, 0.12);
    const paused = mapped(clean, (strain, stress, j) => [strain, j > k && j < k + 3 ? stress - 40 : stress]);
    const result = evaluateCoupon(paused);
    expect(result.findings.map(({ kind }) => kind)).toEqual(['dip']);
    expect(result.verdict.usable).toBe(true);
  });
});

describe('slips', () => {
  const { test: clean, truth } = made();
  const slipped = (from: number, jump: number) =>
    mapped(clean, (strain, stress) => [strain > from ? strain + jump : strain, stress]);

  test.each([
    [0.03, 0.008],
    [0.03, -0.004],
    [0.0008, 0.003],
    [0.3, 0.03],
  ])('a jump of the extensometer at %d by %d is found at its point', (from, jump) => {
    const found = evaluateCoupon(slipped(from, jump)).findings.find(({ kind }) => kind === 'slip');
    expect(found).toMatchObject({ at: placeOf(clean, from) });
  });

  test('a slip at the strains of the stretch bars the test, but not what was read before it', () => {
    const result = evaluateCoupon(slipped(0.03, 0.008));
    expect(result.verdict.usable).toBe(false);
    expect(Math.abs(result.proof02! / truth.proof02 - 1)).toBeLessThan(0.01);
    expect(Math.abs(result.strength! / truth.strength - 1)).toBeLessThan(0.005);
    expect([result.uniform, result.elongation]).toEqual([undefined, undefined]);
    expect(result.trueCurve.plastic.at(-1)).toBeLessThan(0.03);
  });

  test('a slip beyond them shortens the curve and leaves it usable', () => {
    const result = evaluateCoupon(slipped(0.3, 0.03));
    expect(result.verdict.usable).toBe(true);
    expect(result.trueCurve.ends).toBe('record');
  });

  test('a slip before 0.2 % leaves no proof strength', () => {
    expect(evaluateCoupon(slipped(0.0008, 0.003)).proof02).toBeUndefined();
  });

  test('grips that slip while the travel runs on are found', () => {
    const k = placeOf(clean, 0.05);
    const grips = mapped(clean, (strain, stress, j) => [
      j > k ? strain + 0.02 : strain,
      j > k && j < k + 6 ? stress * 0.8 : stress,
    ]);
    expect(evaluateCoupon(grips).verdict.reasons.map(({ kind }) => kind)).toContain('grip-slip');
  });

  test('a pause in which the metal creeps on slowly is no slip, as the clock shows', () => {
    const k = placeOf(clean, 0.12);
    const time = clean.time!.map((t, j) => t + (j > k ? 40 * Math.min(j - k, 3) : 0));
    const crept = mapped(clean, (strain, stress, j) => [
      strain + (j > k ? 0.006 : 0),
      j > k && j < k + 4 ? stress - 40 : stress,
    ]);
    const paused = evaluateCoupon({ ...crept, time });
    expect(paused.findings.map(({ kind }) => kind)).toContain('dip');
    expect(paused.findings.map(({ kind }) => kind)).not.toContain('grip-slip');
    const { time: _, ...timeless } = crept;
    expect(kinds(timeless)).toContain('grip-slip');
  });

  test('a missing stretch of the record is not called a slip', () => {
    const keep = clean.strain.map((strain) => !(strain > 0.03 && strain < 0.06));
    const cut = (values: readonly number[]) => values.filter((_, k) => keep[k]);
    const gap = { strain: cut(clean.strain), stress: cut(clean.stress) };
    expect(kinds(gap)).not.toContain('slip');
  });

  test('a change of the recording speed is not called a slip', () => {
    const k = placeOf(clean, 0.05);
    const cut = (values: readonly number[]) => values.filter((_, j) => j < k || (j - k) % 9 === 0);
    expect(kinds({ strain: cut(clean.strain), stress: cut(clean.stress) })).not.toContain('slip');
  });
});

describe('one wrong figure', () => {
  const { test: clean, truth } = made();
  test.each([
    ['stress', 150, 10],
    ['stress', 90, 0.1],
    ['strain', 150, 10],
    ['strain', 60, 3],
    ['strain', 120, 0.1],
  ] as const)('in %s at point %d, times %d, is left out and named', (of, at, factor) => {
    const wrong = { ...clean, [of]: clean[of].map((value, k) => (k === at ? value * factor : value)) };
    const result = evaluateCoupon(wrong);
    expect(result.findings).toContainEqual({ kind: 'lone-point', at, of, value: wrong[of][at] });
    expect(Math.abs(result.proof02! / truth.proof02 - 1)).toBeLessThan(0.01);
    expect(Math.abs(result.strength! / truth.strength - 1)).toBeLessThan(0.005);
    expect(Math.abs(result.elongation! / truth.elongation - 1)).toBeLessThan(0.01);
  });
});

describe('the end', () => {
  const { test: clean, truth } = made();
  const until = (strain: number): CouponTest => {
    const k = placeOf(clean, strain);
    return { strain: clean.strain.slice(0, k), stress: clean.stress.slice(0, k) };
  };

  test('a record that ends while the force rises has no Rm', () => {
    const result = evaluateCoupon(until(0.12));
    expect([result.strength, result.uniform, result.elongation]).toEqual([undefined, undefined, undefined]);
    expect(result.findings.map(({ kind }) => kind)).toContain('ends-rising');
    expect(result.verdict.usable).toBe(true);
  });

  test('a load cell at its limit gives no Rm', () => {
    const result = evaluateCoupon(mapped(clean, (strain, stress) => [strain, Math.min(stress, 470)]));
    expect(result.findings.map(({ kind }) => kind)).toContain('flat-top');
    expect([result.strength, result.uniform]).toEqual([undefined, undefined]);
  });

  test('a record that ends in the neck gives A as at least that', () => {
    const k = clean.strain.length - 8;
    const result = evaluateCoupon({ strain: clean.strain.slice(0, k), stress: clean.stress.slice(0, k) });
    expect(result.elongation!).toBeLessThan(truth.elongation);
    expect(result.findings.map(({ kind }) => kind)).toContain('ends-before-break');
  });

  test('a break without a neck is named', () => {
    const early = until(0.31);
    const broken = { strain: [...early.strain, 0.3101, 0.3102], stress: [...early.stress, 3, 2] };
    expect(kinds(broken)).toContain('no-neck');
  });

  test('a neck outside the gauge leaves Rm and Ag and takes A away', () => {
    const top = clean.stress.indexOf(Math.max(...clean.stress));
    const outside = mapped(clean, (strain, stress, k) =>
      k <= top ? [strain, stress] : [clean.strain[top] - (clean.stress[top] - stress) / 193_000, stress],
    );
    const result = evaluateCoupon(outside);
    expect(result.findings.map(({ kind }) => kind)).toContain('outside-gauge');
    expect(result.elongation).toBeUndefined();
    expect(Math.abs(result.strength! / truth.strength - 1)).toBeLessThan(0.005);
    // The plateau is seen on its rising side only, and noise of 0.1 % makes the top of it wander.
    expect(Math.abs(result.uniform! / truth.uniform - 1)).toBeLessThan(0.1);
  });

  test('an extensometer taken off leaves Rm', () => {
    const off = mapped(clean, (strain, stress) => [Math.min(strain, 0.153), stress]);
    const result = evaluateCoupon(off);
    expect(result.findings.map(({ kind }) => kind)).toContain('gauge-off');
    expect(Math.abs(result.strength! / truth.strength - 1)).toBeLessThan(0.005);
    expect([result.uniform, result.elongation]).toEqual([undefined, undefined]);
  });

  test('a handful of points is not a test', () => {
    const few = [3, 30, 60, 100, 130, 200, 240];
    const result = evaluateCoupon({
      strain: few.map((k) => clean.strain[k]),
      stress: few.map((k) => clean.stress[k]),
    });
    expect(result.verdict.reasons.map(({ kind }) => kind)).toContain('few-points');
  });
});

describe('the rate', () => {
  const { test: clean } = made();
  test('is absent without time, and that is said', () => {
    const { time: _, ...timeless } = clean;
    expect(evaluateCoupon(timeless).rate).toBeUndefined();
    expect(kinds(timeless)).toEqual(['no-rate']);
  });
  test('of a record in minutes is questioned', () => {
    expect(kinds({ ...clean, time: clean.time!.map((t) => t / 60) })).toContain('rate-unusual');
  });
  test('of a clock that runs back is not given', () => {
    const result = evaluateCoupon({ ...clean, time: clean.time!.map((t) => -t) });
    expect(result.rate).toBeUndefined();
  });
});

test('stress that is no steel’s makes a test unusable', () => {
  const { test: clean } = made();
  const result = evaluateCoupon(mapped(clean, (strain, stress) => [strain, stress * 6.895]));
  expect(result.verdict.reasons.map(({ kind }) => kind)).toContain('unlike');
});

test('arrays of unequal length or values that are not finite are our own fault and throw', () => {
  expect(() => evaluateCoupon({ strain: [0, 0.1], stress: [3] })).toThrow('equally long');
  expect(() => evaluateCoupon({ strain: [0, Number.NaN], stress: [3, 7] })).toThrow('finite');
});
