/** Quantities with their units and their digits. Digits are decided here and nowhere else. */
import {
  KG_PER_POUND,
  MM3_PER_GALLON,
  MM3_PER_LITRE,
  MM_PER_INCH,
  MPA_PER_BAR,
  MPA_PER_KSI,
  MPA_PER_PSI,
} from '@hoopwright/core/units';
import type { Units } from './manner.ts';

export type Quantity =
  | 'pressure'
  /** Nominal lengths of the drawing, and places along the tank. */
  | 'length'
  /** Where something was found along the tank: no place is known to a tenth. */
  | 'place'
  /** Girths as a tape reads them. */
  | 'girth'
  | 'wall'
  /** Litres grown or pumped. */
  | 'volume'
  /** Content of a tank. */
  | 'content'
  | 'mass'
  | 'stress'
  /** Growth of girth, as a fraction inside and in percent outside. */
  | 'growth'
  /** Strain as a fraction inside and in percent outside. */
  | 'strain'
  /** Part of a whole, in percent. */
  | 'share'
  /** One pressure over another. */
  | 'ratio'
  | 'angle'
  | 'minutes'
  | 'temperature';

/** `one`: inside value of one unit. `digits`: decimals that are always written. */
export interface Scale {
  readonly unit: string;
  readonly one: number;
  readonly digits: number;
}

const scale = (unit: string, one: number, digits: number): Scale => ({ unit, one, digits });

/** Mass inside is the tonne. */
const KG = 1e-3;

const METRIC: Readonly<Record<Quantity, Scale>> = {
  pressure: scale('bar', MPA_PER_BAR, 1),
  length: scale('mm', 1, 1),
  place: scale('mm', 1, 0),
  girth: scale('mm', 1, 1),
  wall: scale('mm', 1, 2),
  volume: scale('L', MM3_PER_LITRE, 2),
  content: scale('L', MM3_PER_LITRE, 1),
  mass: scale('kg', KG, 1),
  stress: scale('MPa', 1, 0),
  growth: scale('%', 0.01, 2),
  strain: scale('%', 0.01, 2),
  share: scale('%', 0.01, 0),
  ratio: scale('', 1, 2),
  angle: scale('°', Math.PI / 180, 1),
  minutes: scale('min', 60, 0),
  temperature: scale('°C', 1, 0),
};

const SCALES: Readonly<Record<Units, Readonly<Record<Quantity, Scale>>>> = {
  bar: METRIC,
  MPa: { ...METRIC, pressure: scale('MPa', 1, 2) },
  psi: {
    ...METRIC,
    pressure: scale('psi', MPA_PER_PSI, 0),
    length: scale('in', MM_PER_INCH, 2),
    place: scale('in', MM_PER_INCH, 1),
    girth: scale('in', MM_PER_INCH, 3),
    wall: scale('in', MM_PER_INCH, 4),
    volume: scale('gal', MM3_PER_GALLON, 3),
    content: scale('gal', MM3_PER_GALLON, 2),
    mass: scale('lb', KG_PER_POUND * KG, 1),
    stress: scale('ksi', MPA_PER_KSI, 1),
  },
};

export const scaleOf = (units: Units, quantity: Quantity): Scale => SCALES[units][quantity];
