/** Student's t and the chi-square distribution: how far small samples carry. */
import { root } from '../math/root.ts';
import { betaBelow, gammaBelow } from './gamma.ts';

/** Probability that Student's t with `freedom` degrees of freedom lies below x. */
export const studentBelow = (x: number, freedom: number): number => {
  const tail = betaBelow(freedom / 2, 0.5, freedom / (freedom + x * x)) / 2;
  return x < 0 ? tail : 1 - tail;
};

/** Value below which Student's t lies with probability p. */
export const studentQuantile = (p: number, freedom: number): number => {
  if (p === 0.5) return 0;
  if (p < 0.5) return -studentQuantile(1 - p, freedom);
  let high = 1;
  while (studentBelow(high, freedom) < p) high *= 2;
  return root((x) => studentBelow(x, freedom) - p, 0, high);
};

/** Probability that chi-square with `freedom` degrees of freedom lies below x. */
export const chiSquareBelow = (x: number, freedom: number): number => gammaBelow(freedom / 2, x / 2);

/** Value below which chi-square lies with probability p. */
export const chiSquareQuantile = (p: number, freedom: number): number => {
  let high = freedom + 1;
  while (chiSquareBelow(high, freedom) < p) high *= 2;
  return root((x) => chiSquareBelow(x, freedom) - p, 0, high);
};
