/** A tank that was stretched on an earlier day: let down, filled anew, its wall hardened by all that it has seen. */
import { insideVolume } from '../../shell/read.ts';
import { turn, walkFrom } from '../walk.ts';
import { advance, justFilled, type Lived, type LivedTank } from './lived.ts';

/** Longest that the earlier day is let to last, s; a pump that cannot reach the pressure has burst the tank or leaks. */
const LONGEST = 24 * 3600;
const LOOK = 60;
/** Way out of the earlier day, mm³/s at 1 MPa, and the pressure (MPa) at which it is empty enough to be opened. */
const OPENING = 15e3;
const DOWN = 1e-3;

/** @param seen highest pressure of the earlier day, MPa; @param flow of its pump, mm³/s */
export function filledAgain(lived: LivedTank, seen: number, flow: number): Lived {
  const first = justFilled(lived);
  let now = first;
  const goes = (): boolean => now.burst === undefined && now.seconds < LONGEST;
  while (goes() && now.walk.now.pressure < seen * (1 - 1e-6))
    now = advance(lived, now, { does: 'pump', seconds: LOOK, flow, upTo: seen });
  while (goes() && now.walk.now.pressure > DOWN)
    now = advance(lived, now, { does: 'bleed', seconds: LOOK, opening: OPENING });
  const walk = walkFrom(lived.datum.solver, now.walk.now);
  turn(walk);
  const inside = insideVolume(lived.datum.solver.shell, walk.now);
  const burst = now.burst === undefined ? {} : { burst: now.burst };
  return { ...first, ...burst, walk, water: inside - first.air };
}
