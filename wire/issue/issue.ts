/** What is wrong with somebody's file: where, what was wanted, what came, and what to do. */
export interface Issue {
  /** Place in the file, e.g. `heads.top.wall_mm` or `girths[1].at_mm`; `line 3, column 7` where the text is no JSON. */
  readonly path: string;
  readonly expected: string;
  readonly received: string;
  readonly suggestion?: string;
}

/** Path of an issue that concerns the file as a whole. */
export const WHOLE_FILE = 'the file';

/** Writes `heads.top.wall_mm` or `girths[1].at_mm` for the steps that lead there. */
export function pathText(steps: readonly PropertyKey[]): string {
  if (steps.length === 0) return WHOLE_FILE;
  return steps.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`;
    const name = /^[A-Za-z_$][\w$]*$/.test(String(step)) ? String(step) : JSON.stringify(String(step));
    return text === '' ? name : `${text}.${name}`;
  }, '');
}

/** One readable line: `barel: did you mean barrel? Received "barel", expected one of the keys …`. */
export function issueLine({ path, expected, received, suggestion }: Issue): string {
  if (suggestion === undefined) return `${path}: expected ${expected}; received ${received}`;
  const stop = /[.?!]$/.test(suggestion) ? '' : '.';
  return `${path}: ${suggestion}${stop} Received ${received}, expected ${expected}`;
}

const LONGEST = 40;

/** Shows a value that came, short enough for a line; never fails, whatever the value is. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'null';
  if (typeof value === 'string') return shortened(JSON.stringify(value));
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  if (typeof value === 'object') return 'an object';
  if (typeof value === 'function' || typeof value === 'symbol') return `a ${typeof value}`;
  // oxlint-disable-next-line typescript/no-base-to-string -- only numbers, bigints and booleans are left here
  return String(value);
}

const shortened = (text: string): string => (text.length <= LONGEST ? text : `${text.slice(0, LONGEST)}…"`);
