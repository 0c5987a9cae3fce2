/** Entry of the pool's threads: one of very many forecasts, of which only the summary goes back. */
import { forecast } from '@hoopwright/core/stretch';
import type { Tank } from '@hoopwright/core/tank';

export interface ManyMessage {
  readonly tank: Tank;
  /** Growth at which the path ends; absent: past the maximum. */
  readonly until?: number;
}

export interface ManyAnswer {
  readonly steps: number;
  /** Last pressure, MPa, and growth of the path. */
  readonly pressure: number;
  readonly growth: number;
  /** MPa; absent where the path ends before. */
  readonly maximum?: number;
}

/** The pool calls it by its name. */
export function answerMany({ tank, until }: ManyMessage): ManyAnswer {
  const { path, maximum, effort } = forecast(tank, undefined, until === undefined ? {} : { until });
  const last = path[path.length - 1];
  return {
    steps: effort.steps,
    pressure: last.pressure,
    growth: last.largest.growth,
    ...(maximum === undefined ? {} : { maximum: maximum.pressure }),
  };
}
