/** Root and peak of a function of one variable inside a bracket. The bracket is never left. */

export interface Stop {
  /** Width of the bracket at which the search ends, in the unit of x. Default: 1e-13 of the larger end; of a peak 1e-9 of the bracket. */
  readonly width?: number;
  readonly steps?: number;
}

/**
 * Where `f` is zero between `a` and `b`, which must have f of opposite signs (or zero at an end).
 * Chandrupatla, Adv. Eng. Software 28 (1997) 145: inverse quadratic interpolation where it is safe, else halving.
 * Throws if the ends have the same sign or the steps run out.
 */
export const root = (f: (x: number) => number, a: number, b: number, stop: Stop = {}): number => {
  const width = stop.width ?? 1e-13 * Math.max(Math.abs(a), Math.abs(b));
  const steps = stop.steps ?? 200;
  let [xa, xb] = [a, b];
  let [fa, fb] = [f(a), f(b)];
  if (!(fa * fb <= 0)) throw new Error(`no change of sign: f(${a}) = ${fa}, f(${b}) = ${fb}`);
  let fraction = 0.5;
  for (let step = 0; step < steps; step++) {
    if (fa === 0) return xa;
    if (fb === 0) return xb;
    const x = xa + fraction * (xb - xa);
    const fx = f(x);
    let [xc, fc] = [xb, fb];
    if (fx * fa > 0) [xc, fc] = [xa, fa];
    else [xb, fb] = [xa, fa];
    [xa, fa] = [x, fx];
    const best = Math.abs(fa) < Math.abs(fb) ? xa : xb;
    const least = width / Math.abs(xb - xa) || 0;
    if (fx === 0 || least > 0.5 || xa === xb) return best;
    fraction = Math.min(1 - least, Math.max(least, nextFraction(xa, fa, xb, fb, xc, fc)));
  }
  throw new Error(`no root within ${steps} steps between ${a} and ${b}; left at ${xa}, f = ${fa}`);
};

const nextFraction = (xa: number, fa: number, xb: number, fb: number, xc: number, fc: number): number => {
  const xi = (xa - xb) / (xc - xb);
  const phi = (fa - fb) / (fc - fb);
  if (phi * phi >= xi || (1 - phi) * (1 - phi) >= 1 - xi) return 0.5;
  return (fa / (fb - fa)) * (fc / (fb - fc)) + ((xc - xa) / (xb - xa)) * (fa / (fc - fa)) * (fb / (fc - fb));
};

/**
 * Where `f` has its largest value between `a` and `b`; one peak is assumed. Golden section, so x is good to
 * about the square root of rounding (1e-8 of the bracket) and f to rounding.
 */
export const peak = (
  f: (x: number) => number,
  a: number,
  b: number,
  stop: Stop = {},
): { x: number; value: number } => {
  const width = stop.width ?? 1e-9 * Math.abs(b - a);
  const steps = stop.steps ?? 200;
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [a, b];
  let [x1, x2] = [high - golden * (high - low), low + golden * (high - low)];
  let [f1, f2] = [f(x1), f(x2)];
  for (let step = 0; step < steps && high - low > width; step++) {
    if (f1 < f2) {
      low = x1;
      [x1, f1] = [x2, f2];
      x2 = low + golden * (high - low);
      f2 = f(x2);
    } else {
      high = x2;
      [x2, f2] = [x1, f1];
      x1 = high - golden * (high - low);
      f1 = f(x1);
    }
  }
  return f1 > f2 ? { x: x1, value: f1 } : { x: x2, value: f2 };
};
