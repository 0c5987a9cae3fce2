/** The day run with many drawn steels on quick tanks: what ranges are read from. */
import {
  type Leg,
  PLASTIC_PER_GROWTH,
  pumpedFor,
  quickDay,
  type QuickEnd,
  type QuickPath,
  quickPath,
  type QuickTank,
} from '@hoopwright/core/stretch';
import type { SteelDraw } from '@hoopwright/core/steel';
import type { Foreseen } from './foresee.ts';
import {
  arrivalKey,
  arrivals,
  type Draw,
  downFrom,
  downKey,
  heldKey,
  LEFT_KEY,
  letDown,
  type MarkFigures,
  type MarkKey,
  slopesBetween,
} from './range.ts';

/** @param flow mm³/s of the pump; undefined: no time at the pump is told */
export function drawsOn(
  foreseen: Foreseen,
  quick: QuickTank,
  steels: readonly SteelDraw[],
  flow: number | undefined,
): { readonly draws: Draw[]; readonly burst: number } {
  const rates = new Map(arrivals(foreseen.ladder).map((p) => [p, rateAt(foreseen, p)]));
  const draws = steels.flatMap(
    (steel) => dayOf({ foreseen, path: quickPath(quick, steel), steel, rates, flow }) ?? [],
  );
  return { draws, burst: steels.length - draws.length };
}

interface DayGivens {
  readonly foreseen: Foreseen;
  readonly path: QuickPath;
  readonly steel: SteelDraw;
  readonly rates: ReadonlyMap<number, number | undefined>;
  readonly flow: number | undefined;
}

/** Undefined where this steel gives way on the day. */
function dayOf(givens: DayGivens): Draw | undefined {
  const { foreseen, path, steel, rates, flow } = givens;
  const { ladder, rule } = foreseen;
  const marks = new Map<MarkKey, MarkFigures>();
  const legs: Leg[] = [];
  const note = (key: MarkKey, pressure: number): boolean => {
    const end = quickDay(path, steel, legs);
    if (end.kind === 'bursts') return false;
    marks.set(key, figuresAt(foreseen, end, pressure));
    return true;
  };
  for (const pressure of arrivals(ladder)) {
    const rate = rates.get(pressure) ?? steel.rate.reference / PLASTIC_PER_GROWTH;
    legs.push({ kind: 'ramp', pressure, rate });
    if (!note(arrivalKey(pressure), pressure)) return undefined;
    const hold = ladder.holds.find((h) => h.pressure === pressure);
    if (hold === undefined) continue;
    // With the valve shut it creeps less: what an open valve gives bounds it.
    legs.push({ kind: 'hold', time: hold.time });
    if (!note(heldKey(pressure), pressure)) return undefined;
  }
  const rest = restOf(path, steel, legs, rule);
  if (rest === undefined) return undefined;
  legs.push({ kind: 'hold', time: rest });
  if (!note(heldKey(ladder.target), ladder.target)) return undefined;
  letOut(foreseen, marks);
  return { marks: Object.fromEntries(marks), rest, pumping: pumping(foreseen, marks, flow) };
}

const figuresAt = (
  { forecast }: Foreseen,
  end: QuickEnd & { kind: 'stands' },
  pressure: number,
): MarkFigures => ({
  pressure,
  growth: end.volume,
  pumped: pumpedFor(forecast.datum, end.volume, pressure),
  girths: end.girths.map((growth, i) => forecast.datum.girths[i] * (1 + growth)),
  growths: end.girths,
  largest: end.growth,
});

/**
 * s of the final hold by the crew's rule: while growth goes with the logarithm of time, its mean rate over the last
 * window falls under the limit half a window after the rate itself does.
 */
function restOf(
  path: QuickPath,
  steel: SteelDraw,
  legs: readonly Leg[],
  rule: Foreseen['rule'],
): number | undefined {
  const before = quickDay(path, steel, legs);
  const end = quickDay(path, steel, [...legs, { kind: 'final hold', time: rule.cap, rate: rule.rate }]);
  if (before.kind === 'bursts' || end.kind === 'bursts') return undefined;
  return Math.min(rule.cap, Math.max(rule.atLeast, end.time - before.time + rule.window / 2));
}

/** What is left after release, and what is read come down to the approach pressure: elastic, by this steel's own slopes. */
function letOut({ ladder, forecast }: Foreseen, marks: Map<MarkKey, MarkFigures>): void {
  const [low, high] = [ladder.first[0], ladder.first[2]].map((p) => marks.get(arrivalKey(p)));
  const held = marks.get(heldKey(ladder.target));
  if (low === undefined || high === undefined || held === undefined)
    throw new Error('a day that stands to its end has a first step and a final hold');
  const slopes = slopesBetween(low, high);
  marks.set(LEFT_KEY, letDown(forecast.datum, held, 0, slopes));
  if (ladder.approach <= 0) return;
  for (const key of downFrom(ladder)) {
    const from = marks.get(key);
    if (from !== undefined) marks.set(downKey(key), letDown(forecast.datum, from, ladder.approach, slopes));
  }
}

function pumping(
  { ladder }: Foreseen,
  marks: ReadonlyMap<MarkKey, MarkFigures>,
  flow: number | undefined,
): number {
  if (flow === undefined) return 0;
  const drawn = (key: MarkKey): number => marks.get(key)?.pumped.all ?? 0;
  const inHolds = ladder.holds.reduce(
    (sum, { pressure }) => sum + drawn(heldKey(pressure)) - drawn(arrivalKey(pressure)),
    0,
  );
  return (drawn(arrivalKey(ladder.target)) - inHolds) / flow;
}

/** Growth per second of the largest girth on arrival at a pressure, as the pump gives it; undefined without a pump. */
function rateAt({ forecast }: Foreseen, pressure: number): number | undefined {
  const climb = forecast.path.filter((m) => m.phase === 'stretch');
  const next = Math.max(
    1,
    climb.findIndex((m) => m.pressure >= pressure * (1 - 1e-9)),
  );
  const [a, b] = [climb[next - 1], climb[next]];
  if (a === undefined || b === undefined || !(b.time > a.time)) return undefined;
  return (b.largest.growth - a.largest.growth) / (b.time - a.time);
}
