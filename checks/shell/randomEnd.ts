/** How a random tank ended. */
import type { Dice } from '../../core/math/dice.ts';
import { forecast } from '../../core/stretch/forecast.ts';
import type { Moment } from '../../core/stretch/growth.ts';
import { anyTank } from './anyTank.ts';

export interface RandomEnd {
  /** A maximum was found, and the tank was released or bursts before, as it says. */
  readonly whole: boolean;
  /** Codes of what stood in the way. */
  readonly reason?: string;
  readonly finite: boolean;
  readonly limit: string;
}

export function randomEnd(dice: Dice): RandomEnd {
  const { tank, duty } = anyTank(dice);
  const { path, maximum, released, remarks } = forecast(tank, duty);
  const codes = remarks.map(({ code }) => code);
  const stopped = codes.filter((code) => code !== 'no rate effect');
  return {
    whole: maximum !== undefined && (released !== undefined || codes.includes('bursts before target')),
    finite: path.every(isFiniteMoment),
    limit: maximum?.kind ?? 'none',
    ...(stopped.length === 0 ? {} : { reason: stopped.join(', ') }),
  };
}

const isFiniteMoment = (m: Moment): boolean =>
  [m.pressure, m.growth, m.pumped.all, m.largest.growth, m.rise, m.thinnest, m.plastic.anywhere, m.time]
    .concat(m.girths.flatMap(({ girth, growth }) => [girth, growth]))
    .every(Number.isFinite);
