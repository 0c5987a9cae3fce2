/** What other packages may use of the forecast as a file. */
export * from './forecastFile.ts';
export { type DecimalMark, pathTable } from './pathTable.ts';
export { type Asked, usualOrders } from './orders.ts';
export { type OutcomeFile, type RangeFile, rangeFile, type SpanFile, spanFile } from './rangeFile.ts';
