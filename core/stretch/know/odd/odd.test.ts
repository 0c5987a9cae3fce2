import { describe, expect, test } from 'vitest';
import { diceOf } from '../../../math/dice.ts';
import { gaugesExplained, rankedBy } from './explain.ts';
import { gaugesApart } from './gauges.ts';
import { FALSE_ALARM, levelOf } from './level.ts';
import { girthsNearSeam } from './nearSeam.ts';
import { slipOf } from './slip.ts';
import { EVEN as TANK } from '../../../shell/specimen.ts';

describe('a slip', () => {
  test('is none where the pump was turned on: the other girths moved alike, each by less than its own blur would call', () => {
    const turned = (rise: number) =>
      Array.from({ length: 12 }, (_, k) => (k < 9 ? 0.01 * (k % 2) : rise + 0.01 * k));
    const others = [turned(0.17), turned(0.14)];
    expect(slipOf({ readings: turned(0.21), blur: 0.014 })).toBeCloseTo(0.3, 1);
    expect(slipOf({ readings: turned(0.21), blur: 0.014, others })).toBeUndefined();
    expect(slipOf({ readings: turned(2.02), blur: 0.014, others })).toBeGreaterThan(1.9);
  });

  const wire = (jumpAt: number, by: number, seed: number): number[] => {
    const dice = diceOf(seed);
    return Array.from({ length: 12 }, (_, k) => 0.07 * k + (k >= jumpAt ? by : 0) + 0.1 * dice.normal());
  };

  test('of 2 mm is found three readings later, with its size', () => {
    const jump = slipOf({ readings: wire(9, 2, 1), blur: 0.1 });
    expect(jump).toBeGreaterThan(1.6);
    expect(jump).toBeLessThan(2.4);
  });

  test('is not seen in two thousand steady stretches', () => {
    const called = Array.from({ length: 2000 }, (_, k) =>
      slipOf({ readings: wire(9, 0, 10 + k), blur: 0.1 }),
    );
    expect(called.filter((jump) => jump !== undefined)).toEqual([]);
  });
});

test('two gauges are apart at 5 %, not at the half percent that their gains allow', () => {
  const pair = { count: 20, noise: 0.005, zero: 0.005, gain: 0.005 } as const;
  expect(gaugesApart({ ...pair, first: 2.1, second: 2 })).toBeCloseTo(1.05, 6);
  expect(gaugesApart({ ...pair, first: 2.01, second: 2 })).toBeUndefined();
});

test('the gauge by which the tank is softer than its wall allows is the one that shows too much', () => {
  const { ranked, tell } = gaugesExplained(1.05, [0.95, 1.0], 0.021);
  expect(ranked[0]).toMatchObject({ explanation: 'first gauge high' });
  expect(ranked[0].chance + ranked[1].chance).toBeCloseTo(1, 12);
  expect(tell).toBe('elastic slope of girth');
});

test('stronger steel and a thicker wall are told apart by ultrasound', () => {
  const { tell } = rankedBy([
    ['stronger steel', 1.3],
    ['thicker wall', 0.9],
    ['gauge high', -2],
  ]);
  expect(tell).toBe('ultrasonic wall');
});

describe('the level at which a tank carries', () => {
  const dice = diceOf(4);
  const foreseen = Array.from({ length: 400 }, () => 0.7 + 0.05 * dice.normal());

  test('is quiet outside nine of ten, and alarms beyond what one healthy test in a hundred shows', () => {
    expect(levelOf(foreseen, 0.74, 0.006).says).toBe('inside');
    expect(levelOf(foreseen, 0.7 - 0.105, 0.006).says).toBe('quiet');
    expect(levelOf(foreseen, 0.7 + 0.2, 0.006)).toMatchObject({ says: 'alarm' });
  });

  test('alarms at one look in under one of a thousand healthy tanks', () => {
    const alarms = Array.from({ length: 4000 }, () =>
      levelOf(foreseen, 0.7 + Math.hypot(0.05, 0.006) * dice.normal(), 0.006),
    ).filter(({ says }) => says === 'alarm').length;
    expect(FALSE_ALARM).toBeCloseTo(0.000465, 5);
    // 2 of 4000 expected; more than 8 come in 1 of 4000 by chance.
    expect(alarms).toBeLessThan(9);
  });
});

test('girths within sqrt(r t) of a girth seam, or of where two courses meet, are near one', () => {
  const steel = TANK.courses[0].steel;
  // sqrt(300 x 1.5) = 21 mm about.
  const girths = [350, 365, 390, 405, 520, 560].map((at) => ({ name: `at ${at}`, at }));
  const tank = { ...TANK, insideDiameter: 600, girths, girthSeams: [{ at: 540, width: 6, steel }] };
  const courses = [380, 380].map((length) => ({ length, wall: 1.5, steel }));
  expect(girthsNearSeam({ ...tank, courses })).toEqual([false, true, true, false, true, true]);
});
