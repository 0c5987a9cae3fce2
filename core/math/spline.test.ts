import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { monotoneCubic, writeCubic } from './spline.ts';

const out = new Float64Array(2);
const at = (x: readonly number[], y: readonly number[], where: number): number[] => {
  writeCubic(monotoneCubic(x, y), where, out);
  return [...out];
};

test('the curve passes through its points and is straight through points on a line', () => {
  const [x, y] = [
    [0.1, 0.4, 0.9, 1.7],
    [2, 3, 3.1, 8],
  ];
  for (let i = 0; i < 4; i++) expect(at(x, y, x[i])[0]).toBeCloseTo(y[i], 13);
  const line = x.map((v) => 3 - 2 * v);
  expect(at(x, line, 0.55)).toEqual([expect.closeTo(1.9, 13), expect.closeTo(-2, 13)]);
  expect(at(x, line, 4)).toEqual([expect.closeTo(-5, 12), expect.closeTo(-2, 13)]);
});

test('two points make a straight line', () => {
  expect(at([1, 3], [5, 9], 2.5)).toEqual([8, 2]);
});

test('between rising points it neither falls nor overshoots, in falling ones neither rises', () => {
  const step = fc.tuple(
    fc.double({ min: 1e-3, max: 2, noNaN: true }),
    fc.double({ min: 0, max: 5, noNaN: true }),
  );
  fc.assert(
    fc.property(fc.array(step, { minLength: 2, maxLength: 9 }), fc.constantFrom(1, -1), (steps, sign) => {
      const [x, y] = [[0.3], [1.1]];
      for (const [dx, dy] of steps) {
        x.push(x[x.length - 1] + dx);
        y.push(y[y.length - 1] + sign * dy);
      }
      const end = x.length - 1;
      for (let i = 0; i <= 200; i++) {
        const where = x[0] + ((x[end] - x[0]) * i) / 200;
        const [value, slope] = at(x, y, where);
        expect(sign * slope).toBeGreaterThan(-1e-9 * (1 + Math.abs(y[end]) / 1e-3));
        const k = Math.max(
          0,
          x.findLastIndex((v) => v <= where),
        );
        const [low, high] = [y[k], y[Math.min(k + 1, end)]].sort((a, b) => a - b);
        expect(value).toBeGreaterThan(low - 1e-9);
        expect(value).toBeLessThan(high + 1e-9);
      }
    }),
    { seed: 11, numRuns: 150 },
  );
});

test('a flat stretch stays flat and a turn keeps a level tangent', () => {
  expect(at([0, 1, 2, 3], [1, 2, 2, 5], 1.4)).toEqual([2, 0]);
  expect(at([0, 1, 2], [1, 3, 2], 1)).toEqual([3, 0]);
});

test('points that make no curve are refused with their numbers', () => {
  expect(() => monotoneCubic([0, 2, 2], [1, 2, 3])).toThrow('x[2] = 2 follows 2');
  expect(() => monotoneCubic([0], [1])).toThrow('1 x and 1 y');
  expect(() => monotoneCubic([0, 1], [1, Number.NaN])).toThrow('point 1');
});
