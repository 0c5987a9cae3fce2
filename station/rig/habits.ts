/** How the crew of a rehearsal goes about its day: when it looks, when it takes a row, what it waits for. */

/** s between two looks at the gauge while pumping and holding. */
export const LOOK = 2;
export const HOLD_LOOK = 10;
/** s between two rows while pumping. */
export const ROW_EVERY = 120;
/** s into a hold at which rows are taken, and how far apart they are after the last of these. */
export const HOLD_ROWS = [0, 60, 120, 300, 600];
export const HOLD_ROW_EVERY = 300;
/** Rate at which the tank is filled and drained, L/min, and time that the first look round takes, s. Our choice. */
export const FILL_RATE = 12;
/** A rise that takes so many times what was foreseen, and ten minutes, is given up. Our choice. */
export const PATIENCE = 3;
/** s after which a release is over whatever a gauge shows: the vent is opened from behind the wall. */
export const RELEASE_TAKES = 900;
/** s from a restart of the server until somebody has read the gauge. */
export const RESTART_TAKES = 90;
