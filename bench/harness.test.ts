import { expect, test } from 'vitest';
import { bench, summary } from './harness.ts';

/** A clock that says the next of these at each look. */
const clockOf = (...times: number[]) => {
  let look = 0;
  return () => times[look++];
};

test('the median and the quartiles lie between the ordered samples', () => {
  // Ordered 2, 3, 5, 8, 13, 21: median 6.5, quartiles 3.5 and 11.75.
  expect(summary([13, 3, 21, 2, 8, 5])).toEqual({ median_ms: 6.5, spread: 8.25 / 6.5 });
  expect(summary([7])).toEqual({ median_ms: 7, spread: 0 });
});

test('runs are timed one by one, and warming up is not', async () => {
  let calls = 0;
  const timing = await bench('count', () => ++calls, {
    warm: 2,
    runs: 3,
    clock: clockOf(100, 104, 200, 201, 300, 309),
    note: (result, median) => `call ${result}, ${median} ms`,
    limit_ms: 5,
  });
  expect(calls).toBe(5);
  expect(timing).toEqual({ name: 'count', median_ms: 4, spread: 1, limit_ms: 5, note: 'call 5, 4 ms' });
});

test('work that gives a promise is timed to its end', async () => {
  let now = 0;
  const slow = async (): Promise<string> => {
    now += 3;
    await Promise.resolve();
    now += 14;
    return 'done';
  };
  const timing = await bench('slow', slow, { warm: 0, runs: 2, clock: () => now, note: (result) => result });
  expect(timing).toEqual({ name: 'slow', median_ms: 17, spread: 0, note: 'done' });
});

test('work that throws is not timed', async () => {
  const broken = (): number => {
    throw new Error('no convergence at 2.7 MPa');
  };
  await expect(bench('broken', broken)).rejects.toThrow('2.7 MPa');
});
