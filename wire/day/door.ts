/** The day of a test, for other packages. */
export * from './order.ts';
export * from './state.ts';
export * from './stream.ts';
