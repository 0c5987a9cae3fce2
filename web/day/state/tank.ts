/** The tank of the day, for its live profile: form from the forecast of its file, in a thread of its own. */
import type { Tank } from '@hoopwright/core/tank';
import { fromBar, fromPercent } from '@hoopwright/core/units';
import type { Stance } from '@hoopwright/report/drawing';
import type { DayPhase } from '@hoopwright/wire/day';
import { create } from 'zustand';
import { ask, stanceAt } from '../../state/server/threads.ts';
import { dayServer } from './api.ts';

export interface DayTank {
  readonly tank?: Tank;
  /** At the most growth that is foreseen: room is kept for it, so that the drawing does not jump. */
  readonly most?: Stance;
  readonly stance?: Stance;
  readonly why?: 'working' | 'none';
}

export const useTank = create<DayTank>(() => ({ why: 'working' }));

/** Growth is followed in steps of this, percent: what can be seen. */
const SEEN = 0.02;
let shown = NaN;

export async function openTank(record: string): Promise<void> {
  shown = NaN;
  useTank.setState({ why: 'working' });
  const text = await dayServer.tank(record).catch(() => undefined);
  if (text === undefined) return useTank.setState({ why: 'none' }, true);
  const reply = await ask({ file: text, fineness: 'rough', cursor: { kind: 'stop', stop: 'under' } });
  if (reply?.kind !== 'drawn') return useTank.setState({ why: 'none' }, true);
  const { tank, stance } = reply;
  return useTank.setState({ tank, ...(stance === undefined ? {} : { most: stance }) }, true);
}

/** Moves the tank to a measured growth (percent) and pressure (bar). */
export async function standAt(growth: number, bar: number, phase: DayPhase): Promise<void> {
  if (useTank.getState().tank === undefined || Math.abs(growth - shown) < SEEN) return;
  shown = growth;
  const down = phase === 'after' || phase === 'ended' || phase === 'stopping';
  const stance = await stanceAt('rough', {
    kind: 'place',
    phase: down ? 'release' : 'stretch',
    growth: fromPercent(growth),
    pressure: fromBar(bar),
  });
  if (stance !== undefined) useTank.setState({ stance });
}
