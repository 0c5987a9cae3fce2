/** Invented things for tests, for other packages. */
export { TEST_TANK } from './tank.ts';
