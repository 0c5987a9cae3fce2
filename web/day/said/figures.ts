/** Figures of the day as people read them. The record's units in, the reader's out. */
import { fromBar, fromLitre, fromPercent } from '@hoopwright/core/units';
import {
  type Figure,
  figure,
  fixed,
  type Manner,
  type Quantity,
  scaleOf,
  written,
} from '@hoopwright/report/figure';
import type { ChannelReads } from '@hoopwright/wire/reading';

interface Reads {
  readonly quantity: Quantity;
  readonly inside: (value: number) => number;
  readonly outside: (inside: number) => number;
}

const KG = 1e-3;
const of = (quantity: Quantity, one: number): Reads => ({
  quantity,
  inside: (value) => value * one,
  outside: (inside) => inside / one,
});

const READS: Readonly<Partial<Record<ChannelReads, Reads>>> = {
  pressure: of('pressure', fromBar(1)),
  girth: of('girth', 1),
  litres: of('volume', fromLitre(1)),
  weight: of('mass', KG),
  rise: of('length', 1),
  wall: of('wall', 1),
};

/** Channels whose unit is the same for everybody: digits that are written. */
const PLAIN: Readonly<Partial<Record<ChannelReads, { readonly unit: string; readonly digits: number }>>> = {
  strokes: { unit: 'strokes', digits: 0 },
  temperature: { unit: '°C', digits: 1 },
  strain: { unit: 'µm/m', digits: 0 },
};

export function channelFigure(manner: Manner, reads: ChannelReads, value: number): Figure {
  const known = READS[reads];
  if (known !== undefined) return figure(manner, known.quantity, known.inside(value));
  const { unit, digits } = PLAIN[reads] ?? { unit: '', digits: 2 };
  return { text: fixed(manner, value, digits), unit };
}

export const channelText = (manner: Manner, reads: ChannelReads, value: number): string =>
  written(channelFigure(manner, reads, value));

/** Unit that a person types a channel in, and the way back into the unit of the record. */
export function entryOf(
  manner: Manner,
  reads: ChannelReads,
): { readonly unit: string; readonly recorded: (typed: number) => number } {
  const known = READS[reads];
  if (known === undefined) return { unit: PLAIN[reads]?.unit ?? '', recorded: (typed) => typed };
  const { unit, one } = scaleOf(manner.units, known.quantity);
  return { unit, recorded: (typed) => tidy(known.outside(typed * one)) };
}

/** 12.5 bar is recorded as 12.5, not 12.500000000000002. */
const tidy = (value: number): number => Number(value.toPrecision(12));

export const pressureFigure = (manner: Manner, bar: number): Figure =>
  figure(manner, 'pressure', fromBar(bar));
export const growthFigure = (manner: Manner, percent: number): Figure =>
  figure(manner, 'growth', fromPercent(percent));
export const litresFigure = (manner: Manner, litres: number): Figure =>
  figure(manner, 'volume', fromLitre(litres));

export const pressureText = (manner: Manner, bar: number): string => written(pressureFigure(manner, bar));
export const growthText = (manner: Manner, percent: number): string => written(growthFigure(manner, percent));

const two = (n: number): string => String(Math.floor(n)).padStart(2, '0');

/** "8 s", "4 min 12 s", "1 h 2 min": with its units, so that an age never looks like a reading. */
export function ageText(seconds: number): string {
  const whole = Math.floor(Math.max(0, seconds));
  const [hours, minutes] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60];
  if (hours > 0) return `${hours} h ${minutes} min`;
  return minutes > 0 ? `${minutes} min ${whole % 60} s` : `${whole} s`;
}

/** The same in one figure, for the place of a large number. */
export function shortAge(seconds: number): { readonly text: string; readonly unit: string } {
  const whole = Math.floor(Math.max(0, seconds));
  if (whole < 60) return { text: String(whole), unit: 's' };
  return whole < 5400
    ? { text: String(Math.floor(whole / 60)), unit: 'min' }
    : { text: String(Math.floor(whole / 3600)), unit: 'h' };
}

export function durationText(seconds: number): string {
  const whole = Math.floor(Math.max(0, seconds));
  const [hours, minutes] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60];
  return hours > 0 ? `${hours}:${two(minutes)}:${two(whole % 60)}` : `${minutes}:${two(whole % 60)}`;
}

/** Time of day on this machine, 24 hours. */
export function clockText(wall_ms: number): string {
  const day = new Date(wall_ms);
  return `${two(day.getHours())}:${two(day.getMinutes())}:${two(day.getSeconds())}`;
}

/** ISO 8601. */
export function dateText(wall_ms: number): string {
  const day = new Date(wall_ms);
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}
