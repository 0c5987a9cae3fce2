/** A coupon as the page shows it. */
import type { Scene } from '@hoopwright/report/sheet';
import type { CouponAnswer } from '@hoopwright/wire/coupon';

export interface CouponView {
  readonly answer: CouponAnswer;
  /** Absent where the file is no test. */
  readonly scene?: Scene;
  readonly verdict?: string;
}
