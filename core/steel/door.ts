/** The steel, for other packages. */
export { AVERAGE_SHEAR_CLOSED_CYLINDER, biaxialFactorOf, hosfordClosedCylinder } from './biaxial.ts';
export { firstYieldRefusal, flowOf } from './flow.ts';
export { type Metal, metalOf } from './plane.ts';
export type { Flow, FlowLaw } from './hardening.ts';
export type { RateEffect, Steel } from './steel.ts';
export { evaluateCoupon, type CouponResult } from './coupon/coupon.ts';
export { type CouponFinding, type CouponVerdict, PLAUSIBLE } from './coupon/finding.ts';
export { madeCoupon, type CouponRecipe, type CouponTruth } from './coupon/made.ts';
export { NOMINAL_YOUNG, type CouponCurve, type CouponTest } from './coupon/record.ts';
export {
  type BrokeIn,
  preloadResult,
  type PreloadResult,
  seamResult,
  type SeamPlace,
  type SeamResult,
} from './coupon/seam.ts';
export { YOUNG_RANGE } from './coupon/slope.ts';
export { type Continuation, continuationOf, type TrueCurve, trueStressAt } from './coupon/true-curve.ts';

export { believe, type Belief, type BeliefOptions } from './belief/belief.ts';
export type { Account } from './belief/account.ts';
export { type CurvePoint, curveRange, middleDraw } from './belief/curve.ts';
export { drawnStress, inputsOf, type SteelDraw } from './belief/draw.ts';
export { type Measure, type NextMeasure, nextMeasures } from './belief/next.ts';
export { type Outcome, type OutcomeRanges, outcomeRanges } from './belief/outcome.ts';
export type {
  Certificate,
  Evidence,
  PlateCoupon,
  PlateInHand,
  RollingStrain,
  SeamCoupon,
  TrialTank,
  WallReadings,
} from './evidence/evidence.ts';
export {
  type Composition,
  GRADES,
  gradeNamed,
  md30,
  minimaOf,
  physicalOf,
  strengthenedOf,
  typicalOf,
} from './grade/grade.ts';
export type {
  Grade,
  Minimum,
  Physical,
  ProductForm,
  Sourced,
  Strengthened,
  Typical,
} from './grade/row.ts';
export { LAW_REACHES } from './prior/shape.ts';
export { priorMetal } from './rolling/priorMetal.ts';
export {
  type Rolled,
  rolled,
  type Rolling,
  rollingFinding,
  type RollingFinding,
} from './rolling/rolling.ts';
export { type Range, rangeOf } from '../stats/range.ts';
