/** The days of a data folder, on this laptop's own clocks. */
import { performance } from 'node:perf_hooks';
import type { Solved } from '@hoopwright/wire/advice';
import { parseTankFile } from '@hoopwright/wire/tank';
import { askAdviser } from '../../advise/adviseThread.ts';
import { keptStretch } from '../../advise/keptStretch.ts';
import { LiveAdviser } from '../../advise/liveAdviser.ts';
import { Days, type DaysParts } from '../../day/days.ts';
import { laptopAt } from '../../day/surroundings.ts';
import { tankOf } from '../../day/tankOf.ts';
import { couponsAttached } from '../../range/coupons.ts';
import { openRunner } from '../../range/runner.ts';
import type { Store } from '../../store/store.ts';
import { type Desk, reasonOf } from '../desk/desk.ts';
import { progressLine } from '../desk/progress.ts';

export function daysHere(store: Store, dir: string, desk: Desk): Days {
  const later: DaysParts['later'] = (ms, work) => {
    const timer = setTimeout(work, ms);
    return () => clearTimeout(timer);
  };
  const log = (error: unknown): void => desk.err(`${reasonOf(error)}\n`);
  return new Days({
    store,
    laptop: laptopAt(dir),
    later,
    real: () => performance.now(),
    wall: () => Date.now(),
    log,
    adviser: (frozen, project, clock) =>
      new LiveAdviser({
        ask: askAdviser,
        stretch: (told) => stretchOf(store, { dir, frozen, project, desk, told }),
        later,
        now: () => clock.now().wall_ms,
        log,
      }),
  });
}

interface StretchOf {
  readonly dir: string;
  readonly frozen: Parameters<NonNullable<DaysParts['adviser']>>[0];
  readonly project: string;
  /** Told how far the set-up is. */
  readonly desk: Desk;
  /** And so is whoever writes the record. */
  readonly told: (solved: Solved) => void;
}

/** Undefined where there is nothing to make it from; rejects where it cannot be made. The day goes on without. */
async function stretchOf(store: Store, { dir, frozen, project, desk, told }: StretchOf) {
  const file = tankOf(store, frozen, project);
  const given = file === undefined ? undefined : parseTankFile(file);
  if (given === undefined || !given.ok) return undefined;
  const runner = openRunner();
  const progress = progressLine(desk, 'making ready to foresee');
  try {
    const files = couponsAttached(store.attachments, project);
    return await keptStretch({
      dir,
      digest: frozen.frozen.digest,
      given,
      files,
      run: runner.run,
      progress: (solved) => {
        progress.show(solved.done / solved.all);
        told(solved);
      },
    });
  } finally {
    progress.clear();
    await runner.close();
  }
}
