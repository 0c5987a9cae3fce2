/** Tensile tests in words, as a table and as a drawing. */
export { couponScene } from './scene.ts';
export { findingText, type LineOf, seamText, verdictText } from './words.ts';
export { couponTable, type CouponRow } from './table.ts';
