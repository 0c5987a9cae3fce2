/** What other packages may use of the shell. */
export { profileOf, type Through, type WallPlace } from './profile.ts';
export { massOf } from './read.ts';
export { type ShellSettings, STANDARD } from './shell.ts';
