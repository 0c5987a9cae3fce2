/** Numbers that can hardly be meant: issues that name `--as-given`, or notes where that was said. */
import { type Issue, pathText } from '../issue/issue.ts';
import { quantityAt } from './quantity.ts';

/** How the person says that odd values are meant as they stand. */
export const AS_GIVEN = '--as-given';

/** One issue for each number outside its plausible range, wherever it stands; numbers of the wrong sign are not repeated. */
export function implausible(value: unknown, path: readonly PropertyKey[] = []): Issue[] {
  if (typeof value === 'number') return oddNumber(value, path);
  if (typeof value !== 'object' || value === null || path.length > DEEPEST) return [];
  return Array.isArray(value)
    ? value.flatMap((entry, place) => implausible(entry, [...path, place]))
    : Object.entries(value).flatMap(([key, entry]) => implausible(entry, [...path, key]));
}

/** A value that refers to itself must not be walked for ever; the structure check refuses it. */
const DEEPEST = 12;

function oddNumber(value: number, path: readonly PropertyKey[]): Issue[] {
  const quantity = quantityAt(path);
  if (quantity === undefined || !Number.isFinite(value)) return [];
  const { low, high, sign, means, why } = quantity;
  if (value >= low && value <= high) return [];
  if ((sign === 'positive' && value <= 0) || (sign === 'not negative' && value < 0)) return [];
  return [odd(pathText(path), `${low} to ${high} (${means}; ${why})`, String(value))];
}

/** An issue that the person may wave through. */
export const odd = (path: string, expected: string, received: string): Issue => ({
  path,
  expected,
  received,
  suggestion: `check the value and its unit; if it is meant so, say ${AS_GIVEN}`,
});

/** The same finding as a note, once the person has said that it is meant so. */
export const takenAsGiven = ({ path, expected, received }: Issue): string =>
  `${path} is ${received}, taken as given; plausible would be ${expected}`;
