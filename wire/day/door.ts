/** The day of a test, for other packages. */
export * from './body.ts';
export { type Deed, deedOf, type DeedScene, type Written } from './deed.ts';
export { fold, foldAll, isHeadShown, LAPTOP, startFold } from './fold.ts';
export { leftBy, planAfter } from './followed.ts';
export type { Fold, FoldedRow, Inside } from './fold/inside.ts';
export { type Batch, batchNow } from './fold/together.ts';
export { MEASURE_UNIT, MEASURED } from './fold/notes.ts';
export { readBegin, readDayLink, readFaultNow, readOrder } from './message.ts';
export * from './order.ts';
export { forbidden, permitted, type Permission, pressureToGoBy } from './permitted.ts';
export * from './state.ts';
export * from './stream.ts';
