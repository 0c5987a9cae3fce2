/** Units that coupon files are written in, and their factors to the inside system (MPa, N, mm, 1, s). */
import { GRAVITY, MM_PER_INCH, MPA_PER_KSI, MPA_PER_PSI } from '@hoopwright/core/units';

export type Quantity = 'stress' | 'strain' | 'force' | 'length' | 'time';

export interface Unit {
  readonly quantity: Quantity;
  readonly name: string;
  readonly factor: number;
}

const NEWTON_PER_POUND = MPA_PER_PSI * MM_PER_INCH ** 2;

/** Names in lower case, first the one that is printed. */
const UNITS: Readonly<Record<Quantity, readonly (readonly [names: string, factor: number])[]>> = {
  stress: [
    ['MPa|N/mm2|N/mm²|N/mm^2|MN/m2|MN/m²|N/mm**2|newton/mm2', 1],
    ['ksi|kpsi', MPA_PER_KSI],
    ['psi|lbf/in2|lb/in2|lbf/in²|lbf/in^2', MPA_PER_PSI],
    ['GPa|kN/mm2|kN/mm²', 1000],
    ['kPa', 0.001],
    ['Pa|N/m2|N/m²', 1e-6],
    ['kgf/mm2|kgf/mm²|kp/mm2|kp/mm²|kg/mm2|kg/mm²', GRAVITY / 1000],
    ['bar', 0.1],
  ],
  strain: [
    ['fraction|1|-|mm/mm|m/m|in/in|in./in.|inch/inch|abs|ratio', 1],
    ['%|percent|pct|prozent|per cent|pourcent', 0.01],
    ['‰|permille|promille', 0.001],
    ['microstrain|µε|με|ue|µm/m|μm/m|um/m|ustrain|µstrain|μstrain|ppm', 1e-6],
  ],
  force: [
    ['N|newton|newtons', 1],
    ['kN|kilonewton', 1000],
    ['MN', 1e6],
    ['lbf|lb|lbs|pound|pounds|pound-force', NEWTON_PER_POUND],
    ['kip|kips|klbf', 1000 * NEWTON_PER_POUND],
    ['kgf|kp|kg', GRAVITY / 1000],
  ],
  length: [
    ['mm|millimeter|millimetre|millimeters|millimetres', 1],
    ['µm|μm|um|micron|microns|micrometer', 0.001],
    ['cm', 10],
    ['m|meter|metre', 1000],
    ['inch|in|in.|inches|"|zoll', MM_PER_INCH],
    ['mil|mils|thou', MM_PER_INCH / 1000],
  ],
  time: [
    ['s|sec|secs|second|seconds|sek|sekunden', 1],
    ['ms|msec', 0.001],
    ['min|mins|minute|minutes|minuten', 60],
    ['h|hr|hour|hours|std', 3600],
  ],
};

/** The unit of a quantity that a word names; capitals do not matter except that mN is not MN. */
export const unitNamed = (word: string, quantity: Quantity): Unit | undefined => {
  const wanted = word.trim();
  if (wanted === 'mN' || wanted === 'mPa') return undefined;
  const found = UNITS[quantity].find(([names]) =>
    names.split('|').some((name) => name.toLowerCase() === wanted.toLowerCase()),
  );
  return found && { quantity, name: found[0].split('|')[0], factor: found[1] };
};

/** Names to choose from, for messages. */
export const unitNames = (quantity: Quantity): string[] =>
  UNITS[quantity].map(([names]) => names.split('|')[0]);

const QUANTITIES: readonly Quantity[] = ['stress', 'strain', 'force', 'length', 'time'];

/** Any word that is a unit of something: rows of these stand under headers. */
export const isUnitWord = (word: string): boolean => {
  const bare = word.trim().replace(/^[[(<]|[\])>]$/g, '');
  return bare === '' || QUANTITIES.some((quantity) => unitNamed(bare, quantity));
};

/** Units to try, in this order, where a file names none. */
export const USUAL: Readonly<Record<Quantity, readonly string[]>> = {
  stress: ['MPa', 'ksi', 'psi', 'Pa', 'kPa', 'GPa'],
  strain: ['fraction', '%'],
  force: ['N', 'kN', 'lbf', 'kip'],
  length: ['mm', 'inch', 'µm', 'm'],
  time: ['s', 'min', 'ms'],
};
