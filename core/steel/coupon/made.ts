/**
 * A made-up tensile test of a stated flow curve, with the figures it must give: for rehearsals, invented examples and
 * the checks of the evaluation. The figures come from the law by root finding, not from the points.
 */
import { root } from '../../math/root.ts';
import type { CouponTest } from './record.ts';
import type { Flow } from '../hardening.ts';

export interface CouponRecipe {
  /** Must reach its maximum force (slope = stress) below a true plastic strain of 1.5. */
  readonly flow: Flow;
  /** MPa. */
  readonly young: number;
  /** Engineering strain rate, 1/s. */
  readonly rate: number;
  /** Points of the elastic part, up to 2 % plastic strain, up to maximum force, in the neck. */
  readonly points: {
    readonly elastic: number;
    readonly yield: number;
    readonly plastic: number;
    readonly neck: number;
  };
  /** Engineering strain between maximum force and break, and the part of the force that is left at the break. */
  readonly neck: { readonly strain: number; readonly left: number };
  /** Standard deviations of the readings: of strain, and of stress in MPa. */
  readonly noise: { readonly strain: number; readonly stress: number };
}

/** What an evaluation should find; fractions and MPa. */
export interface CouponTruth {
  readonly young: number;
  readonly proof02: number;
  readonly proof10: number;
  readonly strength: number;
  readonly uniform: number;
  readonly elongation: number;
}

/** `dice` gives numbers between 0 and 1; with the same ones the test is the same. */
export const madeCoupon = (
  recipe: CouponRecipe,
  dice: () => number,
): { readonly test: CouponTest; readonly truth: CouponTruth } => {
  const steel = pulled(recipe);
  const top = maximumForce(recipe);
  const clean = [...loading(recipe, steel, top), ...necking(recipe, steel(top))];
  const shaken = clean.map(({ strain, stress }) => ({
    strain: strain + recipe.noise.strain * normal(dice),
    stress: stress + recipe.noise.stress * normal(dice),
  }));
  const test = {
    strain: shaken.map(({ strain }) => strain),
    stress: shaken.map(({ stress }) => stress),
    time: clean.map(({ strain }) => strain / recipe.rate),
  };
  return { test, truth: truthOf(recipe, steel, top) };
};

interface Point {
  /** Engineering. */
  readonly strain: number;
  readonly stress: number;
}

/** Engineering point at a true plastic strain. */
const pulled = ({ flow, young }: CouponRecipe): ((ep: number) => Point) => {
  const out = new Float64Array(2);
  return (ep) => {
    flow.at(ep, out);
    const strain = Math.expm1(ep + out[0] / young);
    return { strain, stress: out[0] / (1 + strain) };
  };
};

/** True plastic strain where d sigma / d epsilon = sigma (Considère). */
const maximumForce = ({ flow, young }: CouponRecipe): number => {
  const out = new Float64Array(2);
  const excess = (ep: number): number => {
    flow.at(ep, out);
    return out[1] / (1 + out[1] / young) - out[0];
  };
  return root(excess, 1e-4, 1.5);
};

const loading = (recipe: CouponRecipe, steel: (ep: number) => Point, top: number): Point[] => {
  const { elastic, yield: early, plastic } = recipe.points;
  const first = steel(0);
  const rising = spread(elastic, 0, 1).map((part) => ({
    strain: Math.expm1((part * first.stress * (1 + first.strain)) / recipe.young),
    stress: part * first.stress,
  }));
  const knee = spread(early, 0, 0.02).map(steel);
  const rest = spread(plastic, 0.02, top).map(steel);
  return [...rising, ...knee, ...rest, steel(top)];
};

/** Force falls with the square of the strain since the maximum, then the specimen parts. */
const necking = ({ points, neck }: CouponRecipe, top: Point): Point[] => {
  const falling = spread(points.neck, 0, 1).map((part) => ({
    strain: top.strain + ((part * points.neck + 1) / points.neck) * neck.strain,
    stress: top.stress * (1 - (1 - neck.left) * ((part * points.neck + 1) / points.neck) ** 2),
  }));
  const apart = { strain: top.strain + 1.02 * neck.strain, stress: 0.004 * top.stress };
  return [...falling, apart, { ...apart, strain: apart.strain + 0.001 }];
};

/** `count` places from `from`, without `to`. */
const spread = (count: number, from: number, to: number): number[] =>
  Array.from({ length: count }, (_, k) => from + ((to - from) * k) / count);

const truthOf = (recipe: CouponRecipe, steel: (ep: number) => Point, top: number): CouponTruth => {
  const { young, neck } = recipe;
  const plastic = (ep: number): number => steel(ep).strain - steel(ep).stress / young;
  const proof = (offset: number): number => steel(root((ep) => plastic(ep) - offset, 0, top)).stress;
  const { strain, stress } = steel(top);
  return {
    young,
    proof02: proof(0.002),
    proof10: proof(0.01),
    strength: stress,
    uniform: plastic(top),
    elongation: strain + neck.strain - (neck.left * stress) / young,
  };
};

/** Box & Muller, Ann. Math. Stat. 29 (1958) 610. */
const normal = (dice: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - dice())) * Math.cos(2 * Math.PI * dice());
