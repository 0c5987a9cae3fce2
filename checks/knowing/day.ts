/** The day of an invented tank, on the shell with its rate effect: pumped, held at a quarter, pumped, held to the end. */
import { drawnTank } from '../../core/stretch/quick/drawn.ts';
import { SETTLED_RATE } from '../../core/stretch/hold.ts';
import {
  advance,
  justFilled,
  type Lived,
  type LivedTank,
  livedTank,
} from '../../core/stretch/lived/lived.ts';
import { type Truth, truthOf } from '../../core/stretch/lived/truth.ts';
import { HOLD_CAP } from '../../core/stretch/quick/run.ts';
import type { SteelDraw } from '../../core/steel/belief/draw.ts';
import { FLOW, STEEL, TANK } from './tank.ts';

/** 0.1 % off in pressure by its coarseness. */
const MESH = { elements: 60, layers: 5 } as const;

export interface LivedDay {
  /** Girths as filled, before any pressure, mm: what growth is read against. */
  readonly zero: readonly number[];
  readonly truths: readonly Truth[];
  /** What was done from each truth to the next. */
  readonly phases: readonly Phase[];
  /** Growth at the stretch pressure when the true rate first passes 0.1 %/h, or at the cap; Infinity: it burst. */
  readonly growth: number;
  readonly room: number;
}

export type Phase = 'first rise' | 'hold' | 'second rise' | 'final hold';

export interface DayOrders {
  /** True pressures, MPa. */
  readonly hold: number;
  readonly target: number;
}

/** s of the hold on the way. */
const HOLD = 600;
/** s between two truths while pumping. */
const LOOK = 2;

export function livedDay(draw: SteelDraw, { hold, target }: DayOrders): LivedDay {
  const lived = livedTank(drawnTank(TANK, STEEL, draw), { shell: MESH });
  const truths: Truth[] = [];
  const phases: Phase[] = [];
  let now = justFilled(lived);
  const zero = truthOf(lived, now).girths;
  const look = (phase: Phase, seconds: number, upTo: number): Truth => {
    now = advance(lived, now, { does: 'pump', flow: FLOW, upTo, seconds });
    const truth = truthOf(lived, now);
    truths.push(truth);
    phases.push(phase);
    return truth;
  };
  const rise = (phase: Phase, upTo: number): void => {
    while (now.burst === undefined && now.walk.now.pressure < upTo * (1 - 1e-6)) look(phase, LOOK, upTo);
  };
  rise('first rise', hold);
  for (let spent = 0, step = 2; spent < HOLD && now.burst === undefined; spent += step, step = next(step))
    look('hold', Math.min(step, HOLD - spent), hold);
  now = advance(lived, now, { does: 'rest', seconds: 0 });
  rise('second rise', target);
  const end = finalHold(
    lived,
    () => now,
    (seconds) => look('final hold', seconds, target),
  );
  return { zero, truths, phases, ...end };
}

const next = (step: number): number => Math.min(60, 1.2 * step);

function finalHold(
  lived: LivedTank,
  now: () => Lived,
  look: (seconds: number) => Truth,
): Pick<LivedDay, 'growth' | 'room'> {
  if (now().burst !== undefined) return { growth: Infinity, room: Infinity };
  let before = truthOf(lived, now());
  for (let spent = 0, step = 2; spent < HOLD_CAP; spent += step, step = next(step)) {
    const truth = look(step);
    if (now().burst !== undefined) return { growth: Infinity, room: Infinity };
    // Rate in the middle of the step, which is short against the hold by then.
    if ((truth.growth - before.growth) / step < SETTLED_RATE) return truth;
    before = truth;
  }
  return before;
}
