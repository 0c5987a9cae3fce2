/** What the long-running checks use of the days. */
export { type PaceDay, openPaceDay } from './pace.ts';
