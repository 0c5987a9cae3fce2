/** May this test speak for the steel at the strains of a stretch? */
import type { CouponFinding } from './finding.ts';
import type { TrueCurve } from './true-curve.ts';

export interface CouponVerdict {
  readonly usable: boolean;
  /** The findings that bar it; empty where it is usable. */
  readonly reasons: readonly CouponFinding[];
}

interface Figures {
  readonly proof02?: number;
  readonly strength?: number;
  readonly uniform?: number;
}

/**
 * Ranges (MPa, fraction) that annealed, rolled or cold-stretched austenitic sheet and bar keep to, widely drawn about
 * the grade tables of EN 10088-2 (Rp0.2 from 170, Rm 485 to 950; cold-worked classes up to 1300). Limits of this project.
 */
export const PLAUSIBLE = { proof02: [120, 1200], strength: [380, 1600], uniform: [0.005, 0.9] } as const;

/** Adds a finding for each figure outside its range. */
export const implausible = (figures: Figures, findings: CouponFinding[]): void => {
  const outside = (value: number | undefined, [low, high]: readonly [number, number]): value is number =>
    value !== undefined && (value < low || value > high);
  const { proof02, strength, uniform } = figures;
  if (outside(proof02, PLAUSIBLE.proof02)) findings.push({ kind: 'unlike', of: 'Rp0.2', value: proof02 });
  if (outside(strength, PLAUSIBLE.strength)) findings.push({ kind: 'unlike', of: 'Rm', value: strength });
  if (outside(uniform, PLAUSIBLE.uniform)) findings.push({ kind: 'unlike', of: 'Ag', value: uniform });
};

/** A stretch leaves up to about 7 % on the diameter (EN 13458-2 practice); a curve that ends under 5 % says too little. */
const NEEDED_PLASTIC = 0.05;
/** Fewer points than this between 0.2 % and the end leave the shape of the curve to the straight lines between them. */
const FEWEST_PLASTIC_POINTS = 8;

export const verdictOn = (
  { measured, trueCurve }: { measured: Figures; trueCurve: TrueCurve },
  findings: CouponFinding[],
): CouponVerdict => {
  const points = trueCurve.plastic.filter((ep) => ep >= 0.002).length;
  const reach = trueCurve.plastic[trueCurve.plastic.length - 1] ?? 0;
  if (points < FEWEST_PLASTIC_POINTS) findings.push({ kind: 'few-points', points });
  if (reach < NEEDED_PLASTIC) findings.push({ kind: 'short', plastic: reach });
  const reasons = findings.filter((finding) => bars(finding, measured));
  return { usable: reasons.length === 0, reasons };
};

/** Up to this plastic strain a slip spoils the part of the curve that a stretch uses. */
const SLIP_SPOILS = 0.1;

const bars = (finding: CouponFinding, { proof02 }: Figures): boolean => {
  switch (finding.kind) {
    case 'slip':
    case 'grip-slip':
      return finding.plastic < SLIP_SPOILS;
    case 'begins-late':
      return proof02 === undefined;
    case 'slack':
    case 'crosshead':
    case 'few-points':
    case 'short':
    case 'unlike':
      return true;
    default:
      return false;
  }
};
