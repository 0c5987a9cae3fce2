import { describe, expect, test } from 'vitest';
import { diceOf } from '../../math/dice.ts';
import { logStrength, PROOF02_PLASTIC, logProof } from '../prior/figures.ts';
import { logStress, writeShares } from '../prior/shape.ts';
import { BIAXIAL, RATE } from '../prior/prior.ts';
import { SCATTER } from '../prior/scatter.ts';
import { certificateReading } from './certificate.ts';
import { couponReading, rateLift } from './coupon.ts';
import type { PlateCoupon } from './evidence.ts';
import type { Reading } from './reading.ts';
import { cylinderMaximum, trialReading } from './trial.ts';

const factors = [0.21, 0.17, 0.11, 0.05];
const strains = Array.from({ length: 80 }, (_, k) => 0.0012 * 360 ** (k / 79));

const coupon = (more: Partial<PlateCoupon> = {}): PlateCoupon => ({
  name: 'coupon 1',
  plastic: strains,
  stress: strains.map((ep) => Math.exp(logStress(factors, ep))),
  rate: 1e-4,
  ...more,
});

/** What the straight line of a reading says of its figures. */
const lineOf = (reading: Reading, at: readonly number[], shared: readonly number[] = [0, 0, 0]): number[] =>
  Array.from({ length: reading.rows }, (_, i) => {
    const own = at.reduce((sum, factor, k) => sum + reading.design[4 * i + k] * factor, 0);
    return shared.reduce((sum, unknown, k) => sum + reading.shared[3 * i + k] * unknown, own);
  });

const largestGap = (reading: Reading, line: readonly number[]): number =>
  Math.max(...line.map((value, k) => Math.abs(value - reading.observed[k])));

describe('a coupon', () => {
  test('pulled at the reference rate lies on the straight line of its own factors', () => {
    const reading = couponReading(coupon(), 0);
    expect(reading?.rows).toBe(15);
    // Straight lines between 80 points of the curve: 0.1 %.
    expect(largestGap(reading!, lineOf(reading!, factors))).toBeLessThan(1e-3);
  });

  test('pulled faster it is brought back to the reference rate', () => {
    const rate = 3e-3;
    const stress = strains.map((ep) => Math.exp(logStress(factors, ep)) + rateLift(rate, ep));
    const reading = couponReading(coupon({ stress, rate }), 0)!;
    expect(largestGap(reading, lineOf(reading, factors))).toBeLessThan(1e-3);
    // One deviation more of the rate effect raises every figure by a quarter of its lift.
    const [more, less] = [lineOf(reading, factors, [1, 0, 0]), lineOf(reading, factors)];
    const slow = Math.exp(logStress(factors, 0.075));
    expect((more[9] - less[9]) / RATE.deviation).toBeCloseTo(rateLift(rate, 0.075) / slow, 4);
  });

  test('without a stated rate it is less sure', () => {
    const { rate: _, ...unstated } = coupon();
    expect(couponReading(unstated, 0)!.noise[0]).toBeGreaterThan(couponReading(coupon(), 0)!.noise[0]);
  });

  test('pulled warm is brought back to room temperature, and is less sure for it', () => {
    // A quarter of a per cent per kelvin, with half of that in doubt.
    const [warm, room] = [coupon({ temperature: 45 }), coupon()].map((one) => couponReading(one, 0)!);
    warm.observed.forEach((value, k) => expect(value - room.observed[k]).toBeCloseTo(25 * 0.0025, 12));
    expect(warm.shared[2]).toBeCloseTo(25 * 0.0012, 12);
    expect(room.shared[2]).toBe(0);
  });

  test('that ends early speaks only of the strains it reached', () => {
    const few = strains.filter((ep) => ep < 0.012);
    const reading = couponReading(
      coupon({ plastic: few, stress: few.map((ep) => Math.exp(logStress(factors, ep))) }),
      0,
    )!;
    expect(reading.rows).toBe(5);
    expect(couponReading(coupon({ plastic: [0.1, 0.3], stress: [480, 700] }), 0)?.rows).toBe(3);
    expect(couponReading(coupon({ plastic: [0.5, 0.6], stress: [900, 950] }), 0)).toBeUndefined();
  });
});

describe('a certificate', () => {
  const near = [0.25, 0.19, 0.13, 0.09];
  const reading = certificateReading({ name: 'c', proof02: 283, proof10: 326, strength: 618 }, 2, near)!;

  test('is a straight line that touches its figures where it starts from', () => {
    expect([...(reading.exact?.(near, [0, 0, 0]) ?? [])]).toEqual(
      lineOf(reading, near).map((value) => expect.closeTo(value, 9) as unknown as number),
    );
  });

  test('and stays close to them as far as steels differ', () => {
    const dice = diceOf(2);
    for (let k = 0; k < 50; k++) {
      const other = near.map((factor, j) => factor + SCATTER.plate[j] * dice.normal());
      const exact = reading.exact?.(other, [0.5, 0, 0]) ?? [];
      // Rm is read at the strain of maximum force, which moves with the factors: under 1 % at the scatter of plates.
      lineOf(reading, other, [0.5, 0, 0]).forEach((value, i) =>
        expect(Math.abs(value - exact[i])).toBeLessThan(0.01),
      );
    }
  });

  test('of the curve itself leaves nothing over', () => {
    const slow = (log: number): number => Math.exp(log);
    const own = certificateReading(
      { name: 'c', proof02: slow(logProof(near, PROOF02_PLASTIC)), strength: slow(logStrength(near).log) },
      0,
      near,
    )!;
    // What is left is the lift from the reference rate to the mill's: 5 of 290 MPa, 12 of 1000 (true).
    own.observed.forEach((value, i) => {
      const left = lineOf(own, near)[i] - value;
      expect(left).toBeGreaterThan(0.008);
      expect(left).toBeLessThan(0.025);
    });
  });

  test('without a figure is no reading', () => {
    expect(certificateReading({ name: 'c', elongation: 0.52 }, 0, near)).toBeUndefined();
  });
});

describe('a small test tank', () => {
  const radius = 76;
  const wall = 1.5;

  /** Long closed cylinder by hand: hoop strain from plastic and elastic part, pressure from equilibrium now. */
  const pointAt = (ep: number, biaxial: number): { pressure: number; growth: number } => {
    const lift = rateLift((2e-5 * 2) / Math.sqrt(3), ep);
    const equivalent = biaxial * Math.exp(logStress(factors, ep)) + lift;
    const hoop = (2 / Math.sqrt(3)) * equivalent;
    const girth = (Math.sqrt(3) / 2) * ep + (hoop * 0.85) / 200_000;
    const through = -(Math.sqrt(3) / 2) * ep - (0.45 * hoop) / 200_000;
    const volume = (0.6 * hoop) / 200_000;
    const middle = radius * Math.exp(girth);
    const thin = wall * Math.exp(through);
    return {
      pressure: (hoop * Math.exp(-volume) * thin) / middle,
      growth: (middle + thin / 2) / (radius + wall / 2) - 1,
    };
  };

  test('gives back the flow stress that made it', () => {
    const points = [0.01, 0.03, 0.07, 0.14].map((ep) => pointAt(ep, BIAXIAL.mean));
    const reading = trialReading({ name: 't', radius, wall, points }, 0, factors)!;
    expect(reading.rows).toBe(4);
    // Growth of the mid-surface from that of the outside girth to first order in t/r, rate effect at a mean stress: 0.1 %.
    expect(largestGap(reading, lineOf(reading, factors))).toBeLessThan(1e-3);
  });

  test('a lower biaxial factor shows as such', () => {
    const points = [0.02, 0.06].map((ep) => pointAt(ep, BIAXIAL.mean - BIAXIAL.deviation));
    const reading = trialReading({ name: 't', radius, wall, points }, 0, factors)!;
    expect(largestGap(reading, lineOf(reading, factors, [0, -1, 0]))).toBeLessThan(2e-3);
  });

  test('elastic points say nothing and are left out', () => {
    expect(
      trialReading({ name: 't', radius, wall, points: [{ pressure: 2, growth: 0.0005 }] }, 0, factors),
    ).toBeUndefined();
  });

  test('bursts at the maximum of a long cylinder, read less surely', () => {
    const most = cylinderMaximum(factors);
    // Hoop strain at the maximum near half the strain at maximum force (power law: n/2 against n).
    expect((Math.sqrt(3) / 2) * most.plastic).toBeGreaterThan(0.4 * logStrength(factors).plastic);
    expect((Math.sqrt(3) / 2) * most.plastic).toBeLessThan(0.6 * logStrength(factors).plastic);
    const burst = (Math.exp(most.log) * BIAXIAL.mean * wall) / radius;
    const reading = trialReading({ name: 't', radius, wall, points: [], burst }, 0, factors)!;
    expect(reading.rows).toBe(1);
    // Left over: the rate of the stretch against that of the curve, 4 MPa of 900.
    expect(largestGap(reading, lineOf(reading, factors))).toBeLessThan(0.008);
    expect(Math.sqrt(reading.noise[0])).toBeGreaterThan(0.06);
  });

  test('shares of a row are those of its strain', () => {
    const reading = trialReading(
      { name: 't', radius, wall, points: [pointAt(0.05, BIAXIAL.mean)] },
      0,
      factors,
    )!;
    const expected = new Float64Array(4);
    writeShares(0.05, expected);
    reading.design.forEach((value, k) => expect(Math.abs(value - expected[k])).toBeLessThan(2e-3));
  });
});
