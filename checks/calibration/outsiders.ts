/** Invented plates that the range does not expect: another law, another yield criterion, a heat far from typical. */
import type { Dice } from '../../core/math/dice.ts';
import type { Flow } from '../../core/steel/hardening.ts';
import {
  AVERAGE_SHEAR_CLOSED_CYLINDER,
  biaxialFactorOf,
  hosfordClosedCylinder,
} from '../../core/steel/biaxial.ts';
import { sharesAt } from '../../core/steel/prior/figures.ts';
import { BARREL_SHARE, SCATTER } from '../../core/steel/prior/scatter.ts';
import {
  type Curve,
  departure,
  inventedDraw,
  inventedTruth,
  plus,
  quickSteel,
  type Truth,
} from './plates.ts';

export const OUTSIDERS = ['Voce', 'Swift', 'another biaxial factor', 'another heat'] as const;
export type Outsider = (typeof OUTSIDERS)[number];

export const outsider = (kind: Outsider, dice: Dice): Truth => {
  switch (kind) {
    case 'Voce':
      return otherLaw(voce(dice), dice);
    case 'Swift':
      return otherLaw(swift(dice), dice);
    case 'another biaxial factor':
      return inventedTruth(dice, { biaxialFactor: CRITERIA[dice.below(4)] });
    case 'another heat':
      return farHeat(dice);
  }
};

/**
 * Fits of the two laws to the mean of eight bars of annealed 304L (Karlson et al. 2023: Voce 249, 1031, 2.18 and Swift
 * 1343, 0.0466, 0.562), 10 and 7 MPa rms off it, each figure strayed by several per cent and lifted to sheet.
 */
const voce = (dice: Dice): Curve => {
  const lift = 1.17 * Math.exp(0.08 * dice.normal());
  const [start, rise, steep] = [249, 1031, 2.18].map((value) => value * Math.exp(0.05 * dice.normal()));
  return (ep) => lift * start - rise * Math.expm1(-steep * ep);
};

const swift = (dice: Dice): Curve => {
  const lift = 1.08 * Math.exp(0.05 * dice.normal());
  const [K, shift, power] = [1343, 0.0466, 0.562].map((value) => value * Math.exp(0.05 * dice.normal()));
  return (ep) => lift * K * (shift * 1.3 + ep) ** power;
};

/** Plates and places stray as everywhere; only the shape of the curve is another. */
const otherLaw = (heat: Curve, dice: Dice): Truth => {
  const plate = departure('plate', dice);
  const size = Math.exp(0.5 * dice.normal());
  const barrel = strayed(heat, plus(plate, departure('place', dice, size * BARREL_SHARE)));
  const draw = inventedDraw([0, 0, 0, 0], dice);
  return {
    plateCurve: (from) => strayed(heat, plus(plate, from)),
    heatCurve: (from) => strayed(heat, from),
    size,
    perEfold: draw.rate.perEfold,
    wallFactor: draw.wallFactor,
    steel: { ...quickSteel(draw), flow: flowThrough(barrel, draw.biaxialFactor) },
  };
};

const strayed =
  (base: Curve, factors: readonly number[]): Curve =>
  (ep) =>
    base(ep) * Math.exp(sharesAt(ep).reduce((sum, share, k) => sum + share * factors[k], 0));

const flowThrough = (curve: Curve, factor: number): Flow => ({
  evidence: Infinity,
  at: (ep, out) => {
    out[0] = factor * curve(ep);
    out[1] = (factor * (curve(ep + 1e-5) - curve(ep))) / 1e-5;
  },
});

/** Factors of von Mises, Hosford 6 and 8, and average shear stress: the barrel follows one of them exactly. */
const CRITERIA = [
  1,
  biaxialFactorOf(hosfordClosedCylinder(6)),
  biaxialFactorOf(hosfordClosedCylinder(8)),
  biaxialFactorOf(AVERAGE_SHEAR_CLOSED_CYLINDER),
] as const;

/** 2.5 standard deviations of grade and heat together, harder or softer throughout: about 240 or 355 MPa at 0.2 %. */
const farHeat = (dice: Dice): Truth => {
  const side = dice.uniform() < 0.5 ? -1 : 1;
  const heat = SCATTER.grade.map((grade, k) => side * 2.5 * Math.hypot(grade, SCATTER.heat[k]));
  return inventedTruth(dice, { heat });
};
