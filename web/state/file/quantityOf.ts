/** The quantity of a number of the tank file, read off its key. */
import type { Quantity } from '@hoopwright/report/figure';
import { keyOf } from './unit.ts';

const ENDINGS: readonly (readonly [ending: RegExp, quantity: Quantity])[] = [
  [/(wall_mm|thickness_mm|Thickness_mm|wallMeasured_mm\[\d+\])$/, 'wall'],
  [/_mm$/, 'length'],
  [/_bar$/, 'pressure'],
  [/_MPa$/, 'stress'],
  [/(_L|_L_per_min)$/, 'volume'],
  [/_percent$/, 'strain'],
  [/_deg$/, 'angle'],
  [/_C$/, 'temperature'],
  [/minutes$/, 'minutes'],
  [/_kg$/, 'mass'],
];

export const quantityOf = (path: string): Quantity | undefined =>
  ENDINGS.find(([ending]) => ending.test(keyOf(path)))?.[1];
