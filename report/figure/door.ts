/** Figures as people read them. */
export * from './figure.ts';
export * from './manner.ts';
export { type Quantity, type Scale, scaleOf } from './quantity.ts';
