import { TEST_TANK } from '@hoopwright/wire/sample';

/** Text of the invented tank file that days in a browser are held on. */
export const TANK = JSON.stringify(TEST_TANK);
