/** Numbers that can hardly be meant: issues that name `--as-given`, or notes where that was said. */
import { type Issue, pathText } from '../../issue/issue.ts';
import { quantityAt } from '../format/quantity.ts';

/** How the person says that odd values are meant as they stand. */
export const AS_GIVEN = '--as-given';

/** One issue for each number outside its plausible range, wherever it stands; numbers of the wrong sign are not repeated. */
export const implausible = (value: unknown): Issue[] => oddIn(value, [], []);

/** A value that holds itself is not walked for ever: what is above is not entered again. */
function oddIn(value: unknown, path: readonly PropertyKey[], above: readonly object[]): Issue[] {
  if (typeof value === 'number') return oddNumber(value, path);
  if (typeof value !== 'object' || value === null || above.includes(value)) return [];
  const within = [...above, value];
  return Array.isArray(value)
    ? value.flatMap((entry, place) => oddIn(entry, [...path, place], within))
    : Object.entries(value).flatMap(([key, entry]) => oddIn(entry, [...path, key], within));
}

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
