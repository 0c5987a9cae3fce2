/** A number becomes text: here, once, with the digits of its quantity. */
import type { Manner } from './manner.ts';
import { type Quantity, scaleOf } from './quantity.ts';

/** A figure and its unit apart, so that the unit can be set lighter. `unit` is empty where there is none. */
export interface Figure {
  readonly text: string;
  readonly unit: string;
}

/** A computed or measured value (inside units) with the fixed digits of its quantity. Throws where it is no number. */
export const figure = (manner: Manner, quantity: Quantity, value: number): Figure => {
  const { unit, one, digits } = scaleOf(manner.units, quantity);
  return { text: fixed(manner, value / one, digits), unit };
};

/** The same with its sign, also where it is positive. */
export const signedFigure = (manner: Manner, quantity: Quantity, value: number): Figure => {
  const { text, unit } = figure(manner, quantity, value);
  return { text: text.startsWith('-') || isNothing(text) ? text : `+${text}`, unit };
};

/**
 * A value that somebody stated: as many digits as it has, at most those of its quantity. Drawings write 600, not 600.0:
 * a nominal dimension promises no precision.
 */
export const statedFigure = (manner: Manner, quantity: Quantity, value: number): Figure => {
  const { unit, one, digits } = scaleOf(manner.units, quantity);
  const whole = fixed({ ...manner, decimal: '.' }, value / one, digits);
  const short = digits === 0 ? whole : whole.replace(/\.?0+$/, '');
  return { text: short.replace('.', manner.decimal), unit };
};

/** "27.0 bar". */
export const written = ({ text, unit }: Figure): string =>
  unit === '' ? text : unit === '°' ? `${text}${unit}` : `${text} ${unit}`;

export const say = (manner: Manner, quantity: Quantity, value: number): string =>
  written(figure(manner, quantity, value));

export const sayStated = (manner: Manner, quantity: Quantity, value: number): string =>
  written(statedFigure(manner, quantity, value));

export const saySigned = (manner: Manner, quantity: Quantity, value: number): string =>
  written(signedFigure(manner, quantity, value));

/** Figures alone, in outside units already: ticks of axes. */
export const fixed = (manner: Manner, value: number, digits: number): string => {
  if (!Number.isFinite(value)) throw new Error(`a figure must be a number, got ${value}`);
  const text = value.toFixed(digits);
  return (isNothing(text) ? text.replace('-', '') : text).replace('.', manner.decimal);
};

const isNothing = (text: string): boolean => !/[1-9]/.test(text);
