/** Growth of any girth now, from its last reading and its first in the trace. */
import type { DayState } from '@hoopwright/wire/day';
import { trace } from '../state/trace.ts';

/** Percent; undefined where it was not read, or is not believed. */
export function growthAt(
  { plan, channels, figures, about, ventShut_ms }: DayState,
  name: string,
): number | undefined {
  if (figures.growth?.girth === name) return figures.growth.value;
  const channel = channels.find((one) => one.channel.name === name);
  const track = trace.track(name);
  const expected = plan?.plan.steps
    .flatMap((step) => step.expected?.girths ?? [])
    .find((one) => one.name === name);
  if (
    channel?.last === undefined ||
    channel.aside !== undefined ||
    track === undefined ||
    expected === undefined
  )
    return undefined;
  const first = firstOf(track.low, trace.length);
  if (first < 0) return undefined;
  const start = expected.girth_mm.value / (1 + expected.growth_percent.value / 100);
  // A zero that was set under the seating pressure has already grown by what is foreseen there.
  const seated = ventShut_ms !== undefined && about.began_ms + 1000 * trace.seconds[first] >= ventShut_ms;
  const before = seated ? expected.growth_percent.value : 0;
  return (100 * (channel.last.value - track.low[first])) / start + before;
}

function firstOf(values: Float64Array, length: number): number {
  for (let i = 0; i < length; i++) if (!Number.isNaN(values[i])) return i;
  return -1;
}
