/**
 * Invented plates whose truth is known: drawn from the very scatter the range assumes, tested with the very errors it
 * assumes. If the range is worked out rightly its 90 % hold 90 % of them. That shows the working, not the assumptions.
 */
import { type Dice } from '../../core/math/dice.ts';
import { cholesky } from '../../core/math/cholesky.ts';
import { BARREL_SHARE, BAD_SHARE, BAD_TIMES, type Level, scatterOf } from '../../core/steel/prior/scatter.ts';
import { FACTORS, logStress, REFERENCE_RATE } from '../../core/steel/prior/shape.ts';
import { BIAXIAL, platePrior, RATE, rateShare, ROLLING_SHARE } from '../../core/steel/prior/prior.ts';
import { COUPON_ERROR, ORDINARY_RATE } from '../../core/steel/evidence/coupon.ts';
import { CERTIFICATE_ERROR, STRENGTH_RATE } from '../../core/steel/evidence/certificate.ts';
import { PROOF02_PLASTIC, PROOF10_PLASTIC } from '../../core/steel/prior/figures.ts';
import { flowOf } from '../../core/steel/flow.ts';
import type { QuickSteel } from './growth.ts';
import { drawOf, type SteelDraw } from '../../core/steel/belief/draw.ts';
import type { Certificate, Evidence, PlateCoupon, PlateInHand } from '../../core/steel/evidence/evidence.ts';

/** True uniaxial stress at a plastic strain, rate left out. */
export type Curve = (ep: number) => number;

/** How one specimen departs from its plate: logarithms of four factors, in the manner of the law. */
type Departure = readonly number[];

/** An invented plate and the barrel made of it. */
export interface Truth {
  /** The curve of a specimen of this plate, or of another plate of its heat. */
  readonly plateCurve: (from: Departure) => Curve;
  readonly heatCurve: (from: Departure) => Curve;
  /** Size of the scatter within the plate. */
  readonly size: number;
  readonly perEfold: number;
  readonly wallFactor: number;
  /** What the barrel does under pressure. */
  readonly steel: QuickSteel;
}

export const PLATE: PlateInHand = {
  grade: '1.4307',
  form: 'cold-rolled',
  thickness: 2,
  wall: 2,
  radius: 301,
  plate: 'P1',
  heat: 'H1',
};

/** Departure of one level of scatter. */
export const departure = (level: Level, dice: Dice, times = 1): number[] => {
  const root = cholesky(scatterOf(level, times), FACTORS);
  const z = Array.from({ length: FACTORS }, () => dice.normal());
  return z.map((_, i) => z.reduce((sum, x, k) => sum + (k <= i ? root[FACTORS * i + k] * x : 0), 0));
};

export const plus = (...parts: readonly (readonly number[])[]): number[] =>
  parts[0].map((_, k) => parts.reduce((sum, part) => sum + part[k], 0));

/** Size of the scatter within a plate: log-normal, not only the five sizes the inference goes through. */
const PLACE_SPREAD = 0.5;

/** What may be set otherwise than by the scatter the range assumes. */
export interface Oddity {
  readonly heat?: readonly number[];
  readonly biaxialFactor?: number;
}

export const inventedTruth = (dice: Dice, odd: Oddity = {}): Truth & { readonly draw: SteelDraw } => {
  const prior = platePrior(PLATE);
  const usual = plus(departure('grade', dice, prior.wider), departure('heat', dice));
  const heat = plus(prior.factors, odd.heat ?? usual);
  const plate = plus(heat, departure('plate', dice));
  const size = Math.exp(PLACE_SPREAD * dice.normal());
  const usualDraw = inventedDraw(plus(plate, departure('place', dice, size * BARREL_SHARE)), dice);
  const draw = { ...usualDraw, biaxialFactor: odd.biaxialFactor ?? usualDraw.biaxialFactor };
  return {
    plateCurve: (from) => curveOf(plus(plate, from)),
    heatCurve: (from) => curveOf(plus(heat, from)),
    size,
    perEfold: draw.rate.perEfold,
    wallFactor: draw.wallFactor,
    draw,
    steel: quickSteel(draw),
  };
};

export const curveOf =
  (factors: readonly number[]): Curve =>
  (ep) =>
    Math.exp(logStress(factors, ep));

export const quickSteel = (draw: SteelDraw): QuickSteel => ({
  flow: flowOf(draw.flow, draw.biaxialFactor),
  viscosity: draw.rate.perEfold,
  reference: draw.rate.reference,
  wallFactor: draw.wallFactor,
  coldWork: draw.coldWork,
});

/** A draw of these factors, everything else thrown as the range assumes it. */
export const inventedDraw = (factors: readonly number[], dice: Dice): SteelDraw => {
  const bent = PLATE.wall / (4 * (PLATE.radius ?? 1));
  const spread = Math.sqrt(Math.log1p((ROLLING_SHARE.deviation / ROLLING_SHARE.mean) ** 2));
  return drawOf([
    ...factors,
    Math.log(BIAXIAL.mean) + (BIAXIAL.deviation / BIAXIAL.mean) * dice.normal(),
    Math.log(RATE.mean) + RATE.deviation * dice.normal(),
    WALL_TRUE * dice.normal(),
    ROLLING_SHARE.mean * bent * Math.exp(spread * dice.normal() - 0.5 * spread * spread),
    1,
  ]);
};

/** Every invented wall is measured at four points by a gauge good to 0.5 %; the truth strays 2.5 % from the file. */
const WALL_TRUE = 0.025;

export const wallPoints = (truth: Truth, dice: Dice): Evidence['walls'] => {
  const gauge = 0.01;
  const offset = gauge * dice.normal();
  const points = Array.from(
    { length: 4 },
    () => PLATE.wall * truth.wallFactor * (1 + 0.006 * dice.normal()) + offset,
  );
  return [{ name: 'ultrasonic wall', points, gauge }];
};

/** Certificate of a specimen from another plate of the heat, printed in whole MPa. */
export const inventedCertificate = (truth: Truth, dice: Dice): Certificate => {
  const curve = truth.heatCurve(plus(departure('plate', dice), departure('place', dice)));
  const [section, together] = [
    CERTIFICATE_ERROR.section * dice.normal(),
    CERTIFICATE_ERROR.proofTogether * dice.normal(),
  ];
  const printed = (ep: number, rate: number, error: number): number => {
    const stress = curve(ep) + truth.perEfold * rateShare(ep) * Math.log(rate / REFERENCE_RATE);
    return Math.round(engineering(stress, ep) * Math.exp(section + error));
  };
  const proof = (ep: number, own: number): number =>
    printed(ep, ORDINARY_RATE, together + own * dice.normal());
  return {
    name: 'mill certificate',
    heat: 'H1',
    proof02: proof(PROOF02_PLASTIC, CERTIFICATE_ERROR.proof02),
    proof10: proof(PROOF10_PLASTIC, CERTIFICATE_ERROR.proof10),
    strength: printed(uniformStrain(curve), STRENGTH_RATE, CERTIFICATE_ERROR.strength * dice.normal()),
  };
};

const engineering = (stress: number, ep: number): number => stress * Math.exp(-ep - stress / 200_000);

/** True plastic strain at maximum force. */
const uniformStrain = (curve: Curve): number =>
  Array.from({ length: 400 }, (_, k) => 0.02 + k * 0.002).reduce((best, ep) =>
    engineering(curve(ep), ep) > engineering(curve(best), best) ? ep : best,
  );

/** Coupons of the plate: some bad, each with its own departure. */
export const inventedCoupons = (truth: Truth, count: number, dice: Dice): PlateCoupon[] =>
  Array.from({ length: count }, (_, k) => {
    const times = truth.size * (dice.uniform() < BAD_SHARE ? BAD_TIMES : 1);
    const curve = truth.plateCurve(departure('place', dice, times));
    return couponOf(curve, { name: `coupon ${k + 1}`, perEfold: truth.perEfold }, dice);
  });

/** What the machine writes down of a curve: 60 points, with the errors of one test. */
const couponOf = (
  curve: Curve,
  { name, perEfold }: { name: string; perEfold: number },
  dice: Dice,
): PlateCoupon => {
  const rate = 2.5e-4;
  const section = COUPON_ERROR.section * dice.normal();
  const zero = COUPON_ERROR.zero * dice.normal();
  const gain = COUPON_ERROR.gain * dice.normal();
  const plastic = Array.from({ length: 60 }, (_, k) => 0.0015 * (0.42 / 0.0015) ** (k / 59));
  const bend = bends(plastic, dice);
  const stress = plastic.map((ep, k) => {
    const reached = Math.max(1e-4, ep * (1 + gain) + zero);
    const lifted = curve(reached) + perEfold * rateShare(reached) * Math.log(rate / REFERENCE_RATE);
    return lifted * Math.exp(section + bend[k] + COUPON_ERROR.point * dice.normal());
  });
  return { name, plate: 'P1', heat: 'H1', rate, plastic, stress };
};

/** A first-order chain in ln(strain) with the length and size of the inference. */
const bends = (plastic: readonly number[], dice: Dice): number[] => {
  const { bends: size, bendLength } = COUPON_ERROR;
  let now = size * dice.normal();
  return plastic.map((ep, k) => {
    if (k > 0) {
      const keep = Math.exp(-Math.log(ep / plastic[k - 1]) / bendLength);
      now = keep * now + size * Math.sqrt(1 - keep * keep) * dice.normal();
    }
    return now;
  });
};
