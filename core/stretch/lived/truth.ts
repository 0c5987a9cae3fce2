/** What instruments without any error would read on the living tank. */
import { momentAt } from '../growth.ts';
import { STEEL_EXPANSION } from '../water.ts';
import type { Lived, LivedTank } from './lived.ts';

/** Inside units. */
export interface Truth {
  readonly seconds: number;
  /** MPa at the gauge. */
  readonly pressure: number;
  /** mm outside, in the order of the tank's girths, as warm as the wall is. */
  readonly girths: readonly number[];
  /** Growth of the girth of the barrel that has grown most, without warming. */
  readonly growth: number;
  /** Growth of the inside volume, mm³, without warming. */
  readonly room: number;
  /** mm³ that the pump has pushed in since the vent was shut. */
  readonly drawn: number;
  /** mm³ that leaked or was let out. */
  readonly lost: number;
  /** Rise of the height pole to pole, mm. */
  readonly rise: number;
  /** Thinnest wall of the barrel, mm. */
  readonly thinnest: number;
  /** °C */
  readonly water: number;
  readonly wall: number;
}

export function truthOf({ datum, tank }: LivedTank, now: Lived): Truth {
  const moment = momentAt(datum, now.walk.now, 'stretch', now.seconds);
  const warm = 1 + STEEL_EXPANSION * (now.warmth.wall - tank.water.temperature);
  return {
    seconds: now.seconds,
    pressure: now.burst === undefined ? moment.pressure : 0,
    girths: moment.girths.map(({ girth }) => girth * warm),
    growth: moment.largest.growth,
    room: moment.growth,
    drawn: now.drawn,
    lost: now.lost,
    rise: moment.rise,
    thinnest: moment.thinnest,
    water: now.warmth.water,
    wall: now.warmth.wall,
  };
}

/** Straight between two moments, for instruments that read more often than the tank is worked out. */
export function truthBetween(a: Truth, b: Truth, seconds: number): Truth {
  const span = b.seconds - a.seconds;
  const f = span > 0 ? (seconds - a.seconds) / span : 1;
  const mix = (x: number, y: number): number => x + f * (y - x);
  return {
    seconds,
    pressure: mix(a.pressure, b.pressure),
    girths: a.girths.map((girth, i) => mix(girth, b.girths[i])),
    growth: mix(a.growth, b.growth),
    room: mix(a.room, b.room),
    drawn: mix(a.drawn, b.drawn),
    lost: mix(a.lost, b.lost),
    rise: mix(a.rise, b.rise),
    thinnest: mix(a.thinnest, b.thinnest),
    water: mix(a.water, b.water),
    wall: mix(a.wall, b.wall),
  };
}
