import { expect, test } from 'vitest';
import { gaussPoints } from './gauss.ts';

test('the rule of five is that of the tables', () => {
  // Abramowitz & Stegun, Handbook of Mathematical Functions, table 25.4, n = 5.
  const { at, weight } = gaussPoints(5);
  const points = [-0.906179845938664, -0.538469310105683, 0, 0.538469310105683, 0.906179845938664];
  const weights = [
    0.236926885056189, 0.478628670499366, 0.568888888888889, 0.478628670499366, 0.236926885056189,
  ];
  points.forEach((x, k) => expect(at[k]).toBeCloseTo(x, 14));
  weights.forEach((w, k) => expect(weight[k]).toBeCloseTo(w, 14));
});

test.each([1, 2, 3, 5, 8, 13])(
  '%i points integrate every power up to 2n - 1, and not the next even one',
  (n) => {
    const { at, weight } = gaussPoints(n);
    const integral = (power: number): number => at.reduce((sum, x, k) => sum + weight[k] * x ** power, 0);
    for (let power = 0; power < 2 * n; power++)
      expect(integral(power)).toBeCloseTo(power % 2 === 0 ? 2 / (power + 1) : 0, 13);
    // Error of the next even power: 2^(2n+1) (n!)^4 / ((2n+1) ((2n)!)^2), A & S 25.4.30; 1e-8 at 13 points.
    expect(2 / (2 * n + 1) - integral(2 * n)).toBeGreaterThan(1e-9);
  },
);
