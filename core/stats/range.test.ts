import { describe, expect, test } from 'vitest';
import { diceOf } from '../math/dice.ts';
import { lowQuantile, rangeOf, rankAmong } from './range.ts';
import { explainedShare, normalScores, varianceShares } from './shares.ts';

describe('a range', () => {
  test('of nineteen values holds one more such value with the chances it says', () => {
    // The next value falls into each of the twenty gaps alike: ten of them lie within, and eighteen.
    const range = rangeOf(Array.from({ length: 19 }, (_, k) => ((k * 7) % 19) + 1));
    expect(range).toEqual({ median: 10, half: [5, 15], wide: [1, 19] });
    expect(rangeOf([3])).toEqual({ median: 3, half: [3, 3], wide: [3, 3] });
  });

  test('a tank that bursts counts as above all others', () => {
    const range = rangeOf([...Array.from({ length: 9 }, (_, k) => k + 1), Infinity]);
    expect(range.median).toBe(5.5);
    expect(range.wide[1]).toBe(Infinity);
    expect(rankAmong(Infinity, [1, 2, 3], 0.4)).toBeCloseTo(0.85, 12);
    expect(rankAmong(Infinity, [1, Infinity, Infinity], 0.5)).toBeCloseTo(2.5 / 4, 12);
  });
});

describe('a low quantile', () => {
  test('59 values assure nothing but their least for 5 %, and 58 not even that', () => {
    // Wilks: 1 - 0.95^59 = 0.9515, 1 - 0.95^58 = 0.9490.
    const values = Array.from({ length: 59 }, (_, k) => 3 + k * 0.7);
    expect(lowQuantile(values, 0.05).assured).toBe(3);
    expect(lowQuantile(values.slice(1), 0.05).assured).toBeUndefined();
    expect(lowQuantile(values, 0.05).needed).toBe(59);
  });

  test('the assured value lies below the true quantile in 95 of 100 samples or more', () => {
    // True 1 % quantile of the exponential: -ln 0.99. 300 samples of 700: standard error 1.3 %, bound three of them.
    const dice = diceOf(31);
    let held = 0;
    for (let k = 0; k < 300; k++) {
      const sample = Array.from({ length: 700 }, () => -Math.log(dice.uniform()));
      const { assured } = lowQuantile(sample, 0.01);
      if (assured !== undefined && assured <= -Math.log(0.99)) held++;
    }
    expect(held / 300).toBeGreaterThan(0.95 - 0.038);
  });
});

describe('shares of a range', () => {
  const dice = diceOf(6);
  const column = (): number[] => Array.from({ length: 3000 }, () => dice.normal());
  const [a, b, c] = [column(), column(), column()];

  test('independent inputs owe the squares of their effects', () => {
    // 3a + 2b + c: 9/14, 4/14, 1/14; standard error of a share about 1 %.
    const values = a.map((x, k) => 3 * x + 2 * b[k] + c[k]);
    const { shares, unexplained } = varianceShares(values, [
      { name: 'c', columns: [c] },
      { name: 'a', columns: [a] },
      { name: 'b', columns: [b] },
    ]);
    expect(shares.map(({ name }) => name)).toEqual(['a', 'b', 'c']);
    [9 / 14, 4 / 14, 1 / 14].forEach((share, k) =>
      expect(Math.abs(shares[k].share - share)).toBeLessThan(0.04),
    );
    expect(Math.abs(unexplained)).toBeLessThan(0.01);
    expect(shares.reduce((sum, { share }) => sum + share, 0) + unexplained).toBeCloseTo(1, 9);
  });

  test('two inputs that say the same share what they owe', () => {
    const values = a.map((x, k) => x + 0.5 * b[k]);
    const { shares } = varianceShares(values, [
      { name: 'a', columns: [a] },
      { name: 'a again', columns: [a.map((x) => 2 * x + 5)] },
      { name: 'b', columns: [b] },
    ]);
    const share = (name: string): number => shares.find((one) => one.name === name)?.share ?? NaN;
    expect(share('a')).toBeCloseTo(share('a again'), 6);
    expect(Math.abs(share('b') - 0.2)).toBeLessThan(0.03);
  });

  test('a bent scale or a burst changes no share by much', () => {
    const values = a.map((x, k) => Math.exp(2 * x + b[k])).map((value) => (value > 20 ? Infinity : value));
    const { shares } = varianceShares(values, [
      { name: 'a', columns: [a] },
      { name: 'b', columns: [b] },
    ]);
    expect(Math.abs(shares[0].share - 0.8)).toBeLessThan(0.06);
  });

  test('an input that does not vary owes nothing', () => {
    const { shares } = varianceShares(a, [
      { name: 'still', columns: [a.map(() => 4)] },
      { name: 'a', columns: [a] },
    ]);
    expect(shares[1]).toEqual({ name: 'still', share: 0 });
    expect(explainedShare(a, [a.map(() => 4)])).toBe(0);
  });

  test('scores of equal values are equal', () => {
    expect(normalScores([5, 2, 5, 9])[0]).toBe(normalScores([5, 2, 5, 9])[2]);
  });
});
