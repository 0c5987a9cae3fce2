import { describe, expect, test } from 'vitest';
import { logGamma } from './gamma.ts';
import { normalBelow, normalQuantile } from './normal.ts';
import { chiSquareBelow, chiSquareQuantile, studentBelow, studentQuantile } from './student.ts';

describe('distributions', () => {
  test('normal quantiles are those of algorithm AS 241', () => {
    // Check values printed with the algorithm, Appl. Stat. 37 (1988) 477.
    expect(normalQuantile(0.25)).toBeCloseTo(-0.6744897501960817, 14);
    expect(normalQuantile(0.001)).toBeCloseTo(-3.090232306167814, 13);
    expect(normalQuantile(1e-20)).toBeCloseTo(-9.26234008979841, 12);
    expect(normalQuantile(0.975)).toBeCloseTo(1.959963984540054, 13);
  });

  test('the probability of a quantile is what was asked for, far into the tails', () => {
    for (const p of [1e-12, 3e-7, 0.004, 0.3, 0.5, 0.83, 0.9991]) {
      expect(normalBelow(normalQuantile(p)) / p).toBeCloseTo(1, 9);
    }
  });

  test("Student's t and chi-square match the printed tables", () => {
    // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2 and 1.3.6.7.4; three printed decimals.
    expect(studentQuantile(0.975, 10)).toBeCloseTo(2.228, 3);
    expect(studentQuantile(0.95, 3)).toBeCloseTo(2.353, 3);
    expect(studentQuantile(0.99, 1)).toBeCloseTo(31.821, 3);
    expect(chiSquareQuantile(0.95, 10)).toBeCloseTo(18.307, 3);
    expect(chiSquareQuantile(0.99, 5)).toBeCloseTo(15.086, 3);
    expect(chiSquareQuantile(0.05, 20)).toBeCloseTo(10.851, 3);
  });

  test('special cases have their closed forms', () => {
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.PI) / 2, 13);
    expect(logGamma(11)).toBeCloseTo(Math.log(3628800), 12);
    expect(chiSquareBelow(3.7, 2)).toBeCloseTo(1 - Math.exp(-1.85), 14);
    expect(studentBelow(1.3, 1)).toBeCloseTo(0.5 + Math.atan(1.3) / Math.PI, 13);
    expect(studentQuantile(0.31, 7)).toBeCloseTo(-studentQuantile(0.69, 7), 12);
  });

  test('a probability outside 0 to 1 is our bug', () => {
    expect(() => normalQuantile(1)).toThrow('between 0 and 1');
  });
});
