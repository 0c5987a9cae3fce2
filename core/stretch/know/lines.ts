/**
 * What was seen as straight lines in the unknowns: every girth at every moment, the logarithm of its pressure about the
 * growth that goes best with both.
 */
import type { SteelDraw } from '../../steel/belief/draw.ts';
import type { QuickPath } from '../quick/path.ts';
import { quickPath, type QuickTank } from '../quick/quick.ts';
import { type Likeness, likenessOf, nearestGrowth, rising, type Span } from './likeness.ts';
import type { Seen } from './seen.ts';
import { GAUGE, GIRTHS, KNOTS, looseAt, STEEL, steelAt, type Unknowns, writeStrays } from './unknowns.ts';

/** Step of a number of the steel for its slope, in standard deviations before the readings. */
const STEP = 0.05;

export interface Line {
  /** Seen less foreseen at the numbers it was made straight about. */
  readonly miss: number;
  readonly variance: number;
  /** Share of the loose stray in the variance, for strays of the usual size. */
  readonly loose: number;
  readonly row: Float64Array;
}

/** A tank on the quick path, and its steel. */
interface Trial {
  readonly draw: SteelDraw;
  readonly path: QuickPath;
}

/** The likeliest tank, and one for each number of the steel with that number moved by a step. */
interface Trials {
  readonly here: Trial;
  readonly nudged: readonly Trial[];
}

/** Every girth at every moment as a straight line about `centre`. */
export function linesAbout(
  quick: QuickTank,
  unknowns: Unknowns,
  seen: readonly Seen[],
  centre: Float64Array,
): Line[] {
  const tank = (z: Float64Array): Trial => {
    const draw = steelAt(unknowns, z);
    return { draw, path: rising(quickPath(quick, draw)) };
  };
  const nudged = Array.from({ length: STEEL }, (_, k) => {
    const z = Float64Array.from(centre);
    z[k] += STEP;
    return tank(z);
  });
  const trials = { here: tank(centre), nudged };
  return seen.flatMap((now, m) =>
    now.girths.flatMap(
      (_, i) => lineOf(unknowns, trials, i, { span: { before: seen[m - 1], now }, centre }) ?? [],
    ),
  );
}

interface Looked {
  readonly span: Span;
  readonly centre: Float64Array;
}

function lineOf(
  unknowns: Unknowns,
  { here, nudged }: Trials,
  i: number,
  { span, centre }: Looked,
): Line | undefined {
  const { now } = span;
  const read = likenessOf(here.path, here.draw, i, span);
  if (read === undefined || !(now.pressure > 0)) return undefined;
  const about = nearest(unknowns, here.path, i, { now, centre, like: read });
  const like = about === undefined ? read : likenessOf(here.path, here.draw, i, span, about);
  if (like === undefined) return undefined;
  const row = besides(unknowns, i, now, like);
  for (let k = 0; k < STEEL; k++) {
    const moved = likenessOf(nudged[k].path, nudged[k].draw, i, span, about);
    row[k] = moved === undefined ? 0 : (moved.pressure - like.pressure) / STEP;
  }
  let foreseen = like.pressure;
  for (let k = STEEL; k < row.length; k++) foreseen += row[k] * centre[k];
  const blur = Math.hypot(now.blur / now.pressure, like.girthBlur, like.rateBlur);
  return {
    miss: Math.log(now.pressure) - foreseen,
    variance: blur * blur,
    loose: looseAt(unknowns.strays, like.growth) ** 2,
    row,
  };
}

/** Shares of gauge, of girth `i` and of the strays in the logarithm of the pressure; those of the steel are left at 0. */
function besides(unknowns: Unknowns, i: number, now: Seen, like: Likeness): Float64Array {
  const { errors, size } = unknowns;
  const row = new Float64Array(size);
  row[GAUGE] = errors.gauge.gain;
  row[GAUGE + 1] = errors.gauge.zero / now.pressure;
  row[GIRTHS + 2 * i] = -like.slope * (now.girths[i]?.growth ?? 0) * errors.girths[i].gain;
  row[GIRTHS + 2 * i + 1] = -like.slope * errors.girths[i].zero;
  writeStrays(unknowns, like.growth, row.subarray(size - KNOTS.length));
  return row;
}

/** Blur of a growth, over that of the pressure, from which the path is bent within it. */
const BENT = 0.3;

/**
 * Growth about which the line of a girth is made straight, with gauge, girth and strays as they are at `centre`; undefined:
 * the one read, where that is sharp enough.
 */
function nearest(
  unknowns: Unknowns,
  path: QuickPath,
  i: number,
  { now, centre, like }: { readonly now: Seen; readonly centre: Float64Array; readonly like: Likeness },
): number | undefined {
  const girth = now.girths[i];
  if (girth === undefined) return undefined;
  const { errors, strays } = unknowns;
  const pressureBlur = Math.hypot(now.blur / now.pressure, like.rateBlur, looseAt(strays, like.growth));
  if (like.girthBlur < BENT * pressureBlur) return undefined;
  const own = GIRTHS + 2 * i;
  const row = besides(unknowns, i, now, like);
  let beside = like.rate;
  for (let k = STEEL; k < row.length; k++) if (k !== own && k !== own + 1) beside += row[k] * centre[k];
  return nearestGrowth(path, i, {
    growth:
      girth.growth * (1 - errors.girths[i].gain * centre[own]) - errors.girths[i].zero * centre[own + 1],
    growthBlur: girth.blur,
    pressure: Math.log(now.pressure) - beside,
    pressureBlur,
  });
}
