/** What rows at the open pump say: how quickly the girth grows, and whether it grows while the pressure falls. */
import type { Channel } from '../../reading/channel.ts';
import type { Row } from '../../reading/row.ts';
import type { Facts } from '../facts.ts';
import { type Instruments, spreadOf } from '../instruments.ts';

export interface RiseGivens {
  /** Gauges that are believed, finest first. */
  readonly instruments: Instruments;
  /** Rows of this step. */
  readonly rows: readonly Row[];
  /** As a fraction, of a girth that is believed. */
  readonly growthIn: (channel: Channel | undefined, row: Row) => number | undefined;
}

export function riseFacts(givens: RiseGivens): Pick<Facts, 'fallen' | 'pace'> {
  const fallen = fallenSince(givens);
  const pace = paceOf(givens);
  return { ...(fallen === undefined ? {} : { fallen }), ...(pace === undefined ? {} : { pace }) };
}

/** s that are looked back in a hold: a row a minute, and a little. Over longer times creep grows as much by itself. */
const LOOKS_BACK = 70;

/** A hold with the valve open: the pump is to keep the pressure, and a wall that runs away outgrows it. */
export function openHoldFacts(givens: RiseGivens): Pick<Facts, 'fallen'> {
  const from = (givens.rows.at(-1)?.seconds ?? 0) - LOOKS_BACK;
  const fallen = fallenSince({ ...givens, rows: givens.rows.filter(({ seconds }) => seconds >= from) });
  return fallen === undefined ? {} : { fallen };
}

/** Standard deviations of the gauge that a fall stands clear of. */
const CLEAR = 4;

/** Since the highest pressure of these rows. */
function fallenSince({ instruments, rows, growthIn }: RiseGivens): Facts['fallen'] {
  const now = rows.at(-1);
  const gauge = instruments.gauges.find(({ name }) => now?.values[name] !== undefined);
  if (gauge === undefined || now === undefined) return undefined;
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
