/** What other packages may use of the gauges. */
export * from './noise.ts';
