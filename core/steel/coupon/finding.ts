/** What was found in a tensile test besides its figures, and whether the test may speak for the steel. */

/** Strains are fractions, stresses MPa; `at` is a point of the test as given. */
export type CouponFinding =
  /** No modulus: too few points in the elastic part, too much scatter about its line, or a slope that no such steel has. */
  | { readonly kind: 'no-slope'; readonly why: 'few'; readonly points: number }
  | { readonly kind: 'no-slope'; readonly why: 'poor'; readonly points: number; readonly scatter: number }
  | { readonly kind: 'no-slope'; readonly why: 'outside'; readonly young: number }
  /** The curve was shifted by this strain because its elastic line does not meet zero. */
  | { readonly kind: 'toe'; readonly strain: number }
  /** Without a modulus nothing is shifted, but the curve seems to begin late (or early) by this strain. */
  | { readonly kind: 'toe-left'; readonly strain: number }
  /** Slack so large that the offset line meets the curve before the metal carries load: no proof strength. */
  | { readonly kind: 'slack' }
  /** The record begins under load. */
  | { readonly kind: 'begins-loaded'; readonly stress: number }
  /** The record begins beyond 0.2 % plastic strain. */
  | { readonly kind: 'begins-late'; readonly strain: number }
  /** Unloaded and loaded again; the loop is left out of the curve. */
  | { readonly kind: 'loop'; readonly at: number; readonly from: number; readonly to: number }
  /** Unloaded at the end of the record. */
  | { readonly kind: 'let-go'; readonly at: number; readonly stress: number }
  /** One point off both its neighbours in one channel only; left out. */
  | {
      readonly kind: 'lone-point';
      readonly at: number;
      readonly of: 'strain' | 'stress';
      readonly value: number;
    }
  /** The extension jumped while the force did not follow. Nothing after it is trusted but the force. */
  | { readonly kind: 'slip'; readonly at: number; readonly strain: number; readonly plastic: number }
  /** The force fell by `drop` and came back with the extension hardly moved: a pause; the points are left out. */
  | { readonly kind: 'dip'; readonly at: number; readonly drop: number }
  /** The force fell by `drop` and came back after the extension had run on by `strain`: the grips slipped. */
  | {
      readonly kind: 'grip-slip';
      readonly at: number;
      readonly drop: number;
      readonly strain: number;
      readonly plastic: number;
    }
  /** A stretch of the record is missing, or its extension jumped: they look alike without time. */
  | { readonly kind: 'gap'; readonly at: number; readonly strain: number }
  /** The extension stands still while the force goes on: extensometer taken off. */
  | { readonly kind: 'gauge-off'; readonly at: number; readonly strain: number }
  /** Gauge length shortens while the force falls after its maximum: the neck is outside it. */
  | { readonly kind: 'outside-gauge'; readonly at: number }
  /** Broke without a neck: early, at a flaw, or in the grips. */
  | { readonly kind: 'no-neck'; readonly at: number; readonly strain: number }
  /** The force still rises where the record ends: Rm and Ag were not reached. */
  | { readonly kind: 'ends-rising'; readonly stress: number; readonly strain: number }
  /** The force rises and then stands at one figure: a load cell at its limit. Rm is not read. */
  | { readonly kind: 'flat-top'; readonly at: number; readonly stress: number }
  /** The record ends at its highest force: Rm and Ag are at least these. */
  | { readonly kind: 'ends-at-maximum' }
  /** The record ends after the maximum but before the break: A is at least this. `ratio`: last force over maximum. */
  | { readonly kind: 'ends-before-break'; readonly ratio: number }
  /** Extension is travel of the crosshead: no modulus, proof strength, Ag or A from it. */
  | { readonly kind: 'crosshead' }
  /** A proof strength read on the straight line between two points far apart: it may be low, but not above `to`. */
  | { readonly kind: 'sparse'; readonly of: 'Rp0.2' | 'Rp1.0'; readonly from: number; readonly to: number }
  /** Plastic points before maximum force. */
  | { readonly kind: 'few-points'; readonly points: number }
  /** The curve is trusted only up to this plastic strain. */
  | { readonly kind: 'short'; readonly plastic: number }
  /** Strain rate: none to be had, two of them, or outside the ranges of ISO 6892-1. */
  | { readonly kind: 'no-rate'; readonly why: 'no time' | 'time runs back' | 'few points' }
  | { readonly kind: 'rate-varies'; readonly factor: number }
  | { readonly kind: 'rate-unusual'; readonly rate: number }
  /** A figure that no austenitic sheet or bar shows. */
  | { readonly kind: 'unlike'; readonly of: 'Rp0.2' | 'Rm' | 'Ag'; readonly value: number };

export type CouponFindingKind = CouponFinding['kind'];

/** May this test speak for the steel at the strains of a stretch? */
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
  { measured, trueCurve }: { measured: Figures; trueCurve: { readonly plastic: readonly number[] } },
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
