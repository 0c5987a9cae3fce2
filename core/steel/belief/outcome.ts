/** From equally likely steels through the forecast to ranges, what owes them, and the pressure that 99 of 100 survive. */
import { lowQuantile, type LowQuantile, type Range, rangeOf } from '../../stats/range.ts';
import { type Group, type Share, varianceShares } from '../../stats/shares.ts';
import { inputsOf, type SteelDraw } from './draw.ts';

/** What one steel makes of the tank, inside units. */
export interface Outcome {
  /** Growth of the largest girth under pressure at the end of the final hold; Infinity: it burst before. */
  readonly growth: number;
  /** Volume growth then, mm³; Infinity: it burst. */
  readonly volume: number;
  /** Highest pressure it bears, MPa. */
  readonly maximum: number;
  /** Pressure at first yield, MPa. */
  readonly firstYield: number;
}

export interface OutcomeRanges {
  readonly growth: Range;
  readonly volume: Range;
  readonly maximum: Range;
  readonly firstYield: Range;
  /** Share of the steels with which it bursts. */
  readonly bursts: number;
  /** Pressure that 99 of 100 such tanks survive, and the one that so many draws assure at 95 %. */
  readonly survived: LowQuantile;
  /** Which input owes how much of the range of growth. */
  readonly shares: readonly Share[];
  /** Share of that range that no input explains by itself. */
  readonly unexplained: number;
}

/** One outcome for each draw, in their order; 50 or more. */
export const outcomeRanges = (draws: readonly SteelDraw[], outcomes: readonly Outcome[]): OutcomeRanges => {
  if (draws.length !== outcomes.length || draws.length < 50)
    throw new Error(
      `ranges need an outcome for each of 50 draws or more, got ${outcomes.length} for ${draws.length}`,
    );
  const of = (read: (outcome: Outcome) => number): number[] => outcomes.map(read);
  const growth = of((outcome) => outcome.growth);
  const maximum = of((outcome) => outcome.maximum);
  return {
    growth: rangeOf(growth),
    volume: rangeOf(of((outcome) => outcome.volume)),
    maximum: rangeOf(maximum),
    firstYield: rangeOf(of((outcome) => outcome.firstYield)),
    bursts: growth.filter((value) => value === Infinity).length / growth.length,
    survived: lowQuantile(maximum, 0.01),
    ...varianceShares(growth, inputGroups(draws)),
  };
};

/** The inputs as the shop names them; the four stresses of the plate are one. */
export const inputGroups = (draws: readonly SteelDraw[]): Group[] => {
  const rows = draws.map(inputsOf);
  const columns = (...at: number[]): number[][] => at.map((k) => rows.map((row) => row[k]));
  return [
    { name: 'plate strength', columns: columns(0, 1, 2, 3) },
    { name: 'biaxial factor', columns: columns(4) },
    { name: 'rate effect', columns: columns(5) },
    { name: 'wall', columns: columns(6) },
    { name: 'rolling', columns: columns(7) },
    { name: 'seam', columns: columns(8) },
  ];
};
