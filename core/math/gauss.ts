/** Gauss-Legendre points on [-1, 1], by Newton on the Legendre polynomial (Abramowitz & Stegun 25.4.29). */

export interface GaussRule {
  readonly at: readonly number[];
  readonly weight: readonly number[];
}

/** Rule of n points, rising; exact for polynomials of degree 2n - 1. Positions to 1e-15. */
export function gaussPoints(n: number): GaussRule {
  const at: number[] = [];
  const weight: number[] = [];
  for (let i = n; i >= 1; i--) {
    let x = Math.cos((Math.PI * (i - 0.25)) / (n + 0.5));
    let slope = 1;
    for (let turn = 0; turn < 50; turn++) {
      const { value, derivative } = legendre(n, x);
      slope = derivative;
      x -= value / derivative;
      if (Math.abs(value / derivative) < 1e-15) break;
    }
    at.push(x);
    weight.push(2 / ((1 - x * x) * slope * slope));
  }
  return { at, weight };
}

function legendre(n: number, x: number): { value: number; derivative: number } {
  let previous = 1;
  let value = x;
  for (let k = 2; k <= n; k++)
    [previous, value] = [value, ((2 * k - 1) * x * value - (k - 1) * previous) / k];
  return n === 1
    ? { value: x, derivative: 1 }
    : { value, derivative: (n * (x * value - previous)) / (x * x - 1) };
}
