/** Body of a `forecast` entry: what is foreseen of the end of the final hold, as it stood after a row. */
import { airSwallows, type Foresight, type QuickTank, waterCompression } from '@hoopwright/core/stretch';
import type { Range } from '@hoopwright/core/steel';
import { fromBar, toBar, toLitre } from '@hoopwright/core/units';
import * as z from 'zod';

/** Median, 50 % and 90 % range. null: beyond every number, it gives way before. */
export type RangeBody = {
  readonly median: number | null;
  readonly half: readonly [number | null, number | null];
  readonly wide: readonly [number | null, number | null];
};

export type ForecastBody = {
  /** Growth of the girth that grows most, under pressure at the end of the final hold. */
  readonly growth_percent: RangeBody;
  /** Drawn since the vent was shut, by then. */
  readonly pumped_L: RangeBody;
  readonly firstYield_bar: RangeBody;
  readonly maximum_bar: RangeBody;
  /** Highest pressure it bears over the stretch pressure. */
  readonly margin: RangeBody;
  readonly settles_min: RangeBody;
  /** Strain across the long seam at the end of the final hold; absent for a tank without one. */
  readonly seam_percent?: RangeBody;
  /** Share of the tanks that this may be that give way at the stretch pressure. */
  readonly gives: number;
  /** Chance that the tank strays more than a sound one does from every steel of the range. */
  readonly strange: number;
  /** Rows behind it. */
  readonly rows: number;
  /** s since the vent was shut. */
  readonly seconds: number;
};

export interface ForecastGivens {
  readonly foresight: Foresight;
  readonly quick: QuickTank;
  readonly target_bar: number;
  readonly rows: number;
  readonly seconds: number;
}

export function forecastBody({ foresight, quick, target_bar, rows, seconds }: ForecastGivens): ForecastBody {
  const { trappedAir, temperature } = quick.tank.water;
  const target = fromBar(target_bar);
  const pumped = (room: number): number =>
    toLitre(
      room +
        waterCompression(quick.filled + room - trappedAir, target, temperature) +
        airSwallows(trappedAir, target),
    );
  return {
    growth_percent: bodyOf(foresight.growth, (growth) => 100 * growth),
    pumped_L: bodyOf(foresight.volume, pumped),
    firstYield_bar: bodyOf(foresight.firstYield, toBar),
    maximum_bar: bodyOf(foresight.maximum, toBar),
    margin: bodyOf(foresight.margin, (margin) => margin),
    settles_min: bodyOf(foresight.settling, (time) => time / 60),
    ...(foresight.seam === undefined
      ? {}
      : { seam_percent: bodyOf(foresight.seam.end, (strain) => 100 * strain) }),
    gives: foresight.gives,
    strange: foresight.strange,
    rows,
    seconds,
  };
}

/** The same while every figure reads the same, to three digits and whole percents: what would say the same again. */
export const figuresIn = (body: ForecastBody): string =>
  JSON.stringify(body, (key, value: unknown) => {
    if (typeof value !== 'number') return value;
    if (key === 'gives' || key === 'strange') return Math.round(100 * value);
    return key === 'rows' || key === 'seconds' ? undefined : Number(value.toPrecision(3));
  });

/** null where a number of the range has no end. */
export function bodyOf({ median, half, wide }: Range, unit: (value: number) => number): RangeBody {
  const told = (value: number): number | null => (Number.isFinite(value) ? unit(value) : null);
  return {
    median: told(median),
    half: [told(half[0]), told(half[1])],
    wide: [told(wide[0]), told(wide[1])],
  };
}

const number = z.number().nullable();
const rangeShape = z.object({
  median: number,
  half: z.tuple([number, number]),
  wide: z.tuple([number, number]),
});
/** What a reader of a record takes from a `forecast` entry; whatever else stands there is left alone. */
export const forecastShape = z.object({
  growth_percent: rangeShape,
  seam_percent: rangeShape.optional(),
});
