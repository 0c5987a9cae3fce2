/** What other packages may use of the gauges. */
export { type Dice, diceOf } from '../math/dice.ts';
export * from './noise.ts';
export * from './instrument.ts';
