/** The trace as growth of one girth and pressure: what was measured, on the axes of the plan's curve. */
import type { DayState } from '@hoopwright/wire/day';
import type { LongTrace } from '../state/trace.ts';

export interface CurvePoints {
  /** Percent, and bar. */
  readonly growth: readonly number[];
  readonly bar: readonly number[];
}

export const NO_POINTS: CurvePoints = { growth: [], bar: [] };

/** How a girth (mm) becomes growth (percent); undefined before it is known. */
export function growthOf({ plan, figures, channels }: DayState): ((mm: number) => number) | undefined {
  const { growth } = figures;
  if (growth === undefined) return undefined;
  const last = channels.find(({ channel }) => channel.name === growth.girth)?.last;
  const expected = plan?.plan.steps
    .flatMap((step) => step.expected?.girths ?? [])
    .find(({ name }) => name === growth.girth);
  if (last === undefined || expected === undefined) return undefined;
  const start = expected.girth_mm.value / (1 + expected.growth_percent.value / 100);
  return (mm) => growth.value + (100 * (mm - last.value)) / start;
}

/** One point for each column in which either was read, the other as it was read last. */
export function curvePoints(state: DayState, trace: LongTrace): CurvePoints {
  const { figures } = state;
  const percent = growthOf(state);
  if (percent === undefined || figures.growth === undefined || figures.pressure === undefined)
    return NO_POINTS;
  const girth = trace.track(figures.growth.girth);
  const pressure = trace.track(figures.pressure.channel);
  if (girth === undefined || pressure === undefined) return NO_POINTS;
  const growth: number[] = [];
  const bar: number[] = [];
  let [g, p] = [NaN, NaN];
  for (let i = 0; i < trace.length; i++) {
    const [dg, dp] = [0.5 * (girth.low[i] + girth.high[i]), 0.5 * (pressure.low[i] + pressure.high[i])];
    if (Number.isNaN(dg) && Number.isNaN(dp)) continue;
    if (!Number.isNaN(dg)) g = dg;
    if (!Number.isNaN(dp)) p = dp;
    if (Number.isNaN(g) || Number.isNaN(p)) continue;
    growth.push(percent(g));
    bar.push(p);
  }
  return { growth, bar };
}
