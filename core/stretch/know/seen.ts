/** What was seen of the tank at one moment, averaged over the readings about it. Inside units. */

export interface Seen {
  /** s since the vent was shut. */
  readonly seconds: number;
  /** As the gauge reads, MPa, and the standard deviation of its noise. */
  readonly pressure: number;
  readonly blur: number;
  /** In the order of the tank; undefined where a girth was not read, or is set aside. */
  readonly girths: readonly (GirthSeen | undefined)[];
  /** Pump turned on or off since the moment before: the rate of growth between the two says nothing. */
  readonly turned: boolean;
}

export interface GirthSeen {
  /** Growth against its zero, as a fraction, as the instrument has it. */
  readonly growth: number;
  readonly blur: number;
  /** What it adds to the blur of a difference between two readings; undefined: its blur. */
  readonly apart?: number;
}

/**
 * A growth read again to the last digit is off as before: a tape stands at the same mark. Such rows share one blur; what
 * was read since the row before is as blurred as ever.
 */
export function onceEach(seen: readonly Seen[]): Seen[] {
  const counts: Map<number, number>[] = [];
  for (const { girths } of seen)
    girths.forEach((girth, i) => {
      const alike = (counts[i] ??= new Map());
      if (girth !== undefined) alike.set(girth.growth, (alike.get(girth.growth) ?? 0) + 1);
    });
  return seen.map((moment) => ({
    ...moment,
    girths: moment.girths.map((girth, i) =>
      girth === undefined
        ? undefined
        : {
            ...girth,
            blur: girth.blur * Math.sqrt(counts[i].get(girth.growth) ?? 1),
            apart: girth.blur,
          },
    ),
  }));
}
