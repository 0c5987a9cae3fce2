import { describe, expect, test } from 'vitest';
import { elasticTank, heldTank, leakTrial, type LeakOrders } from './leaks.ts';
import { quickOf } from './world.ts';

// Few holds here; the soak (bench/leaks.soak.ts) has hundreds.
const quick = quickOf(36, 51_000);
const held = [1, 2].map((k) => heldTank(52_000 + k, quick));
const shut = { valve: 'shut', girth: 'wire', thermometer: true, time: 300 } as const;
const mL = (rate: number): number => 0.06 * rate;

const looks = (orders: Omit<LeakOrders, 'held' | 'seed'>, count = 4) =>
  Array.from({ length: count }, (_, k) => leakTrial({ ...orders, held: held[k % 2], seed: 53_000 + k }));

describe('a hold with the valve shut', () => {
  test('names 20 mL/min within five minutes, with a range that holds it', () => {
    for (const found of looks({ ...shut, leak: 20 })) {
      expect(found?.verdict).toBe('seen');
      expect(mL(found?.low ?? NaN)).toBeLessThan(23);
      expect(mL(found?.high ?? NaN)).toBeGreaterThan(17);
    }
  });

  test('names none where the wall only creeps, and says from which on it would', () => {
    for (const found of looks({ ...shut, leak: 0 })) {
      expect(found?.verdict).toBe('not seen');
      expect(mL(found?.smallest ?? NaN)).toBeLessThan(20);
    }
  });

  test('sees less without a thermometer', () => {
    const [withOne] = looks({ ...shut, leak: 0 }, 1);
    const [without] = looks({ ...shut, leak: 0, thermometer: false }, 1);
    expect(without?.smallest).toBeGreaterThan(withOne?.smallest ?? Infinity);
  });
});

test('with the valve open the weighed supply names 20 mL/min, and none while it only creeps', () => {
  const open = { ...shut, valve: 'open' } as const;
  expect(looks({ ...open, leak: 20 }, 2).map((found) => found?.verdict)).toEqual(['seen', 'seen']);
  expect(looks({ ...open, leak: 0 }, 2).map((found) => found?.verdict)).toEqual(['not seen', 'not seen']);
});

test('a tank that has not yielded yet shows 20 mL/min, less what the falling pressure takes off it, and none where there is none', () => {
  const elastic = elasticTank(52_001, quick);
  const [leaks, sound] = [20, 0].map((leak) => leakTrial({ ...shut, leak, held: elastic, seed: 53_100 }));
  expect(leaks?.verdict).toBe('seen');
  expect(mL(leaks?.loss ?? NaN)).toBeGreaterThan(16);
  expect(mL(leaks?.loss ?? NaN)).toBeLessThan(21);
  expect(sound?.verdict).toBe('not seen');
  expect(mL(sound?.smallest ?? NaN)).toBeLessThan(20);
});

test('by tape the smallest leak that is stated is seen, and it is larger than by wire', () => {
  const tape = { ...shut, girth: 'tape', time: 600 } as const;
  const [none] = looks({ ...tape, leak: 0 }, 1);
  const [wire] = looks({ ...shut, leak: 0 }, 1);
  const smallest = mL(none?.smallest ?? NaN);
  expect(smallest).toBeGreaterThan(2 * mL(wire?.smallest ?? NaN));
  expect(looks({ ...tape, leak: 1.05 * smallest }, 2).map((found) => found?.verdict)).toEqual([
    'seen',
    'seen',
  ]);
});
