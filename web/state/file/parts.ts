/** Parts of the tank that can be added and taken away, each as it usually is. */
import { type FileDraft, isList, type Json, valueAt, withValue, without } from './edit.ts';

export type PartList = 'girths' | 'seams.girth' | 'baffles' | 'duty.holds' | 'skirts';

export const partsOf = (draft: FileDraft, list: PartList): readonly Json[] => {
  const value = valueAt(draft, list);
  return isList(value) ? value : [];
};

const numberAt = (draft: FileDraft, path: string, otherwise: number): number => {
  const value = valueAt(draft, path);
  return typeof value === 'number' ? value : otherwise;
};

const round = (value: number): number => Math.round(value);

/** Another one at a place where there is room for it. */
export function withPart(draft: FileDraft, list: PartList): FileDraft {
  const there = partsOf(draft, list);
  return withValue(draft, list, [...there, usual(draft, list, there.length)]);
}

export const withoutPart = (draft: FileDraft, list: PartList, index: number): FileDraft =>
  without(draft, `${list}[${index}]`);

function usual(draft: FileDraft, list: PartList, count: number): Json {
  const length = numberAt(draft, 'barrel.length_mm', 500);
  const diameter = numberAt(draft, 'barrel.insideDiameter_mm', 500);
  const wall = numberAt(draft, 'barrel.wall_mm', 2);
  const at = round((length * (1 + (count % 4))) / 5);
  const stretch =
    numberAt(draft, 'duty.workingPressure_bar', 10) * numberAt(draft, 'duty.stretchFactor', 1.5);
  switch (list) {
    case 'girths':
      return { name: `girth ${count + 1}`, at_mm: at };
    case 'seams.girth':
      return { at_mm: round(length / 2), width_mm: 6, strength: 0.95 };
    case 'baffles':
      return { at_mm: at, width_mm: round(diameter / 10), thickness_mm: wall };
    case 'skirts':
      return { end: count === 0 ? 'bottom' : 'top', length_mm: round(diameter / 6), wall_mm: wall };
    case 'duty.holds':
      return count === 0
        ? { pressure_bar: stretch, minutes: 60, valve: 'open' }
        : { pressure_bar: Number((0.9 * stretch).toPrecision(3)), minutes: 10, valve: 'open' };
  }
}

export const HEAD_SHAPES = [
  'semi-ellipsoidal',
  'DIN 28011',
  'DIN 28013',
  'torispherical',
  'hemispherical',
  'conical',
  'flat',
] as const;
export type HeadShape = (typeof HEAD_SHAPES)[number];

/** Keys that say the shape of a head; the others (wall, flange, boss, plate, steel) stay when it changes. */
const SHAPE_KEYS = [
  'shape',
  'ratio',
  'depth_mm',
  'crownRadius_mm',
  'knuckleRadius_mm',
  'standard',
  'halfAngle_deg',
];

export function shapeOf(draft: FileDraft, end: 'top' | 'bottom'): HeadShape {
  const [shape, standard] = [valueAt(draft, `heads.${end}.shape`), valueAt(draft, `heads.${end}.standard`)];
  return (
    HEAD_SHAPES.find((one) => one === standard) ??
    HEAD_SHAPES.find((one) => one === shape) ??
    'semi-ellipsoidal'
  );
}

export function withShape(draft: FileDraft, end: 'top' | 'bottom', shape: HeadShape): FileDraft {
  const head = valueAt(draft, `heads.${end}`);
  const others = Object.entries(typeof head === 'object' && head !== null ? head : {}).filter(
    ([key]) => !SHAPE_KEYS.includes(key),
  );
  const diameter = numberAt(draft, 'barrel.insideDiameter_mm', 500);
  return withValue(draft, `heads.${end}`, { ...usualShape(shape, diameter), ...Object.fromEntries(others) });
}

function usualShape(shape: HeadShape, diameter: number): FileDraft {
  switch (shape) {
    case 'semi-ellipsoidal':
      return { shape, ratio: 2 };
    case 'DIN 28011':
    case 'DIN 28013':
      return { shape: 'torispherical', standard: shape };
    case 'torispherical':
      return { shape, crownRadius_mm: diameter, knuckleRadius_mm: diameter / 10 };
    case 'conical':
      return { shape, halfAngle_deg: 60, knuckleRadius_mm: diameter / 10 };
    default:
      return { shape };
  }
}

export const withBoss = (draft: FileDraft, end: 'top' | 'bottom'): FileDraft =>
  withValue(draft, `heads.${end}.boss`, {
    diameter_mm: round(numberAt(draft, 'barrel.insideDiameter_mm', 500) / 7),
    thickness_mm: 5 * numberAt(draft, 'barrel.wall_mm', 2),
  });
