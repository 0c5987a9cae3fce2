/** The readings of a record, played again at their own pace or faster. */
import type { Entry } from '@hoopwright/wire/record';
import type { Later, Source } from './source.ts';

export interface ReplayParts {
  readonly name: string;
  /** Entries of the record in order; read as they are needed. */
  readonly entries: () => Iterable<Entry>;
  /** Times real time. */
  readonly speed: number;
  readonly later: Later;
}

export function replaySource({ name, entries, speed, later }: ReplayParts): Source {
  return {
    name,
    start: (told) => {
      const coming = readingsOf(entries());
      let callOff: (() => void) | undefined;
      const play = (before: number | undefined): void => {
        const next = coming.next();
        if (next.done === true) return told.state({ kind: 'lost', why: 'the record is at its end' });
        const { wall_ms, body } = next.value;
        callOff = later(before === undefined ? 0 : Math.max(0, wall_ms - before) / speed, () => {
          told.reading(numbersIn(body['values']));
          play(wall_ms);
        });
      };
      told.state({ kind: 'open' });
      play(undefined);
      return {
        accept: () => {},
        stop: () => {
          callOff?.();
          return Promise.resolve();
        },
      };
    },
  };
}

function* readingsOf(entries: Iterable<Entry>): Generator<Entry> {
  for (const entry of entries) if (entry.kind === 'reading') yield entry;
}

const numbersIn = (values: unknown): Record<string, number> =>
  Object.fromEntries(
    Object.entries(typeof values === 'object' && values !== null ? values : {}).filter(
      (pair): pair is [string, number] => typeof pair[1] === 'number',
    ),
  );
