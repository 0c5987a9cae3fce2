/** When a hold is over: by the clock, or by the growth that the readings show, as a crew with a watch would say it. */
import { USUAL_REST } from '@hoopwright/core/stretch';
import type { Plan, Step } from '@hoopwright/wire/plan';
import { type Channel, growthAt, type Row } from '@hoopwright/wire/reading';

export interface HoldSoFar {
  readonly plan: Plan;
  readonly step: Step;
  readonly rows: readonly Row[];
  readonly channels: readonly Channel[];
  /** s since the vent was shut: when the hold began, and when its window of growth did (anew after a restart). */
  readonly begun: number;
  readonly windowFrom: number;
}

/** Why it is over at the last row; undefined while it goes on. */
export function holdIsOver(hold: HoldSoFar): string | undefined {
  const { plan, step, begun, windowFrom } = hold;
  const now = hold.rows.at(-1)?.seconds ?? begun;
  if (step.kind === 'hold') {
    const minutes = step.hold?.minutes.value ?? 0;
    return now - begun >= 60 * minutes - 1 ? `${minutes} min are over` : undefined;
  }
  const { atLeast_min, cap_min } = plan.rest;
  const { window, rate } = USUAL_REST;
  if (now - begun >= 60 * cap_min) return `${cap_min} min are over and it still grows`;
  if (now - begun < 60 * atLeast_min || now - windowFrom < window) return undefined;
  const grown = grownSince(hold, now - window);
  if (grown === undefined || grown / window > 100 * rate) return undefined;
  return `growth of girth ${grown.toFixed(3)} % in ${window / 60} min`;
}

/** Percent by which the girth that moved most has grown since the last row before a time. */
function grownSince({ plan, rows, channels }: HoldSoFar, from: number): number | undefined {
  const now = rows.at(-1);
  const then = rows.findLast((row) => row.seconds <= from + 1);
  if (now === undefined || then === undefined) return undefined;
  const changes = channels.flatMap(({ name, reads }) => {
    if (reads !== 'girth') return [];
    const [a, b] = [then, now].map((row) => growthAt(plan, rows, { name, row }));
    return a === undefined || b === undefined ? [] : [b - a];
  });
  return changes.length === 0 ? undefined : Math.max(...changes);
}
