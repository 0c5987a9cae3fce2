/** Tensile tests, for other packages. */
export { evaluateCoupon, type CouponResult } from './coupon.ts';
export type { CouponFinding, CouponFindingKind } from './finding.ts';
export { madeCoupon, type CouponRecipe, type CouponTruth } from './made.ts';
export { NOMINAL_YOUNG, type CouponCurve, type CouponTest } from './record.ts';
export { YOUNG_RANGE } from './slope.ts';
export { continuationOf, trueStressAt, type Continuation, type TrueCurve } from './true-curve.ts';
export { PLAUSIBLE, type CouponVerdict } from './verdict.ts';
