/** A tensile test of plate as a reading: its true curve at a dozen strains, with errors that run along the curve. */
import { FACTORS, REFERENCE_RATE, shapeStress, writeShares } from '../prior/shape.ts';
import type { PlateCoupon } from './evidence.ts';
import { addCommon, addOwn, type Reading, RATE_AT, SHARED_COUNT, WARMTH_AT } from './reading.ts';
import { RATE, rateShare, ROOM, WARMTH } from '../prior/prior.ts';

/** Plastic strains at which a curve is read; more would repeat what these say. */
const STRAINS = [
  0.002, 0.003, 0.0045, 0.007, 0.01, 0.015, 0.022, 0.033, 0.05, 0.075, 0.11, 0.16, 0.23, 0.32, 0.4,
] as const;

/** Fewer strains than this leave no curve. */
export const FEWEST_STRAINS = 3;

/** Rate of an ordinary test by ISO 6892-1 (range 2 of method A), 1/s; not stated, it is known to a factor of e. */
export const ORDINARY_RATE = 2.5e-4;

/** Errors of one tensile test, relative unless said: this project's estimate from the tolerances of ISO 6892-1. */
export const COUPON_ERROR = {
  /** Cross-section and load cell: the whole curve is out by one factor. */
  section: 0.007,
  /** Where zero strain lies (toe, grips), strain. */
  zero: 2e-4,
  /** Gain of the extensometer (class 1). */
  gain: 0.01,
  /** Bends of a real curve that four factors do not follow; runs along ln(strain). */
  bends: 0.006,
  bendLength: 0.7,
  /** One point. */
  point: 0.003,
} as const;

/** The reading, or undefined where the curve has too few points between 0.2 and 40 % plastic strain. */
export const couponReading = (coupon: PlateCoupon, plate: number): Reading | undefined => {
  const strains = STRAINS.filter((ep) => within(coupon.plastic, ep));
  const rows = strains.length;
  if (rows < FEWEST_STRAINS) return undefined;
  const design = new Float64Array(FACTORS * rows);
  const shared = new Float64Array(SHARED_COUNT * rows);
  const observed = new Float64Array(rows);
  const warmer = (coupon.temperature ?? ROOM) - ROOM;
  strains.forEach((ep, k) => {
    writeShares(ep, design, FACTORS * k);
    const lift = rateLift(coupon.rate ?? ORDINARY_RATE, ep);
    const stress = through(coupon, ep) - lift;
    observed[k] = Math.log(stress / shapeStress(ep)) - WARMTH.mean * warmer;
    shared[SHARED_COUNT * k + RATE_AT] = (lift / stress) * RATE.deviation;
    shared[SHARED_COUNT * k + WARMTH_AT] = WARMTH.deviation * warmer;
  });
  const noise = noiseOf(strains, coupon);
  return { origin: coupon, kind: 'coupon', plate, rows, observed, design, shared, noise, piece: 'coupon' };
};

/** Rise of the stress from the reference rate to another at a plastic strain, MPa. */
export const rateLift = (rate: number, ep: number): number =>
  RATE.mean * rateShare(ep) * Math.log(rate / REFERENCE_RATE);

const noiseOf = (strains: readonly number[], coupon: PlateCoupon): Float64Array => {
  const n = strains.length;
  const noise = new Float64Array(n * n);
  const slope = strains.map((ep) => (through(coupon, ep * 1.1) / through(coupon, ep * 0.9) - 1) / (0.2 * ep));
  addCommon(
    noise,
    strains.map(() => COUPON_ERROR.section),
  );
  addCommon(
    noise,
    slope.map((s) => s * COUPON_ERROR.zero),
  );
  addCommon(
    noise,
    slope.map((s, k) => s * COUPON_ERROR.gain * strains[k]),
  );
  addOwn(
    noise,
    strains.map(() => COUPON_ERROR.point),
  );
  if (coupon.rate === undefined)
    addCommon(
      noise,
      strains.map((ep) => (RATE.mean * rateShare(ep)) / through(coupon, ep)),
    );
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++)
      noise[n * i + j] +=
        COUPON_ERROR.bends ** 2 *
        Math.exp(-Math.abs(Math.log(strains[i] / strains[j])) / COUPON_ERROR.bendLength);
  return noise;
};

const within = (plastic: readonly number[], ep: number): boolean =>
  plastic.length > 1 && ep >= plastic[0] * 0.999 && ep <= plastic[plastic.length - 1] * 1.001;

/** Straight between points, the end points beyond them. */
const through = ({ plastic, stress }: PlateCoupon, ep: number): number => {
  const last = plastic.length - 1;
  if (ep <= plastic[0]) return stress[0];
  if (ep >= plastic[last]) return stress[last];
  let [low, high] = [0, last];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (plastic[middle] <= ep) low = middle;
    else high = middle;
  }
  return stress[low] + ((ep - plastic[low]) / (plastic[high] - plastic[low])) * (stress[high] - stress[low]);
};
