/** The unit is part of the key: what somebody meant who wrote another unit, or wrote it into the value. */
import {
  KG_PER_POUND,
  MM3_PER_GALLON,
  MM3_PER_LITRE,
  MM_PER_INCH,
  MPA_PER_BAR,
  MPA_PER_KSI,
  MPA_PER_PSI,
} from '@hoopwright/core/units';

type Convert = (value: number) => number;
const times =
  (factor: number): Convert =>
  (value) =>
    value * factor;

const LENGTH = {
  mm: 1,
  um: 1e-3,
  cm: 10,
  dm: 100,
  m: 1000,
  in: MM_PER_INCH,
  inch: MM_PER_INCH,
  ft: 12 * MM_PER_INCH,
};
const PRESSURE = {
  MPa: 1,
  bar: MPA_PER_BAR,
  mbar: MPA_PER_BAR / 1000,
  Pa: 1e-6,
  kPa: 1e-3,
  GPa: 1000,
  psi: MPA_PER_PSI,
  ksi: MPA_PER_KSI,
  N_per_mm2: 1,
  'N/mm2': 1,
  'N/mm²': 1,
};
const VOLUME = { L: 1, l: 1, mL: 1e-3, ml: 1e-3, m3: 1000, gal: MM3_PER_GALLON / MM3_PER_LITRE };
const TIME = { minutes: 1, min: 1, s: 1 / 60, h: 60, hours: 60, seconds: 1 / 60 };
const DENSITY = {
  kg_per_m3: 1,
  g_per_cm3: 1000,
  'kg/m3': 1,
  'g/cm3': 1000,
  lb_per_in3: KG_PER_POUND / (MM_PER_INCH / 1000) ** 3,
};
const FLOW = {
  L_per_min: 1,
  'L/min': 1,
  L_per_h: 1 / 60,
  L_per_s: 60,
  mL_per_min: 1e-3,
  'mL/min': 1e-3,
  'l/min': 1,
};
const RATE = { per_s: 1, '1/s': 1, '/s': 1, per_min: 1 / 60 };
const PERCENT = { percent: 1, '%': 1 };
const ANGLE = { deg: 1, '°': 1, rad: 180 / Math.PI };
const FAMILIES: readonly Readonly<Record<string, number>>[] = [
  LENGTH,
  PRESSURE,
  VOLUME,
  TIME,
  DENSITY,
  FLOW,
  RATE,
  PERCENT,
  ANGLE,
];

/** How to turn `from` into `to`, or undefined where they measure different things. */
export function conversion(from: string, to: string): Convert | undefined {
  if (to === 'C') return CELSIUS[from];
  const family = FAMILIES.find((units) => Object.hasOwn(units, to) && Object.hasOwn(units, from));
  return family === undefined ? undefined : times(family[from] / family[to]);
}

const CELSIUS: Readonly<Record<string, Convert | undefined>> = {
  C: times(1),
  '°C': times(1),
  K: (kelvin) => kelvin - 273.15,
  F: (fahrenheit) => ((fahrenheit - 32) * 5) / 9,
  '°F': (fahrenheit) => ((fahrenheit - 32) * 5) / 9,
};

/** `wall_mm` is stem `wall` and unit `mm`; a key without underscore has no unit, but `minutes` is its own. */
export function splitKey(key: string): { readonly stem: string; readonly unit: string | undefined } {
  const cut = key.indexOf('_');
  if (cut > 0) return { stem: key.slice(0, cut), unit: key.slice(cut + 1) };
  return { stem: key, unit: Object.hasOwn(TIME, key) ? key : undefined };
}

/** The key that has the same stem and another unit (`wall_cm`, `wall`: `wall_mm`), with the converted value if there is one. */
export function unitSlip(key: string, value: unknown, allowed: readonly string[]): UnitSlip | undefined {
  const given = splitKey(key);
  const meant = allowed.find((name) => {
    const { stem, unit } = splitKey(name);
    return unit !== undefined && name !== key && stem.toLowerCase() === given.stem.toLowerCase();
  });
  if (meant === undefined) return undefined;
  const unit = splitKey(meant).unit ?? '';
  const convert = given.unit === undefined ? undefined : conversion(given.unit, unit);
  if (convert === undefined || typeof value !== 'number' || !Number.isFinite(value)) return { meant };
  return { meant, says: `${value} ${given.unit} is ${rounded(convert(value))} ${unit}` };
}

export interface UnitSlip {
  readonly meant: string;
  readonly says?: string;
}

const NUMBER_AND_UNIT = /^\s*([+-]?\d+(?:[.,]\d+)?(?:[eE][+-]?\d+)?)\s*([^\d\s.,].*?)?\s*$/;

/** What to write in place of a number that came as text, for the key it stands at. */
export function numberSlip(text: string, key: string): string {
  const [, digits, unit] = NUMBER_AND_UNIT.exec(text) ?? [];
  if (digits === undefined) return 'give a bare number, without quotes';
  if (/,\d{3}$/.test(digits))
    return `write ${digits.replace(',', '.')} or ${digits.replace(',', '')}, without quotes`;
  const value = Number(digits.replace(',', '.'));
  const wanted = splitKey(key).unit;
  const convert = unit === undefined || wanted === undefined ? undefined : conversion(unit, wanted);
  return `write ${rounded(convert === undefined ? value : convert(value))}, without quotes`;
}

/** Conversion noise (25.400000000000002) is no part of the answer. */
const rounded = (value: number): number => Number(value.toPrecision(10));
