/** Points spread evenly over many dimensions: fewer of them say as much as many thrown at random. */
import type { Dice } from '../math/dice.ts';
import { normalQuantile } from './normal.ts';

/**
 * Latin hypercube: `count` points in `dimensions`, each coordinate uniform on (0, 1) with exactly one point in each of
 * `count` equal slices (McKay, Beckman & Conover, Technometrics 21 (1979) 239).
 */
export const latinHypercube = (count: number, dimensions: number, dice: Dice): Float64Array[] => {
  const points = Array.from({ length: count }, () => new Float64Array(dimensions));
  for (let d = 0; d < dimensions; d++) {
    const order = shuffled(count, dice);
    for (let k = 0; k < count; k++) points[k][d] = (order[k] + dice.uniform()) / count;
  }
  return points;
};

/** The same as standard normal coordinates. */
export const normalHypercube = (count: number, dimensions: number, dice: Dice): Float64Array[] =>
  latinHypercube(count, dimensions, dice).map((point) => point.map(normalQuantile));

/** The whole numbers below `count` in random order (Fisher & Yates). */
export const shuffled = (count: number, dice: Dice): number[] => {
  const order = Array.from({ length: count }, (_, k) => k);
  for (let k = count - 1; k > 0; k--) {
    const other = dice.below(k + 1);
    [order[k], order[other]] = [order[other], order[k]];
  }
  return order;
};
