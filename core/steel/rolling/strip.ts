/**
 * A strip bent and let go, layer by layer, with the shell's own plasticity: wide plate, so no strain along the roll
 * (plane strain), hoop strain curvature x depth, middle surface unstretched (the layers answer alike on both sides).
 * Isotropic hardening: a layer that yields again backwards does so at its full flow stress, later than real steel does.
 */
import { gaussPoints } from '../../math/gauss.ts';
import { root } from '../../math/root.ts';
import {
  ANSWER_LENGTH,
  HOOP,
  MERIDIONAL,
  type Metal,
  PLASTIC_EQ,
  PLASTIC_H,
  PLASTIC_M,
  returnToYield,
} from '../plane.ts';

/** One layer of a strip. Depth from -1 (inside face) to +1 (outside face). */
interface Layer {
  readonly depth: number;
  /** Plastic strains along the roll, around the hoop, and equivalent. */
  readonly along: number;
  readonly around: number;
  readonly plastic: number;
  /** Kirchhoff stresses, MPa. */
  readonly meridional: number;
  readonly hoop: number;
}

/** The outer half of a strip at one moment; the inner half is its mirror image. */
export interface Strip {
  readonly metal: Metal;
  readonly thickness: number;
  /** 1/mm; positive: the outside face is stretched. */
  readonly curvature: number;
  readonly layers: readonly Layer[];
  /** Weights of the layers, sum 1. */
  readonly weights: readonly number[];
}

/** Points in the outer half. The moment of a yielded strip is then good to 1e-4 of itself. */
const RULE = gaussPoints(64);

/** A flat strip without stress. `depths` (0 to 1) replace the points of integration, where only states are wanted. */
export const flatStrip = (metal: Metal, thickness: number, depths?: readonly number[]): Strip => {
  const places = depths ?? RULE.at.map((x) => (1 + x) / 2);
  const weights = depths === undefined ? RULE.weight.map((w) => w / 2) : places.map(() => 1 / places.length);
  const layers = places.map((depth) => ({ depth, along: 0, around: 0, plastic: 0, meridional: 0, hoop: 0 }));
  return { metal, thickness, curvature: 0, layers, weights };
};

/** The strip bent on to another curvature, in one step: along it the strain of each layer grows in proportion. */
export const bentTo = (strip: Strip, curvature: number): Strip => ({
  ...strip,
  curvature,
  layers: strip.layers.map((layer) =>
    movedLayer(layer, (curvature * layer.depth * strip.thickness) / 2, strip.metal),
  ),
});

/** Bent on in steps small enough that the direction of plastic flow follows the stress. */
export const bentSlowly = (strip: Strip, curvature: number, steps = 20): Strip => {
  let now = strip;
  for (let k = 1; k <= steps; k++) {
    now = bentTo(now, strip.curvature + ((curvature - strip.curvature) * k) / steps);
  }
  return now;
};

const answer = new Float64Array(ANSWER_LENGTH);

const movedLayer = (layer: Layer, hoopStrain: number, metal: Metal): Layer => {
  returnToYield(metal, -layer.along, hoopStrain - layer.around, layer.plastic, 0, answer);
  return {
    depth: layer.depth,
    along: layer.along + answer[PLASTIC_M],
    around: layer.around + answer[PLASTIC_H],
    plastic: layer.plastic + answer[PLASTIC_EQ],
    meridional: answer[MERIDIONAL],
    hoop: answer[HOOP],
  };
};

/** Bending moment per width of plate, N: that of the hoop stresses about the middle. */
export const momentOf = ({ layers, weights, thickness }: Strip): number => {
  const sum = layers.reduce((total, { hoop, depth }, k) => total + weights[k] * hoop * depth, 0);
  return (sum * thickness * thickness) / 2;
};

/** Modulus of a wide plate in bending, MPa. */
export const plateModulus = ({ young, poisson }: Metal): number => young / (1 - poisson * poisson);

/** The strip let go: opened until no moment is left. */
export const letGo = (strip: Strip): Strip => {
  const elastic = (12 * momentOf(strip)) / (plateModulus(strip.metal) * strip.thickness ** 3);
  if (elastic === 0) return strip;
  const rest = (open: number): number => momentOf(bentTo(strip, strip.curvature - open));
  // Opening by the elastic amount leaves nothing, or a layer yields backwards and the strip opens further.
  const open =
    Math.abs(rest(elastic)) < 1e-9 * Math.abs(momentOf(strip)) ? elastic : root(rest, 0, 2 * elastic);
  return bentTo(strip, strip.curvature - open);
};
