import { describe, expect, test } from 'vitest';
import { diceOf } from '../math/dice.ts';
import { latinHypercube, normalHypercube } from './spread.ts';
import { chiSquareOfCells, kolmogorov } from './uniformity.ts';

const throws = (count: number, seed: number): number[] => {
  const dice = diceOf(seed);
  return Array.from({ length: count }, () => dice.uniform());
};

describe('tests for uniformity', () => {
  test("Kolmogorov's statistic at the printed 5 % point has a chance of 5 %", () => {
    // Critical value for n = 20: 0.29408 (Massey, J. Am. Stat. Assoc. 46 (1951) 68 prints 0.294). Values are placed so
    // that the largest distance is exactly that; the correction formula is good to about 0.002 of chance.
    const values = Array.from({ length: 20 }, (_, k) => Math.max(0, (k + 1) / 20 - 0.29408));
    const verdict = kolmogorov(values);
    expect(verdict.statistic).toBeCloseTo(0.29408, 10);
    expect(Math.abs(verdict.chance - 0.05)).toBeLessThan(0.002);
  });

  test('uniform numbers pass and squared ones do not', () => {
    const uniform = throws(300, 21);
    expect(kolmogorov(uniform).chance).toBeGreaterThan(0.01);
    expect(chiSquareOfCells(uniform, 20).chance).toBeGreaterThan(0.01);
    const squared = uniform.map((x) => x * x);
    expect(kolmogorov(squared).chance).toBeLessThan(1e-6);
    expect(chiSquareOfCells(squared, 20).chance).toBeLessThan(1e-6);
  });

  test('among 400 uniform samples, one in twenty fails at 5 %', () => {
    // Standard error of the share: 1.1 %; the bound is three of them.
    const chances = Array.from({ length: 400 }, (_, k) => kolmogorov(throws(60, 1000 + k)).chance);
    expect(Math.abs(chances.filter((chance) => chance < 0.05).length / 400 - 0.05)).toBeLessThan(0.033);
  });

  test('too few values are refused', () => {
    expect(() => kolmogorov([0.1])).toThrow('five');
    expect(() => chiSquareOfCells(throws(30, 1), 10)).toThrow('too few');
  });
});

describe('evenly spread points', () => {
  test('every slice of every coordinate holds one point', () => {
    const points = latinHypercube(50, 3, diceOf(4));
    for (let d = 0; d < 3; d++) {
      const slices = points.map((point) => Math.floor(point[d] * 50)).sort((a, b) => a - b);
      expect(slices).toEqual(Array.from({ length: 50 }, (_, k) => k));
    }
  });

  test('as normal coordinates they have mean 0 and spread 1 far more closely than thrown ones', () => {
    const points = normalHypercube(400, 2, diceOf(9));
    for (let d = 0; d < 2; d++) {
      const x = points.map((point) => point[d]);
      expect(Math.abs(x.reduce((a, b) => a + b) / 400)).toBeLessThan(0.005);
      expect(Math.abs(x.reduce((a, b) => a + b * b, 0) / 400 - 1)).toBeLessThan(0.02);
    }
  });
});
