/** What other packages may use of the shell. */
export { massOf, profileOf, type Through, type WallPlace } from './read.ts';
export { type ShellSettings, STANDARD } from './shell.ts';
