/** What the long-running checks use of the days. */
export { type PaceDay, openPaceDay, paceLine } from './pace.ts';
