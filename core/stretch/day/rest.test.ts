import { describe, expect, test } from 'vitest';
import type { Moment } from '../growth.ts';
import { restAfter, type RestRule, USUAL_REST } from './rest.ts';

const hour = 3600;

/** Growth 0.04 + a ln(1 + t/tau), in moments as dense as the holds of a forecast. */
function logarithmic(a: number, tau: number, until: number): Moment[] {
  const times = [0];
  for (let step = 0.5, t = 0; t < until; step *= 1.12) {
    t = Math.min(until, t + step);
    times.push(t);
  }
  return times.map(
    (time) => ({ time: 700 + time, largest: { growth: 0.04 + a * Math.log1p(time / tau), at: 1 } }) as Moment,
  );
}

/** When a ln((t + tau)/(t + tau - w)) = rate w: by hand. */
const byHand = (a: number, tau: number, { rate, window }: RestRule): number =>
  window / (1 - Math.exp((-rate * window) / a)) - tau;

describe('a hold rests', () => {
  test('when the growth over the last half hour falls under 0.1 %/h, by the closed form of logarithmic growth', () => {
    const [a, tau] = [0.0025, 40];
    const rest = restAfter(logarithmic(a, tau, USUAL_REST.cap));
    expect(rest.settled).toBe(true);
    // Chords between moments 12 % apart miss a logarithm by a (ln 1.12)²/8 at most; over the slope of the window's growth.
    const { window } = USUAL_REST;
    const chord = (a * Math.log(1.12) ** 2) / 8 / ((a * window) / (rest.time * (rest.time - window)));
    expect(chord).toBeLessThan(90);
    expect(Math.abs(rest.time - byHand(a, tau, USUAL_REST))).toBeLessThan(chord);
    expect(rest.rate).toBeLessThanOrEqual(USUAL_REST.rate);
    expect(rest.growth).toBeCloseTo(0.04 + a * Math.log1p(rest.time / tau), 5);
  });

  test('not before the least time, however slowly it grows', () => {
    expect(restAfter(logarithmic(1e-5, 40, USUAL_REST.cap)).time).toBe(hour);
    const long = { ...USUAL_REST, atLeast: 1.5 * hour };
    expect(restAfter(logarithmic(1e-5, 40, USUAL_REST.cap), long).time).toBe(1.5 * hour);
  });

  test('at the latest at the cap, and says that it has not settled', () => {
    const rest = restAfter(logarithmic(0.006, 40, USUAL_REST.cap));
    expect(rest).toMatchObject({ settled: false, time: USUAL_REST.cap });
    expect(rest.rate).toBeGreaterThan(USUAL_REST.rate);
  });

  test('at once allowed where nothing creeps: one moment and no more', () => {
    const still = logarithmic(0, 40, hour).slice(0, 2);
    expect(restAfter(still)).toMatchObject({ settled: true, time: hour, rate: 0 });
  });

  test('but never without a moment', () => {
    expect(() => restAfter([])).toThrow('without a moment');
  });
});
