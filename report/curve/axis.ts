/** Axes from nothing to a round number, in the units of the reader. */
import { scaleLinear } from 'd3-scale';
import { fixed } from '../figure/figure.ts';
import type { Manner } from '../figure/manner.ts';
import { type Quantity, scaleOf } from '../figure/quantity.ts';

export interface Tick {
  /** Inside units. */
  readonly at: number;
  readonly text: string;
}

export interface Axis {
  /** End of the axis, inside units; it begins at nothing. */
  readonly most: number;
  readonly ticks: readonly Tick[];
  readonly unit: string;
}

/** Axis that holds `value` (inside units), with about `count` round steps. */
export function axisFor(manner: Manner, quantity: Quantity, value: number, count = 6): Axis {
  const { one, unit } = scaleOf(manner.units, quantity);
  const scale = scaleLinear()
    .domain([0, value > 0 ? value / one : 1])
    .nice(count);
  const ticks = scale.ticks(count);
  const step = ticks[1] - ticks[0];
  const digits = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return {
    most: scale.domain()[1] * one,
    unit,
    ticks: ticks.map((tick) => ({ at: tick * one, text: fixed(manner, tick, digits) })),
  };
}
