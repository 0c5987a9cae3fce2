/** Does the range hold the truth as often as it says, and how much narrower is it than before? */
import { quantile } from '../../core/stats/sample.ts';
import type { Range } from '../../core/stats/range.ts';
import type { KnowTrial } from './trial.ts';

export interface KnowCoverage {
  readonly share: number;
  /** Tanks that were looked at then: those that burst before have no final growth to foresee. */
  readonly tanks: number;
  /** Share of them whose final growth lies in the 90 % and in the 50 % range. */
  readonly wide: number;
  readonly half: number;
  /** Median width of the 90 % range over that before the day. */
  readonly width: number;
}

export const knowCoverage = (trials: readonly KnowTrial[], share: number): KnowCoverage => {
  const looked = trials.flatMap(({ growth, before, looks }) => {
    const look = looks.find((one) => one.share === share);
    return look === undefined ? [] : [{ growth, before, after: look.foresight.growth }];
  });
  const part = (test: (one: (typeof looked)[number]) => boolean): number =>
    looked.filter(test).length / looked.length;
  const within = (growth: number, [low, high]: Range['wide']): boolean => growth >= low && growth <= high;
  const width = ({ wide: [low, high] }: Range): number => high - low;
  return {
    share,
    tanks: looked.length,
    wide: part(({ growth, after }) => within(growth, after.wide)),
    half: part(({ growth, after }) => within(growth, after.half)),
    width: quantile(
      looked.map(({ before, after }) => width(after) / width(before)),
      0.5,
    ),
  };
};
