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

/** mm by which a tape lies otherwise from one reading to the next, beside its marks. Common practice, no source. */
export const TAPE_LAID = 0.3;

/** Time in a hold that one moment may span, over the time since the hold began, and at least, s. */
const HOLD_SHARE = 0.25;
const LEAST_TIME = 6;

/** Everything gathered so far. Never written into. */
export interface Gathered {
  readonly seen: readonly Seen[];
  readonly open: readonly Shown[];
  /** What the last moment was made of, for more of it; undefined for a row of the log sheet. */
  readonly last?: Piece;
  readonly phase: string;
  /** s at which the phase began. */
  readonly began: number;
  readonly turned: boolean;
}

/** Readings of one moment, and whether the pump was turned before it. */
interface Piece {
  readonly shown: readonly Shown[];
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
 * What is seen with one more reading: in the piece that is not yet full or, where none is begun, in the last moment, since so
 * short a time after it noise would pass for a rate of growth. Undefined where there is neither, and at the start of a phase.
 */
export function seenWith(from: Gathered, shown: Shown, rule: GatherRule): readonly Seen[] | undefined {
  if (shown.phase !== from.phase) return undefined;
  const { open, last, seen, turned } = from;
  if (open.length > 0) return [...seen, momentOf({ shown: [...open, shown], turned }, rule)];
  if (last === undefined) return undefined;
  return [...seen.slice(0, -1), momentOf({ ...last, shown: [...last.shown, shown] }, rule)];
}

/** A row of the log sheet: one reading of everything is a moment by itself. */
export function gatherRow(from: Gathered, shown: Shown, rule: GatherRule): Gathered {
  const { seen } = from.open.length === 0 ? from : close(from, rule);
  const moment = momentOf({ shown: [shown], turned: false }, rule);
  return { seen: [...seen, moment], open: [], phase: shown.phase, began: shown.seconds, turned: false };
}

function close(from: Gathered, rule: GatherRule): Gathered {
  const last = { shown: from.open, turned: from.turned };
  return { ...from, seen: [...from.seen, momentOf(last, rule)], open: [], last, turned: false };
}

function momentOf({ shown, turned }: Piece, { noise }: GatherRule): Seen {
  const mean = (values: readonly number[]): number => values.reduce((sum, x) => sum + x, 0) / values.length;
  return {
    seconds: mean(shown.map(({ seconds }) => seconds)),
    pressure: mean(shown.map(({ pressure }) => pressure)),
    blur: noise.pressure / Math.sqrt(shown.length),
    girths: noise.girths.map((each, i): GirthSeen | undefined => {
      const read = shown.flatMap(({ girths }) => girths[i] ?? []);
      return read.length === 0 ? undefined : { growth: mean(read), blur: each / Math.sqrt(read.length) };
    }),
    turned,
  };
}
