import { describe, expect, test } from 'vitest';
import { type Certificate, gradeOnly } from '../evidence/evidence.ts';
import { standardDeviation } from '../../stats/sample.ts';
import { believe } from './belief.ts';
import { drawnStress, type SteelDraw } from './draw.ts';
import { type Measure, nextMeasures } from './next.ts';
import { type Outcome, outcomeRanges } from './outcome.ts';

const none = gradeOnly({
  grade: '1.4307',
  form: 'cold-rolled',
  thickness: 2,
  wall: 2,
  radius: 301,
  plate: 'P1',
  heat: 'H1',
});
const certificate: Certificate = {
  name: 'mill certificate',
  heat: 'H1',
  proof02: 281,
  proof10: 322,
  strength: 628,
};
const { draws } = believe({ ...none, certificates: [certificate] }, { seed: 8, draws: 800 });

/** ln of what the wall carries at a stretch: plate, factor and wall, nothing else. */
const carried = (draw: SteelDraw): number =>
  Math.log(drawnStress(draw, 0.045) * draw.biaxialFactor * draw.wallFactor);

/** ln(MPa) under which the invented wall bursts: about one draw in a hundred. */
const BURST = draws.map(carried).sort((a, b) => a - b)[10];

/** The softer the wall the more it grows; under a certain strength it bursts. */
const outcomes = draws.map((draw): Outcome => {
  const strength = carried(draw);
  const growth = strength < BURST ? Infinity : Math.exp(-8 * (strength - 6));
  return { growth, volume: 3 * growth, maximum: 0.01 * Math.exp(strength), firstYield: 0.7 };
});

describe('what the steels make of a tank', () => {
  const ranges = outcomeRanges(draws, outcomes);

  test('is a range with its median, and the share that bursts', () => {
    const rising = outcomes.map(({ growth }) => growth).sort((a, b) => a - b);
    expect(ranges.growth.median).toBeCloseTo((rising[399] + rising[400]) / 2, 12);
    const bursts = draws.filter((draw) => carried(draw) < BURST).length / 800;
    expect(bursts).toBeGreaterThan(0);
    expect(ranges.bursts).toBe(bursts);
    expect(ranges.volume.wide[0]).toBeCloseTo(3 * ranges.growth.wide[0], 12);
  });

  test('has a pressure that 99 of 100 survive, and a lower one that so many draws assure', () => {
    const { value, assured } = ranges.survived;
    expect(outcomes.filter(({ maximum }) => maximum < value).length).toBe(8);
    // 800 draws: more than three lie below the true 1 % with 95 % (Poisson 8: P(X <= 3) = 0.042), so the fourth least.
    expect(outcomes.filter(({ maximum }) => maximum < (assured ?? NaN)).length).toBe(3);
  });

  test('owes its range to plate, factor and wall in the measure of their scatter', () => {
    const spread = (read: (draw: SteelDraw) => number): number => standardDeviation(draws.map(read)) ** 2;
    const parts = [
      spread((draw) => Math.log(drawnStress(draw, 0.045))),
      spread((draw) => Math.log(draw.biaxialFactor)),
      spread((draw) => Math.log(draw.wallFactor)),
    ];
    const total = parts[0] + parts[1] + parts[2];
    expect(ranges.shares.map(({ name }) => name).slice(0, 3)).toEqual([
      'plate strength',
      'biaxial factor',
      'wall',
    ]);
    // 800 draws: correlations by chance of 3.5 %, twice that times the larger part.
    parts.forEach((part, k) => expect(Math.abs(ranges.shares[k].share - part / total)).toBeLessThan(0.07));
    const owed = (name: string): number => ranges.shares.find((one) => one.name === name)?.share ?? NaN;
    expect(owed('rolling')).toBeLessThan(0.01);
    expect(owed('seam')).toBeLessThan(0.01);
  });

  test('needs an outcome for each draw', () => {
    expect(() => outcomeRanges(draws, outcomes.slice(1))).toThrow('799 for 800');
  });
});

describe('what to measure next', () => {
  const widths = nextMeasures(
    draws,
    outcomes.map(({ growth }) => growth),
    5,
  );
  const after = (measure: Measure): number => widths.find((one) => one.measure === measure)?.width ?? NaN;

  test('lists the measures, the one that narrows most first', () => {
    expect(widths.length).toBe(5);
    widths.slice(1).forEach(({ width }, k) => expect(width).toBeGreaterThanOrEqual(widths[k].width));
  });

  test('foresees what coupons, wall and test tank are worth from the scatter they leave', () => {
    const spread = (read: (draw: SteelDraw) => number): number => standardDeviation(draws.map(read)) ** 2;
    const plate = spread((draw) => Math.log(drawnStress(draw, 0.045)));
    const factor = spread((draw) => Math.log(draw.biaxialFactor));
    const wall = spread((draw) => Math.log(draw.wallFactor));
    const total = plate + factor + wall;
    // Four coupons leave of the plate about (0.04^2 + 0.007^2)/4, the barrel's own 0.01^2 and bends of 0.006^2.
    const left = (variance: number, error: number): number => 1 / (1 / variance + 1 / error);
    const four = Math.sqrt((left(plate, 0.0215 ** 2 + 0.01 ** 2) + factor + wall) / total);
    expect(Math.abs(after('four plate coupons') - four)).toBeLessThan(0.05);
    const measured = Math.sqrt((plate + factor + left(wall, 0.0058 ** 2)) / total);
    expect(Math.abs(after('wall at four points') - measured)).toBeLessThan(0.03);
    // A test tank sees plate and factor as one.
    const tank = Math.sqrt((left(plate + factor, 0.0172 ** 2 + 2 * 0.01 ** 2) + wall) / total);
    expect(Math.abs(after('small test tank') - tank)).toBeLessThan(0.06);
  });

  test('a rolling note is worth nothing where rolling owes nothing', () => {
    expect(after('rolling noted')).toBeGreaterThan(0.99);
  });
});
