import { describe, expect, test } from 'vitest';
import { regression } from './line.ts';

// Longley, J. Am. Stat. Assoc. 62 (1967) 819: the columns are so nearly parallel that poor arithmetic loses all digits.
const employed = [
  60323, 61122, 60171, 61187, 63221, 63639, 64989, 63761, 66019, 67857, 68169, 66513, 68655, 69564, 69331,
  70551,
];
const columns = [
  employed.map(() => 1),
  [83.0, 88.5, 88.2, 89.5, 96.2, 98.1, 99.0, 100.0, 101.2, 104.6, 108.4, 110.8, 112.6, 114.2, 115.7, 116.9],
  [
    234289, 259426, 258054, 284599, 328975, 346999, 365385, 363112, 397469, 419180, 442769, 444546, 482704,
    502601, 518173, 554894,
  ],
  [2356, 2325, 3682, 3351, 2099, 1932, 1870, 3578, 2904, 2822, 2936, 4681, 3813, 3931, 4806, 4007],
  [1590, 1456, 1616, 1650, 3099, 3594, 3547, 3350, 3048, 2857, 2798, 2637, 2552, 2514, 2572, 2827],
  [
    107608, 108632, 109773, 110929, 112075, 113270, 115094, 116219, 117388, 118734, 120445, 121950, 123366,
    125368, 127852, 130081,
  ],
  employed.map((_, k) => 1947 + k),
];

describe('regression', () => {
  test('it gives the certified figures of the Longley data', () => {
    // NIST Statistical Reference Datasets, "Longley", certified values; agreement to nine digits is asked for, the
    // condition of the columns being about 1e10 in squares.
    const fit = regression(columns, employed);
    const certified = [
      -3482258.63459582, 15.0618722713733, -0.035819179292591, -2.02022980381683, -1.03322686717359,
      -0.0511041056535807, 1829.15146461355,
    ];
    certified.forEach((value, k) => expect(fit.coefficients[k] / value).toBeCloseTo(1, 9));
    expect(fit.residual / 304.854073561965).toBeCloseTo(1, 10);
    expect(fit.explained).toBeCloseTo(0.995479004577296, 12);
    expect((Math.sqrt(fit.spread[0]) * fit.residual) / 890420.383607373).toBeCloseTo(1, 9);
  });

  test('a column that repeats another is refused', () => {
    const one = [1, 1, 1, 1];
    expect(() => regression([one, [2, 3, 5, 7], [4, 6, 10, 14]], [1, 2, 3, 5])).toThrow('combination');
  });

  test('more columns than rows are refused', () => {
    expect(() => regression([[1, 1]], [3])).toThrow('more than 1 rows');
  });
});
