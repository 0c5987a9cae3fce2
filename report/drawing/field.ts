/** What the wall is coloured by. The map is even to the eye and the same to colour-blind readers (cividis). */
import type { Through, WallPlace } from '@hoopwright/core/shell';
import { interpolateCividis } from 'd3-scale-chromatic';
import type { Quantity } from '../figure/quantity.ts';
import type { Key } from '../words/english.ts';

export type FieldName = 'strain' | 'wall' | 'margin';

/** One value per place of the profile, at three depths of the wall; none where a place is left hatched. */
export interface Field {
  readonly name: FieldName;
  readonly quantity: Quantity;
  readonly title: Key;
  readonly values: readonly (Through | undefined)[];
  readonly least: number;
  readonly most: number;
}

/** Equivalent plastic strain. */
export const strainField = (profile: readonly WallPlace[]): Field =>
  fieldOf(
    'strain',
    'strain',
    'fieldStrain',
    profile.map((p) => p.plastic),
  );

/** Bosses and thick plates are so much thicker that beside them every other wall would have one colour. */
const THICK = 3;

/** Present wall; thick parts are left out. */
export function wallField(profile: readonly WallPlace[]): Field {
  const thinnest = Math.min(...profile.map((p) => p.wall0));
  return fieldOf(
    'wall',
    'wall',
    'fieldWall',
    profile.map(({ wall, wall0 }) =>
      wall0 > THICK * thinnest ? undefined : { inside: wall, mid: wall, outside: wall },
    ),
  );
}

/**
 * Strain left: what the barrel has at mid-wall when the tank stands at its maximum (`limit`, a fraction), less what each
 * place has now. Negative where a place, mostly a knuckle in bending, is past it already.
 */
export const marginField = (now: readonly WallPlace[], limit: number): Field =>
  fieldOf(
    'margin',
    'strain',
    'fieldMargin',
    now.map(({ plastic }) => ({
      inside: limit - plastic.inside,
      mid: limit - plastic.mid,
      outside: limit - plastic.outside,
    })),
  );

function fieldOf(name: FieldName, quantity: Quantity, title: Key, values: Field['values']): Field {
  const all = values.flatMap((value) =>
    value === undefined ? [] : [value.inside, value.mid, value.outside],
  );
  return { name, quantity, title, values, least: Math.min(...all), most: Math.max(...all) };
}

/** Colour of a value, on the scale from least to most. */
export function colourOf(field: Field, value: number): string {
  const span = field.most - field.least;
  return hex(interpolateCividis(span > 0 ? (value - field.least) / span : 0.5));
}

/** "rgb(1, 2, 3)" is long for hundreds of patches. */
const hex = (rgb: string): string =>
  `#${(rgb.match(/\d+/g) ?? []).map((n) => Number(n).toString(16).padStart(2, '0')).join('')}`;
