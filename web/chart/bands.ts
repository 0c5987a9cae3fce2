/** The range of the growth as the curve draws it: inside units, what bursts left out. */
import type { Band, Place, Ranges } from '@hoopwright/report/curve';
import { fromBar, fromPercent } from '@hoopwright/core/units';
import type { RangeFile, SpanFile } from '@hoopwright/wire/forecast';

export function rangesOf({ band }: RangeFile): Ranges {
  const line = (read: (span: SpanFile) => number | null): Place[] =>
    band.flatMap(({ pressure_bar: p, growth_percent: growth }): Place[] => {
      const at = read(growth);
      return at === null ? [] : [[fromPercent(at), fromBar(p)]];
    });
  const growth: Band = {
    median: line((span) => span.median),
    fifty: { low: line((span) => span.half[0]), high: line((span) => span.half[1]) },
    ninety: { low: line((span) => span.nineOfTen[0]), high: line((span) => span.nineOfTen[1]) },
  };
  return { growth };
}
