/** A record as the states it passed through, for tests of the screens alone. */
import { fold, type Fold, startFold, type Trace } from '@hoopwright/wire/day';
import { type About, readAboutLine, readEntryLine } from '@hoopwright/wire/record';

/** Every state that a record passes through, by its entry. */
export interface Played {
  readonly about: About;
  readonly folds: readonly Fold[];
}

export function played(text: string): Played {
  const [head, ...lines] = text.trimEnd().split('\n');
  const about = readAboutLine(head);
  if (!about.ok) throw new Error(about.why);
  let now = startFold(about.value.about, about.value.digest);
  const folds = [now];
  for (const line of lines) {
    const link = readEntryLine(line);
    if (!link.ok) throw new Error(link.why);
    now = fold(now, link.value);
    folds.push(now);
  }
  return { about: about.value.about, folds };
}

/** The trace of the rows that a state has behind it. */
export function traceOf({ about, folds }: Played, seq: number): Trace {
  const names = [...new Set(folds[seq].state.channels.map(({ channel }) => channel.name))];
  const seen = folds
    .slice(1, seq + 1)
    .map(({ state }, i) => ({ state, before: folds[i].state }))
    .flatMap(({ state }) => {
      const values = state.channels.flatMap(({ channel, last }) =>
        last?.seq === state.seq ? [[channel.name, last.value] as const] : [],
      );
      return values.length === 0
        ? []
        : [{ at: (state.wall_ms - about.began_ms) / 1000, values: new Map(values) }];
    });
  const column = (name: string): (number | null)[] => seen.map(({ values }) => values.get(name) ?? null);
  return {
    seconds: seen.map(({ at }) => at),
    channels: names.map((name) => ({ name, low: column(name), high: column(name) })),
  };
}
