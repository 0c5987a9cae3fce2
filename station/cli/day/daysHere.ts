/** The days of a data folder, on this laptop's own clocks. */
import { performance } from 'node:perf_hooks';
import { Days } from '../../day/days.ts';
import { laptopAt } from '../../day/surroundings.ts';
import type { Store } from '../../store/store.ts';
import { type Desk, reasonOf } from '../desk/desk.ts';

export const daysHere = (store: Store, dir: string, desk: Desk): Days =>
  new Days({
    store,
    laptop: laptopAt(dir),
    later: (ms, work) => {
      const timer = setTimeout(work, ms);
      return () => clearTimeout(timer);
    },
    real: () => performance.now(),
    wall: () => Date.now(),
    log: (error) => desk.err(`${reasonOf(error)}\n`),
  });
