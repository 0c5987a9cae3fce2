/** Ranges as they leave the program: median, half of the tanks, nine of ten; null where a tank of the range bursts. */
import type { CurvePoint, NextMeasure, OutcomeRanges } from '@hoopwright/core/steel';
import type { StretchRange } from '@hoopwright/core/stretch';
import { toBar, toLitre, toPercent } from '@hoopwright/core/units';

/** Equally likely values; an entry is null where it is without bound (the tank bursts). */
export interface SpanFile {
  readonly median: number | null;
  readonly half: readonly [number | null, number | null];
  readonly nineOfTen: readonly [number | null, number | null];
}

export interface OutcomeFile {
  readonly growth_percent: SpanFile;
  readonly growth_L: SpanFile;
  readonly maximum_bar: SpanFile;
  readonly firstYield_bar: SpanFile;
  readonly bursts_percent: number;
}

export interface RangeFile {
  /** After the holds that the duty states at the release pressure; on arrival where it states none. Under pressure. */
  readonly underPressure: OutcomeFile;
  /** After a final hold until growth is under 0.1 %/h, at most four hours. */
  readonly settled: OutcomeFile & { readonly hold_min: SpanFile };
  /** Pressure that 99 of 100 such tanks survive; `assured_bar` says it with 95 % confidence, as far as so many steels carry it. */
  readonly survive99: { readonly pressure_bar: number; readonly assured_bar: number | null };
  /** What owes how much of the range of growth. */
  readonly shares: readonly { readonly name: string; readonly percent: number }[];
  readonly unexplained_percent: number;
  /** What would narrow the range most: expected width over the width now. */
  readonly next: readonly { readonly measure: string; readonly width: number }[];
  readonly band: readonly {
    readonly pressure_bar: number;
    readonly growth_percent: SpanFile;
    readonly growth_L: SpanFile;
  }[];
  readonly steels: number;
  /** Quick solutions against shell solutions that were held back, percent of pressure from 1 % growth up. */
  readonly error: { readonly held: number; readonly rms_percent: number; readonly most_percent: number };
}

export const rangeFile = (range: StretchRange): RangeFile => {
  const { survived, shares, unexplained } = range.settled;
  return {
    underPressure: outcomeFile(range.stated),
    settled: { ...outcomeFile(range.settled), hold_min: spanFile(range.settling, (s) => s / 60) },
    survive99: {
      pressure_bar: toBar(survived.value),
      assured_bar: survived.assured === undefined ? null : toBar(survived.assured),
    },
    shares: shares.map(({ name, share }) => ({ name, percent: toPercent(share) })),
    unexplained_percent: toPercent(unexplained),
    next: nextFile(range.next),
    band: range.band.map((point) => ({
      pressure_bar: toBar(point.pressure),
      growth_percent: spanFile(point.growth, toPercent),
      growth_L: spanFile(point.volume, toLitre),
    })),
    steels: range.draws,
    error: {
      held: range.error.held,
      rms_percent: toPercent(range.error.pressure.rms),
      most_percent: toPercent(range.error.pressure.most),
    },
  };
};

const outcomeFile = (of: OutcomeRanges): OutcomeFile => ({
  growth_percent: spanFile(of.growth, toPercent),
  growth_L: spanFile(of.volume, toLitre),
  maximum_bar: spanFile(of.maximum, toBar),
  firstYield_bar: spanFile(of.firstYield, toBar),
  bursts_percent: toPercent(of.bursts),
});

type Span = CurvePoint['stress'];

export const spanFile = ({ median, half, wide }: Span, unit: (x: number) => number = (x) => x): SpanFile => {
  const shown = (x: number): number | null => (Number.isFinite(x) ? unit(x) : null);
  return {
    median: shown(median),
    half: [shown(half[0]), shown(half[1])],
    nineOfTen: [shown(wide[0]), shown(wide[1])],
  };
};

const nextFile = (next: readonly NextMeasure[]): RangeFile['next'] =>
  next.map(({ measure, width }) => ({ measure, width }));
