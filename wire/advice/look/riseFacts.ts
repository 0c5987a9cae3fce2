/** What the rows of a rise say: how quickly the girth grows, and whether it grows while the pressure falls. */
import type { Channel } from '../../reading/channel.ts';
import type { Row } from '../../reading/row.ts';
import type { Facts } from '../facts.ts';
import { type Instruments, spreadOf } from '../instruments.ts';

export interface RiseGivens {
  readonly instruments: Instruments;
  /** Rows of this rise. */
  readonly rows: readonly Row[];
  /** As a fraction, of a girth that is believed. */
  readonly growthIn: (channel: Channel | undefined, row: Row) => number | undefined;
}

export function riseFacts(givens: RiseGivens): Pick<Facts, 'fallen' | 'pace'> {
  const fallen = fallenSince(givens);
  const pace = paceOf(givens);
  return { ...(fallen === undefined ? {} : { fallen }), ...(pace === undefined ? {} : { pace }) };
}

/** Standard deviations of the gauge that a fall stands clear of. */
const CLEAR = 4;

/** Since the highest pressure of this rise. */
function fallenSince({ instruments, rows, growthIn }: RiseGivens): Facts['fallen'] {
  const [gauge] = instruments.gauges;
  const now = rows.at(-1);
  if (gauge === undefined || now?.values[gauge.name] === undefined) return undefined;
  const { name } = gauge;
  const read = rows.filter(({ values }) => values[name] !== undefined);
  const top = read.reduce((a, b) => (b.values[name] > a.values[name] ? b : a));
  const grown = grownBetween({ instruments, rows, growthIn }, top, now);
  if (grown === undefined) return undefined;
  return {
    pressure_bar: top.values[name] - now.values[name],
    growth_percent: grown,
    blur_bar: CLEAR * spreadOf(gauge),
  };
}

/** s that two rows must be apart for a pace. */
const APART = 15;

function paceOf(givens: RiseGivens): number | undefined {
  const b = givens.rows.at(-1);
  const a = givens.rows.findLast(({ seconds }) => b !== undefined && b.seconds - seconds > APART);
  if (a === undefined || b === undefined) return undefined;
  const grown = grownBetween(givens, a, b);
  return grown === undefined ? undefined : grown / ((b.seconds - a.seconds) / 60);
}

/** Percent, of the girth that grew most. */
function grownBetween({ instruments, growthIn }: RiseGivens, a: Row, b: Row): number | undefined {
  const grown = instruments.girths.flatMap((channel) => {
    const [from, to] = [growthIn(channel, a), growthIn(channel, b)];
    return from === undefined || to === undefined ? [] : [100 * (to - from)];
  });
  return grown.length === 0 ? undefined : Math.max(...grown);
}
