/** Where in a forecast the hand stands. */
import type { Cursor, MomentView } from './ask.ts';

/** What is needed of a forecast, with or without the state of its shell. */
export interface Way<M> {
  readonly path: readonly M[];
  readonly arrived?: M;
  readonly held?: M;
  readonly released?: { readonly left: M };
  readonly maximum?: { readonly growth: number };
}

/** The moment nearest to where the hand stands; undefined: as welded. A stop that this tank does not reach is the one before it. */
export function momentOf<M extends MomentView>(forecast: Way<M>, cursor: Cursor): M | undefined {
  const { path, held, arrived, released, maximum } = forecast;
  if (cursor.kind === 'place') return nearest(path, cursor);
  const way = path.filter(({ phase }) => phase !== 'release');
  switch (cursor.stop) {
    case 'welded':
      return undefined;
    case 'under':
      return held ?? arrived ?? way.at(-1);
    case 'left':
      return released?.left ?? held ?? arrived ?? way.at(-1);
    case 'maximum':
      return nearest(way, { phase: 'stretch', growth: maximum?.growth ?? Infinity, pressure: Infinity });
  }
}

function nearest<M extends MomentView>(
  path: readonly M[],
  { phase, growth, pressure }: Omit<Extract<Cursor, { kind: 'place' }>, 'kind'>,
): M | undefined {
  const back = phase === 'release';
  const side = path.filter((m) => (m.phase === 'release') === back);
  const top = Math.max(...path.map((m) => m.pressure));
  const far = (m: M): number => {
    const across = Math.abs(m.largest.growth - Math.min(growth, 1e9));
    const up = Number.isFinite(pressure) ? Math.abs(m.pressure - pressure) / top : 0;
    return across + 0.2 * up;
  };
  return side.reduce<M | undefined>(
    (best, m) => (best === undefined || far(m) < far(best) ? m : best),
    undefined,
  );
}
