/**
 * Flow curves: true (von Mises) stress against true plastic strain, as laws of few parameters or as measured points.
 * A law is evaluated in the innermost loop of the shell, so it writes into a two-entry array instead of returning a record.
 */

/** The law as stated by the user, inside units (MPa, 1). */
export type FlowLaw =
  /** Swift: K (e0 + ep)^n. */
  | { readonly law: 'swift'; readonly K: number; readonly n: number; readonly e0: number }
  /** Voce: yield + rise (1 - exp(-steepness ep)). */
  | { readonly law: 'voce'; readonly yield: number; readonly rise: number; readonly steepness: number }
  /** Ludwik: yield + K ep^n. */
  | { readonly law: 'ludwik'; readonly yield: number; readonly K: number; readonly n: number }
  /** Ludwigson: K ep^n + exp(k1 + k2 ep), k2 negative. */
  | {
      readonly law: 'ludwigson';
      readonly K: number;
      readonly n: number;
      readonly k1: number;
      readonly k2: number;
    }
  /** Hollomon: K ep^n. Says nothing true about first yield. */
  | { readonly law: 'hollomon'; readonly K: number; readonly n: number }
  /** Two-slope curve of ASME VIII-2 Annex 3-D from Rp0.2 and Rm (engineering stresses). */
  | { readonly law: 'two-slope'; readonly Rp02: number; readonly Rm: number }
  /** Measured points, monotone interpolation between them. */
  | {
      readonly law: 'points';
      readonly plastic: readonly number[];
      readonly stress: readonly number[];
      /** Plastic strain up to which the points rest on evidence. Absent: the last of them. */
      readonly evidence?: number;
    };

/** A flow curve ready for the inner loop. */
export interface Flow {
  /** Writes the flow stress (MPa) to out[0] and its slope d stress / d ep (MPa) to out[1]. ep >= 0. */
  at(ep: number, out: Float64Array): void;
  /** True plastic strain up to which the curve rests on evidence; Infinity where the user stated a law. */
  readonly evidence: number;
}
