/** Readings as they come, gathered into moments: means over so short a piece of the day that nothing bends within it. */
import type { GirthSeen, Seen } from './seen.ts';

/** What the instruments said at one time. Inside units. */
export interface Shown {
  readonly seconds: number;
  readonly pressure: number;
  /** Growth against its zero, as a fraction; undefined where not read. */
  readonly girths: readonly (number | undefined)[];
  /** Changes whenever the pump is turned on or off, or the valve. */
  readonly phase: string;
}

export interface GatherRule {
  /** Standard deviation of the noise of one reading: gauge, MPa; each girth, as growth. */
  readonly noise: { readonly pressure: number; readonly girths: readonly number[] };
  /** Rise of pressure (MPa) and of growth that one moment may span. */
  readonly span: { readonly pressure: number; readonly growth: number };
}

/** Time in a hold that one moment may span, over the time since the hold began, and at least, s. */
const HOLD_SHARE = 0.25;
const LEAST_TIME = 6;

/** Everything gathered so far. Never written into. */
export interface Gathered {
  readonly seen: readonly Seen[];
  readonly open: readonly Shown[];
  readonly phase: string;
  /** s at which the phase began. */
  readonly began: number;
  readonly turned: boolean;
}

export const NOTHING_GATHERED: Gathered = { seen: [], open: [], phase: '', began: 0, turned: false };

export function gather(from: Gathered, shown: Shown, rule: GatherRule): Gathered {
  if (shown.phase !== from.phase) {
    const closed = from.open.length === 0 ? from : close(from, rule);
    return { ...closed, open: [shown], phase: shown.phase, began: shown.seconds, turned: true };
  }
  const open = [...from.open, shown];
  const [first] = open;
  const time = shown.seconds - first.seconds;
  const risen = Math.abs(shown.pressure - first.pressure) > rule.span.pressure + 3 * rule.noise.pressure;
  const grown = shown.girths.some((growth, i) => {
    const then = first.girths[i];
    return (
      growth !== undefined &&
      then !== undefined &&
      growth - then > rule.span.growth + 3 * rule.noise.girths[i]
    );
  });
  const long = time >= Math.max(LEAST_TIME, HOLD_SHARE * (first.seconds - from.began));
  return risen || grown || long ? close({ ...from, open }, rule) : { ...from, open };
}

/**
 * What is seen with one more reading, the piece that is not yet full included as it is. One that has only just begun is left
 * out: so short a time after the moment before, noise would pass for a rate of growth.
 */
export function seenWith(from: Gathered, shown: Shown, rule: GatherRule): readonly Seen[] {
  const next = gather(from, shown, rule);
  return next.open.length < 2 ? next.seen : close(next, rule).seen;
}

/** A row of the log sheet: one reading of everything is a moment by itself. */
export function gatherRow(from: Gathered, shown: Shown, rule: GatherRule): Gathered {
  const moment = momentOf([shown], rule, false);
  return { ...from, seen: [...from.seen, moment], phase: shown.phase, began: shown.seconds, turned: false };
}

function close(from: Gathered, rule: GatherRule): Gathered {
  const moment = momentOf(from.open, rule, from.turned);
  return { ...from, seen: [...from.seen, moment], open: [], turned: false };
}

function momentOf(open: readonly Shown[], { noise }: GatherRule, turned: boolean): Seen {
  const mean = (values: readonly number[]): number => values.reduce((sum, x) => sum + x, 0) / values.length;
  return {
    seconds: mean(open.map(({ seconds }) => seconds)),
    pressure: mean(open.map(({ pressure }) => pressure)),
    blur: noise.pressure / Math.sqrt(open.length),
    girths: noise.girths.map((each, i): GirthSeen | undefined => {
      const read = open.flatMap(({ girths }) => girths[i] ?? []);
      return read.length === 0 ? undefined : { growth: mean(read), blur: each / Math.sqrt(read.length) };
    }),
    turned,
  };
}
