/** Units that may be typed behind a number, and the unit that a key of the tank file has in its name. */
import {
  KG_PER_POUND,
  MM3_PER_GALLON,
  MM3_PER_LITRE,
  MM_PER_INCH,
  MPA_PER_BAR,
  MPA_PER_KSI,
  MPA_PER_PSI,
} from '@hoopwright/core/units';
import type { Quantity } from '@hoopwright/report/figure';

type Table = Readonly<Record<string, number>>;

const LENGTH: Table = { mm: 1, cm: 10, m: 1000, in: MM_PER_INCH, inch: MM_PER_INCH, '"': MM_PER_INCH };
const PRESSURE: Table = { bar: MPA_PER_BAR, mbar: MPA_PER_BAR / 1000, mpa: 1, kpa: 0.001, psi: MPA_PER_PSI };
const STRESS: Table = { mpa: 1, 'n/mm2': 1, 'n/mm²': 1, gpa: 1000, ksi: MPA_PER_KSI };
const VOLUME: Table = { l: MM3_PER_LITRE, ml: MM3_PER_LITRE / 1000, gal: MM3_PER_GALLON };
const MASS: Table = { kg: 1e-3, g: 1e-6, lb: KG_PER_POUND * 1e-3 };
const PART: Table = { '%': 0.01 };

/** Inside value of one of each unit, by quantity; lower case. */
const TYPED: Readonly<Partial<Record<Quantity, Table>>> = {
  length: LENGTH,
  girth: LENGTH,
  wall: LENGTH,
  pressure: PRESSURE,
  stress: STRESS,
  volume: VOLUME,
  content: VOLUME,
  mass: MASS,
  growth: PART,
  strain: PART,
  share: PART,
  angle: { '°': Math.PI / 180, deg: Math.PI / 180 },
  minutes: { min: 60, h: 3600, s: 1 },
  temperature: { '°c': 1, c: 1 },
};

/** Inside value of one of the unit typed; undefined where the quantity has no such unit. */
export const typedUnit = (quantity: Quantity, unit: string): number | undefined =>
  TYPED[quantity]?.[unit.trim().toLowerCase()];

export const unitsFor = (quantity: Quantity): string[] => Object.keys(TYPED[quantity] ?? {});

/** Endings of keys, and the inside value of one of their unit. A key without an ending has no unit. */
const ENDINGS: readonly (readonly [ending: string, one: number])[] = [
  ['_L_per_min', MM3_PER_LITRE / 60],
  ['_kg_per_m3', 1],
  ['_per_s', 1],
  ['_percent', 0.01],
  ['_mm', 1],
  ['_bar', MPA_PER_BAR],
  ['_MPa', 1],
  ['_L', MM3_PER_LITRE],
  ['_deg', Math.PI / 180],
  ['_kg', 1e-3],
  ['minutes', 60],
];

/** A limit that the team sets stands under the key of its quantity: `limits.trappedAir_L.value`. */
export const keyOf = (path: string): string => path.replace(/\.value$/, '');

export const fileUnit = (path: string): number =>
  ENDINGS.find(([ending]) => keyOf(path).endsWith(ending))?.[1] ?? 1;

/** Twelve digits: conversions leave no dust, and no digit that was typed is lost. */
export const tidy = (value: number): number => Number(value.toPrecision(12));

/** Units that everybody reads alike, in what is typed and in the file. */
const PLAIN: readonly (readonly [ending: string, unit: string])[] = [
  ['mL_per_min', 'mL/min'],
  ['mL_per_stroke', 'mL'],
  ['strokes_per_min', '/min'],
  ['_mL', 'mL'],
  ['_ppm', 'ppm'],
  ['_m', 'm'],
  ['_K', 'K'],
  ['_s', 's'],
];

export const plainUnit = (path: string): string =>
  PLAIN.find(([ending]) => keyOf(path).endsWith(ending))?.[1] ?? '';
