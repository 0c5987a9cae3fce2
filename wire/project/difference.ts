/** What changed between two versions of a tank file, place by place, by meaning: "1.50" and "1.5" are one number. */
import { WHOLE_FILE } from '../issue/issue.ts';

export interface Difference {
  /** Place, e.g. `courses[0].wall_mm` or `girths["belt"].at_mm`. A place that is gone is named as it was before. */
  readonly path: string;
  /** Absent: the place is new. */
  readonly before?: unknown;
  /** Absent: the place is gone. */
  readonly after?: unknown;
}

/** Differences in the order of the file. Lists whose entries all have a name of their own are compared by name. */
export const difference = (before: unknown, after: unknown): Difference[] => compare([], before, after);

type Path = readonly Step[];
type Step = string | number | Named;
interface Named {
  readonly named: string;
}

const compare = (path: Path, before: unknown, after: unknown): Difference[] => {
  if (Array.isArray(before) && Array.isArray(after)) return compareLists(path, before, after);
  if (isObject(before) && isObject(after)) return compareObjects(path, before, after);
  return before === after ? [] : [{ path: text(path), before, after }];
};

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

type Members = Readonly<Record<string, unknown>>;

const compareObjects = (path: Path, before: Members, after: Members, step = (key: string): Step => key) =>
  [...new Set([...Object.keys(before), ...Object.keys(after)])].flatMap((key) => {
    const place = [...path, step(key)];
    if (!Object.hasOwn(after, key)) return [gone(place, before[key])];
    if (!Object.hasOwn(before, key)) return [come(place, after[key])];
    return compare(place, before[key], after[key]);
  });

const gone = (path: Path, before: unknown): Difference => ({ path: text(path), before });
const come = (path: Path, after: unknown): Difference => ({ path: text(path), after });

const compareLists = (path: Path, before: readonly unknown[], after: readonly unknown[]): Difference[] => {
  const [named, renamed] = [byName(before), byName(after)];
  if (named && renamed && sameOrder(named, renamed))
    return compareObjects(path, named, renamed, (key) => ({ named: key }));
  return compareInOrder(path, before, after);
};

/** The entries under their names, if each is an object with a name that no other has. */
const byName = (list: readonly unknown[]): Members | undefined => {
  const entries = list.map((item): [string, unknown] | undefined =>
    isObject(item) && typeof item.name === 'string' ? [item.name, item] : undefined,
  );
  const named = entries.filter((entry) => entry !== undefined);
  const whole = named.length === list.length && new Set(named.map(([name]) => name)).size === list.length;
  return whole ? Object.fromEntries(named) : undefined;
};

/** Courses stack in their order: where two have changed places, the names alone would hide it. */
const sameOrder = (before: Members, after: Members): boolean => {
  const kept = Object.keys(before).filter((name) => Object.hasOwn(after, name));
  const still = Object.keys(after).filter((name) => Object.hasOwn(before, name));
  return kept.every((name, i) => name === still[i]);
};

/** What is alike at the front and at the back stays put, so that one course more is one difference, not many. */
const compareInOrder = (path: Path, before: readonly unknown[], after: readonly unknown[]): Difference[] => {
  const shorter = Math.min(before.length, after.length);
  if (before.length === after.length) {
    return before.flatMap((item, i) => compare([...path, i], item, after[i]));
  }
  let front = 0;
  while (front < shorter && alike(before[front], after[front])) front += 1;
  let back = 0;
  while (back < shorter - front && alike(before.at(-1 - back), after.at(-1 - back))) back += 1;
  const changed = shorter - front - back;
  return [
    ...Array.from({ length: changed }, (_, i) => i + front).flatMap((i) =>
      compare([...path, i], before[i], after[i]),
    ),
    ...before
      .slice(front + changed, before.length - back)
      .map((item, i) => gone([...path, front + changed + i], item)),
    ...after
      .slice(front + changed, after.length - back)
      .map((item, i) => come([...path, front + changed + i], item)),
  ];
};

const alike = (a: unknown, b: unknown): boolean => compare([], a, b).length === 0;

const PLAIN_KEY = /^[A-Za-z_$][\w$]*$/;

const text = (path: Path): string =>
  path.length === 0
    ? WHOLE_FILE
    : path.reduce<string>((front, step) => front + stepText(step, front === ''), '');

const stepText = (step: Step, first: boolean): string => {
  if (typeof step === 'number') return `[${step}]`;
  if (typeof step === 'object') return `[${JSON.stringify(step.named)}]`;
  const key = PLAIN_KEY.test(step) ? step : JSON.stringify(step);
  return first ? key : `.${key}`;
};
