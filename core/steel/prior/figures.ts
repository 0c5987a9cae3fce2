/** Figures of a tensile test that a curve of the law implies: proof stresses and Rm, as logarithms of engineering stresses. */
import { FACTORS, type Factors, logStress, writeShares } from './shape.ts';

/** Young's modulus that turns offsets into strains here, MPa (EN 10088-1). 2 % of it moves Rp0.2 by 0.01 %. */
export const YOUNG = 200_000;
/** True plastic strain at Rp0.2 and Rp1.0: the offset less half the square of the engineering strain. */
export const PROOF02_PLASTIC = 0.002;
export const PROOF10_PLASTIC = 0.0099;
/** About where annealed 304L reaches its maximum force: a starting guess, and the place typical values of Rm speak for. */
export const UNIFORM_PLASTIC = 0.45;

/** ln of the engineering stress at a small plastic strain. `lift`: rise of the curve by a faster test, MPa. */
export const logProof = (factors: Factors, ep: number, lift = 0): number =>
  logEngineering(lifted(factors, ep, lift), ep);

const lifted = (factors: Factors, ep: number, lift: number): number =>
  Math.log(Math.exp(logStress(factors, ep)) + lift);

const logEngineering = (logTrue: number, ep: number): number => logTrue - ep - Math.exp(logTrue) / YOUNG;

export interface Strength {
  /** ln(Rm / MPa). */
  readonly log: number;
  /** True plastic strain at maximum force. */
  readonly plastic: number;
}

/** Maximum of the engineering stress, by golden section over 2 to 100 % plastic strain; ln Rm good to 1e-9. */
export const logStrength = (factors: Factors, lift = 0): Strength => {
  const at = (ep: number): number => logEngineering(lifted(factors, ep, lift), ep);
  let [low, high] = [0.02, 1];
  let [x1, x2] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [f1, f2] = [at(x1), at(x2)];
  while (high - low > 2e-4) {
    if (f1 < f2) {
      low = x1;
      [x1, f1] = [x2, f2];
      x2 = low + GOLDEN * (high - low);
      f2 = at(x2);
    } else {
      high = x2;
      [x2, f2] = [x1, f1];
      x1 = high - GOLDEN * (high - low);
      f1 = at(x1);
    }
  }
  return f1 > f2 ? { log: f1, plastic: x1 } : { log: f2, plastic: x2 };
};

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Shares of the four factors in ln of the stress at a plastic strain. */
export const sharesAt = (ep: number): Float64Array => {
  const shares = new Float64Array(FACTORS);
  writeShares(ep, shares);
  return shares;
};
