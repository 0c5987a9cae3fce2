/**
 * Grades of austenitic sheet and bar: what the standards promise, what mills deliver, and how sure we are of each figure.
 * Where two sources differ both rows stand; nothing is averaged here.
 */
import { MINIMA, PHYSICAL, STRENGTHENED, TYPICAL } from './library.ts';
import type { Grade, Minimum, Physical, ProductForm, Strengthened, Typical } from './row.ts';

export const GRADES: readonly Grade[] = [
  '1.4301',
  '1.4306',
  '1.4307',
  '1.4404',
  '1.4311',
  'ASTM 304',
  'ASTM 304L',
  'ASTM 316L',
];

/** The grade a file names, or undefined: small letters, spaces and a missing "ASTM" do not matter. */
export const gradeNamed = (name: string): Grade | undefined => {
  const plain = (text: string): string => text.toUpperCase().replace(/[^0-9A-Z]|ASTM|TYPE|EN/g, '');
  return GRADES.find((grade) => plain(grade) === plain(name));
};

/** Every stated minimum of a grade in a form: two rows where sources differ, none where no figure is known. */
export const minimaOf = (grade: Grade, form: ProductForm): readonly Minimum[] =>
  MINIMA.filter((row) => row.grade === grade && (row.form === undefined || row.form === form));

export const typicalOf = (grade: Grade): readonly Typical[] => TYPICAL.filter((row) => row.grade === grade);

export const physicalOf = (grade: Grade): readonly Physical[] =>
  PHYSICAL.filter((row) => row.grades.includes(grade));

export const strengthenedOf = (grade: Grade): readonly Strengthened[] =>
  STRENGTHENED.filter((row) => row.grade === grade);

/** Weight fractions in per cent. */
export interface Composition {
  readonly C: number;
  readonly N: number;
  readonly Si: number;
  readonly Mn: number;
  readonly Cr: number;
  readonly Ni: number;
  readonly Mo: number;
}

/**
 * Md30: temperature (°C) at which 30 % strain turns half of the austenite to martensite. Higher: hardens more, and warm
 * water matters more. Angel, J. Iron Steel Inst. 177 (1954) 165, with Cr, Ni, Mo in per cent (from memory, high).
 */
export const md30 = (c: Composition): number =>
  413 - 462 * (c.C + c.N) - 9.2 * c.Si - 8.1 * c.Mn - 13.7 * c.Cr - 9.5 * c.Ni - 18.5 * c.Mo;
