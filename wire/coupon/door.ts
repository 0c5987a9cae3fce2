/** Files of tensile tests. */
export { type CouponAnswer, couponAnswer, unreadAnswer } from './answer.ts';
export { type CouponRead, readCouponFile } from './coupon.ts';
export type { CouponHints } from './hints.ts';
export { type Note, noteText } from './note.ts';
export type { Specimen } from './preface.ts';
