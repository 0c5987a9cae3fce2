/** Body of a `forecast` entry: what is foreseen of the end of the final hold, as it stood after a row or a batch. */
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

/** Share of its 90 % range by which a figure has moved when it says something else, and of chances. Our choice. */
const MOVED = { range: 0.03, chance: 0.01 } as const;

/** Whether it says something else than the one before: noise alone moves every figure a little, ten times a second. */
export function saysOther(before: ForecastBody, now: ForecastBody): boolean {
  const chance = (key: 'gives' | 'strange'): boolean => Math.abs(now[key] - before[key]) > MOVED.chance;
  const keys = ['growth_percent', 'pumped_L', 'maximum_bar', 'seam_percent'] as const;
  return chance('gives') || chance('strange') || keys.some((key) => hasMoved(before[key], now[key]));
}

function hasMoved(before: RangeBody | undefined, now: RangeBody | undefined): boolean {
  const [a, b] = [figures(before), figures(now)];
  const known = b.filter((value) => typeof value === 'number');
  const width = Math.max(...known) - Math.min(...known);
  return b.some((value, k) => {
    const then = a[k];
    if (typeof value !== 'number' || typeof then !== 'number') return value !== then;
    return Math.abs(value - then) > MOVED.range * (width > 0 ? width : Math.abs(value));
  });
}

const figures = (range: RangeBody | undefined): (number | null | undefined)[] => [
  range?.wide[0],
  range?.median,
  range?.wide[1],
];

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
