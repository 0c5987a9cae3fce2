/** What the person says of a coupon file beyond what stands in it. */
import type { Delimiter } from './sheet/row.ts';
import type { DecimalSign } from './sheet/decimal.ts';

export interface CouponHints {
  /** Columns by heading (its unit may be left out) or by number from 1. */
  readonly strain?: string;
  readonly stress?: string;
  readonly force?: string;
  readonly extension?: string;
  readonly time?: string;
  /** Units by name, e.g. `ksi`, `%`, `kN`, `inch`, `min`. They rule over units in the file. */
  readonly strainUnit?: string;
  readonly stressUnit?: string;
  readonly forceUnit?: string;
  readonly extensionUnit?: string;
  readonly timeUnit?: string;
  /** mm². */
  readonly area?: number;
  /** mm. */
  readonly gauge?: number;
  readonly decimal?: DecimalSign;
  readonly delimiter?: Delimiter;
}

/** How the command line calls each hint, for suggestions. */
export const OPTION = {
  strain: '--strain',
  stress: '--stress',
  force: '--force',
  extension: '--extension',
  crosshead: '--extension',
  time: '--time',
  area: '--area_mm2',
  gauge: '--gauge_mm',
  decimal: '--decimal',
} as const;
