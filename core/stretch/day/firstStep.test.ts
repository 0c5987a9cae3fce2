import { describe, expect, test } from 'vitest';
import { diceOf } from '../../math/dice.ts';
import { airSwallows } from '../water.ts';
import { firstFindings, type FirstGivens, firstLoss, slopeFinding } from './firstStep.ts';

/** A 350 L tank: 680 mm³ per 1e-3 MPa, i.e. 68 mL/bar, slightly curved as water is. */
const drawnWithoutAir = (p: number): number => 680e3 * p * (1 - 0.002 * p);
const spread = { pressure: 0.005, zero: 0.004, drawn: 6e3, slack: 15e3, stiffness: 0.04 };
const points = [0.13, 0.34, 0.57];

/** Readings as they would be without any noise, and those with it. */
function readingsOf(
  air: number,
  k: number,
  slack: number,
  zero: number,
  noise: () => number,
): FirstGivens['readings'] {
  return points.map((p) => ({
    pressure: p + zero + spread.pressure * noise(),
    drawn: k * drawnWithoutAir(p) + airSwallows(air, p) + slack + spread.drawn * noise(),
  }));
}

const still = (): number => 0;

describe('the first step finds the trapped air', () => {
  test('exactly, where nothing is blurred and the tank is as forecast', () => {
    const readings = readingsOf(1.3e6, 1, 0, 0, still);
    const { air, zero, stiffness, miss } = firstFindings({ readings, drawnWithoutAir, spread });
    expect(air.value).toBeCloseTo(1.3e6, -2);
    expect(zero.value).toBeCloseTo(0, 5);
    expect(stiffness.value).toBeCloseTo(1, 5);
    expect(miss).toBeLessThan(0.01);
  });

  test('within its 90 % range in 85 to 95 of 100 first steps, from a fifth of a litre to three', () => {
    const dice = diceOf(20261003);
    const tries = 600;
    let held = 0;
    for (let i = 0; i < tries; i++) {
      const air = 1e6 * (0.2 + 2.8 * dice.uniform());
      const k = 1 + spread.stiffness * dice.normal();
      const readings = readingsOf(air, k, spread.slack * dice.normal(), spread.zero * dice.normal(), () =>
        dice.normal(),
      );
      const found = firstFindings({ readings, drawnWithoutAir, spread }).air;
      if (found.low <= air && air <= found.high) held++;
    }
    expect(held / tries).toBeGreaterThan(0.85);
    expect(held / tries).toBeLessThan(0.95);
  });

  test('never as less than none: the range is cut at zero', () => {
    const readings = readingsOf(0, 0.93, -20e3, 0, still);
    const { air } = firstFindings({ readings, drawnWithoutAir, spread });
    expect(air.low).toBeGreaterThanOrEqual(0);
    expect(air.value).toBeLessThan(air.high);
  });

  test('and a point that fits nothing stands out as a miss', () => {
    const readings = readingsOf(0.7e6, 1, 0, 0, still).map((r, i) =>
      i === 1 ? { ...r, drawn: r.drawn + 250e3 } : r,
    );
    expect(firstFindings({ readings, drawnWithoutAir, spread }).miss).toBeGreaterThan(4);
  });

  test('but not from two points', () => {
    const readings = readingsOf(1e6, 1, 0, 0, still).slice(0, 2);
    expect(() => firstFindings({ readings, drawnWithoutAir, spread })).toThrow('three readings');
  });
});

describe('the elastic slope of a girth', () => {
  const givens = { pressures: [0.13, 0.34, 0.57], model: 1.26, pressure: 0.003, modelShare: 0.04 };
  const girths = (slope: number): number[] => givens.pressures.map((p) => 1892 + slope * 10 * p);

  test('agrees with the model where it is the model’s', () => {
    const found = slopeFinding({ ...givens, model: 12.6, girths: girths(1.26), girth: 0.02 });
    expect(found.slope.value).toBeCloseTo(12.6, 6);
    expect(found.verdict).toBe('agrees');
  });

  test('moves too little where a wire slips a third of its way', () => {
    expect(slopeFinding({ ...givens, model: 12.6, girths: girths(0.84), girth: 0.02 }).verdict).toBe(
      'moves too little',
    );
  });

  test('moves too much where it shows half as much again', () => {
    expect(slopeFinding({ ...givens, model: 12.6, girths: girths(1.9), girth: 0.02 }).verdict).toBe(
      'moves too much',
    );
  });

  test('cannot be told with a tape: its half millimetre is a tenth of nothing', () => {
    expect(slopeFinding({ ...givens, model: 12.6, girths: girths(1.2), girth: 1.6 }).verdict).toBe(
      'cannot tell',
    );
  });
});

describe('the first loss', () => {
  const tank = { time: 300, compliance: 760e3, surplus: 56e3, spread: { pressure: 0.002, warming: 0.02 } };

  test('of a shut tank that cools by half a kelvin is none, though the gauge falls', () => {
    const fall = (-0.5 * tank.surplus) / tank.compliance;
    const { value, low, high } = firstLoss({ ...tank, pressureChange: fall, warming: -0.5 });
    expect(value).toBeCloseTo(0, 9);
    expect(low).toBeLessThan(0);
    expect(high).toBeGreaterThan(0);
  });

  test('of 20 mL/min is found in five minutes', () => {
    const lost = (20e3 / 60) * tank.time;
    const { value, low } = firstLoss({ ...tank, pressureChange: -lost / tank.compliance, warming: 0 });
    expect((value * 60) / 1e3).toBeCloseTo(20, 6);
    expect(low).toBeGreaterThan(0);
  });
});
