/** Growth rate of the girth that matters in a hold, by a straight line through the rows of its window. */
import { NINETY, slopeSpread } from '@hoopwright/core/gauge';
import { USUAL_REST } from '@hoopwright/core/stretch';
import type { FoldedRow } from './inside.ts';
import type { DayState, HoldNow } from '../state.ts';

/** Rows and seconds that a line needs at least. Our choice, no source. */
const FEWEST = 3;
const SHORTEST = 120;

/** %/h with the 90 % range that the instrument's own blur gives; undefined: too few rows since the window began. */
export function rateOf(state: DayState, rows: readonly FoldedRow[]): HoldNow['rate'] {
  const { figures, channels, hold, step, ventShut_ms } = state;
  const girth = figures.growth?.girth;
  const channel = channels.find((one) => one.channel.name === girth)?.channel;
  if (hold === undefined || girth === undefined || channel === undefined || ventShut_ms === undefined)
    return undefined;
  const now = rows[rows.length - 1];
  const opened = now.seconds - (state.wall_ms - hold.windowFrom_ms) / 1000;
  const from = Math.max(opened - 1, now.seconds - USUAL_REST.window);
  const points = rows.filter(
    (row) => row.step === step?.number && row.seconds >= from && row.values[girth] !== undefined,
  );
  if (points.length < FEWEST) return undefined;
  const time = points[points.length - 1].seconds - points[0].seconds;
  if (time < SHORTEST) return undefined;
  const perHour = (3600 * 100) / points[0].values[girth];
  const value = perHour * slope(points.map((row) => [row.seconds, row.values[girth]]));
  const { resolution, noise = 0 } = channel;
  const half = NINETY * perHour * slopeSpread({ resolution, noise }, time / (points.length - 1), time);
  return { value, low: value - half, high: value + half };
}

function slope(points: readonly (readonly [number, number])[]): number {
  const mean = (i: 0 | 1): number => points.reduce((sum, point) => sum + point[i], 0) / points.length;
  const [mx, my] = [mean(0), mean(1)];
  const sxx = points.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
  return points.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0) / sxx;
}
