/** What the evaluation of a coupon file gives out: units in the names, missing is null. */
import type { CouponResult, PreloadResult, SeamResult } from '@hoopwright/core/steel';
import { toPercent } from '@hoopwright/core/units';
import type { Issue } from '../issue/issue.ts';

export interface CouponAnswer {
  readonly file: string;
  readonly E_MPa: number | null;
  readonly Rp02_MPa: number | null;
  readonly Rp10_MPa: number | null;
  readonly Rm_MPa: number | null;
  readonly Ag_percent: number | null;
  readonly A_percent: number | null;
  /** Measured between 0.2 and 10 % plastic strain. */
  readonly rate_per_s: number | null;
  readonly warnings: readonly string[];
  readonly usable: boolean;
  /** Why it is not usable; empty where it is. */
  readonly reasons: readonly string[];
  readonly invented?: true;
  /** The file could not be read: every figure is null. */
  readonly issues?: readonly Issue[];
  readonly seam?: SeamResult;
  readonly preload?: PreloadResult;
  readonly trueCurve?: {
    readonly plastic: readonly number[];
    readonly stress_MPa: readonly number[];
    /** `uniform`: up to even strain; `record`: it ends before. */
    readonly ends: 'uniform' | 'record';
  };
}

export interface Evaluated {
  readonly file: string;
  readonly result: CouponResult;
  readonly warnings: readonly string[];
  readonly reasons: readonly string[];
  readonly invented: boolean;
  readonly seam?: SeamResult;
  readonly preload?: PreloadResult;
  readonly curve: boolean;
}

export const couponAnswer = (evaluated: Evaluated): CouponAnswer => {
  const { file, result, warnings, reasons, invented, seam, preload, curve } = evaluated;
  const { plastic, stress, ends } = result.trueCurve;
  return {
    file,
    E_MPa: rounded(result.young),
    Rp02_MPa: rounded(result.proof02),
    Rp10_MPa: rounded(result.proof10),
    Rm_MPa: rounded(result.strength),
    Ag_percent: percent(result.uniform),
    A_percent: percent(result.elongation),
    rate_per_s: rounded(result.rate),
    warnings,
    usable: result.verdict.usable,
    reasons,
    ...(invented && { invented: true as const }),
    ...(seam && { seam }),
    ...(preload && { preload }),
    ...(curve && { trueCurve: { plastic: plastic.map(six), stress_MPa: stress.map(six), ends } }),
  };
};

/** The same for a file with issues. */
export const unreadAnswer = (
  file: string,
  issues: readonly Issue[],
  texts: readonly string[],
): CouponAnswer => ({
  file,
  E_MPa: null,
  Rp02_MPa: null,
  Rp10_MPa: null,
  Rm_MPa: null,
  Ag_percent: null,
  A_percent: null,
  rate_per_s: null,
  warnings: [],
  usable: false,
  reasons: texts,
  issues,
});

/** Six figures: beyond any extensometer, and short to read. */
const six = (value: number): number => Number(value.toPrecision(6));

const rounded = (value: number | undefined): number | null => (value === undefined ? null : six(value));

const percent = (value: number | undefined): number | null =>
  value === undefined ? null : six(toPercent(value));
