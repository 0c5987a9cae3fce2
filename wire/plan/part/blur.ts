/** What the instruments add to a range: a reading inside the range of the steel may still be read beside it. */
import { NINETY, readingSpread } from '@hoopwright/core/gauge';
import type { Foreseen } from '../foresight/foresee.ts';
import {
  arrivals,
  climbSlopes,
  type ElasticSlopes,
  elasticOf,
  type MarkKey,
  pressureOf,
} from '../foresight/range.ts';
import type { Ranged } from '../plan.ts';
import type { SetUp } from '../setup/setUp.ts';

/** Standard deviations of what is read at a mark. */
export interface Blur {
  /** mm, of a change against its zero. */
  girth(key: MarkKey, i: number): number;
  /** mm³. */
  drawn(key: MarkKey): number;
}

export function blurOf(foreseen: Foreseen, setUp: SetUp): Blur {
  const pressure = Math.min(...behind(setUp.gauges).map(gaugeSpread));
  const elastic = elasticOf(foreseen);
  const steep = new Map(arrivals(foreseen.ladder).map((p) => [p, climbSlopes(foreseen.forecast, p)]));
  const slopes = (key: MarkKey): ElasticSlopes => steep.get(pressureOf(key) ?? -1) ?? elastic;
  const { girths } = foreseen.forecast.datum.solver.shell.tank;
  return {
    girth: (key, i) => {
      const reading = setUp.readings.find((r) => r.girth === girths[i].name);
      const read = reading === undefined ? 0 : Math.SQRT2 * readingSpread(reading);
      return Math.hypot(read, slopes(key).girths[i] * pressure);
    },
    drawn: (key) => Math.hypot(setUp.supply.resolution / Math.sqrt(12), slopes(key).growth * pressure),
  };
}

const behind = <T extends { readonly from: string }>(list: readonly T[]): T[] =>
  list.filter((one) => one.from === 'behind the wall');

/** The error of its class is spread evenly (JCGM 100:2008, 4.3.7). */
const gaugeSpread = (gauge: SetUp['gauges'][number]): number =>
  Math.hypot(readingSpread(gauge), ((gauge.error ?? 0) * gauge.range) / Math.sqrt(3));

/** The range of the steel and the spread of the reading, each beside the other. Without a range there is none to widen. */
export function widened({ value, low, high }: Ranged, spread: number): Ranged {
  if (low === undefined || high === undefined) return { value };
  const half = NINETY * spread;
  return { value, low: value - Math.hypot(value - low, half), high: value + Math.hypot(high - value, half) };
}
