/**
 * What is not known of the tank and of the instruments on it, as independent standard normal numbers: the inputs of the
 * steel, gain and zero of the gauge, gain and zero of each girth, and how far the real tank strays from the quick one.
 */
import { cholesky } from '../../math/cholesky.ts';
import { drawOf, INPUTS, inputsOf, type SteelDraw } from '../../steel/belief/draw.ts';

/** Standard deviations of what the instruments may be off by. */
export interface Errors {
  /** Of the gain of the gauge, as a fraction, and of its zero, MPa. */
  readonly gauge: { readonly gain: number; readonly zero: number };
  /** Of each girth: gain as a fraction, zero as growth. */
  readonly girths: readonly { readonly gain: number; readonly zero: number }[];
}

/** How far pressure at equal growth strays from the quick tank: standard deviations of its logarithm. */
export interface Strays {
  /** About first yield, and from 1.5 % growth up: lived days, or held-back shell solutions where they are worse. */
  readonly nearYield: number;
  readonly stretched: number;
  /** From one reading to the next, without memory. */
  readonly loose: number;
  /** Of the growth at the end of a final hold over that of the quick tank: lived days on the shell. */
  readonly final: number;
}

export interface Unknowns {
  readonly errors: Errors;
  readonly strays: Strays;
  readonly mean: Float64Array;
  /** Lower factor of the covariance of the inputs. */
  readonly root: Float64Array;
  /** Lower factor of the correlation of the strays at the knots. */
  readonly strayRoot: Float64Array;
  readonly size: number;
}

export const STEEL = INPUTS.length;
/** Places of gain and zero of the gauge. */
export const GAUGE = STEEL;
export const GIRTHS = STEEL + 2;

/** Growths at which the strays stand; between them straight in the logarithm of growth. */
export const KNOTS = Float64Array.from({ length: 12 }, (_, k) => 6e-4 * 1.7 ** k);
/** E-folds of growth over which strays forget themselves. Our choice: the fit has its terms at all growths together. */
const MEMORY = 0.7;
/** Growth from which a tank counts as stretched. */
const STRETCHED = 0.015;

/** From equally likely steels and the instruments. Covariances are those of the draws. */
export function unknownsOf(draws: readonly SteelDraw[], errors: Errors, strays: Strays): Unknowns {
  const rows = draws.map(numbersOf);
  const mean = Float64Array.from(INPUTS, (_, k) => rows.reduce((sum, row) => sum + row[k], 0) / rows.length);
  const covariance = new Float64Array(STEEL * STEEL);
  for (const row of rows)
    for (let a = 0; a < STEEL; a++)
      for (let b = 0; b < STEEL; b++)
        covariance[a * STEEL + b] += ((row[a] - mean[a]) * (row[b] - mean[b])) / (rows.length - 1);
  for (let a = 0; a < STEEL; a++) covariance[a * STEEL + a] += TINY;
  const n = KNOTS.length;
  const alike = Float64Array.from({ length: n * n }, (_, at) => {
    const apart = Math.abs(Math.log(KNOTS[Math.floor(at / n)] / KNOTS[at % n]));
    return Math.exp(-apart / MEMORY) + (apart === 0 ? TINY : 0);
  });
  return {
    errors,
    strays,
    mean,
    root: cholesky(covariance, STEEL),
    strayRoot: cholesky(alike, n),
    size: GIRTHS + 2 * errors.girths.length + n,
  };
}

/** Keeps inputs that never move from spoiling the factor. */
const TINY = 1e-12;

/** The steel at these numbers. */
export const steelAt = (unknowns: Unknowns, z: Float64Array): SteelDraw => {
  const { mean, root } = unknowns;
  const inputs = Float64Array.from(mean);
  for (let a = 0; a < STEEL; a++) for (let b = 0; b <= a; b++) inputs[a] += root[a * STEEL + b] * z[b];
  inputs[ROLLING] = Math.exp(inputs[ROLLING]);
  return drawOf(inputs);
};

/** The inputs of a draw; rolling, which is never negative and skewed, as its logarithm. */
function numbersOf(draw: SteelDraw): number[] {
  const inputs = inputsOf(draw);
  inputs[ROLLING] = Math.log(Math.max(UNROLLED, inputs[ROLLING]));
  return inputs;
}
const ROLLING = INPUTS.indexOf('rolling');
/** Plastic strain that is none. */
const UNROLLED = 1e-9;

/** Shares of the stray numbers in the stray at a growth, for strays of their usual size; written into `out`. */
export function writeStrays(unknowns: Unknowns, growth: number, out: Float64Array): void {
  const { strayRoot, strays } = unknowns;
  const n = KNOTS.length;
  const place = Math.min(n - 1, Math.max(0, Math.log(growth / KNOTS[0]) / Math.log(KNOTS[1] / KNOTS[0])));
  const low = Math.min(n - 2, Math.floor(place));
  const f = place - low;
  const size = straySize(strays, growth);
  for (let b = 0; b < n; b++)
    out[b] = size * ((1 - f) * strayRoot[low * n + b] + f * strayRoot[(low + 1) * n + b]);
}

/** Standard deviation of the stray at a growth: falls over one e-fold below 1.5 % growth. */
export const straySize = ({ nearYield, stretched }: Strays, growth: number): number =>
  stretched + early(growth) * (nearYield - stretched);

/** Without memory: in the bend at first yield the places that grow most change from reading to reading. */
export const looseAt = ({ loose }: Strays, growth: number): number =>
  loose * (1 + (LOOSER - 1) * early(growth));
const LOOSER = 20;

const early = (growth: number): number => Math.min(1, Math.max(0, Math.log(STRETCHED / growth)));

/** Stray (logarithm of pressure) at each growth of a grid. */
export function straysOn(
  unknowns: Unknowns,
  z: Float64Array,
  grid: Float64Array,
  times: number,
): Float64Array {
  const n = KNOTS.length;
  const from = unknowns.size - n;
  const share = new Float64Array(n);
  return grid.map((growth) => {
    writeStrays(unknowns, growth, share);
    let sum = 0;
    for (let b = 0; b < n; b++) sum += share[b] * z[from + b];
    return times * sum;
  });
}
