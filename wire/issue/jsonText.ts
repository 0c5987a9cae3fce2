/**
 * JSON text to value, or to issues with line and column. The text is walked before the engine reads it, because the
 * engines word and place their errors differently and take the last of two equal keys without a word.
 */
import type { Issue } from './issue.ts';
import { shown } from './issue.ts';

export type JsonText =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly issues: readonly Issue[] };

/** Files of this trade nest five or six deep; what nests deeper than this is an accident. */
const DEEPEST = 64;

class Slip {
  readonly at: number;
  readonly expected: string;
  readonly suggestion: string | undefined;
  constructor(at: number, expected: string, suggestion?: string) {
    this.at = at;
    this.expected = expected;
    this.suggestion = suggestion;
  }
}

/** Reads JSON text strictly (RFC 8259); a byte order mark in front is passed over. */
export function readJson(given: string): JsonText {
  const text = given.startsWith('\uFEFF') ? given.slice(1) : given;
  const twice: Slip[] = [];
  try {
    walkText(text, twice);
    if (twice.length === 0) return { ok: true, value: JSON.parse(text) };
    return { ok: false, issues: twice.map((slip) => issueOf(slip, text)) };
  } catch (slip) {
    if (!(slip instanceof Slip)) throw slip;
    return { ok: false, issues: [issueOf(slip, text)] };
  }
}

function issueOf({ at, expected, suggestion }: Slip, text: string): Issue {
  const before = text.slice(0, at).split('\n');
  const path = `line ${before.length}, column ${before[before.length - 1].length + 1}`;
  const rest = text.slice(at).match(/^(?:"[^"\n]*"?|[\w.+-]+|[^\s])/)?.[0];
  const received =
    rest === undefined
      ? 'the end of the text'
      : rest.startsWith('"')
        ? shown(rest.slice(1).replace(/"$/, ''))
        : rest.slice(0, 40);
  return { path, expected, received, ...(suggestion === undefined ? {} : { suggestion }) };
}

const DECIMAL_POINT = 'a number has a decimal point, not a comma';

const SPACE = /[ \t\n\r]*/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
// eslint-disable-next-line no-control-regex -- JSON forbids control characters in text
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
const WORD = /[A-Za-z_$][\w$]*/y;

/** Walks the text, throws the first Slip of syntax, collects keys that stand twice. */
function walkText(text: string, twice: Slip[]): void {
  let at = 0;

  const take = (pattern: RegExp): string | undefined => {
    pattern.lastIndex = at;
    const match = pattern.exec(text)?.[0];
    if (match !== undefined) at += match.length;
    return match;
  };
  const peek = (): string | undefined => {
    take(SPACE);
    return text[at];
  };

  const string = (): string => {
    const start = at;
    const literal = take(STRING);
    if (literal === undefined) throw new Slip(start, 'text that ends with a quote on the same line');
    return JSON.parse(literal);
  };

  const number = (): void => {
    const start = at;
    const digits = take(NUMBER);
    if (digits === undefined) throw new Slip(start, 'a number', 'begin with a digit, as in 0.5');
    if (/[\w.]/.test(text[at] ?? '')) throw new Slip(start, 'a bare number', 'the unit is part of the key');
  };

  const word = (): void => {
    const start = at;
    const name = take(WORD);
    if (name === 'true' || name === 'false' || name === 'null') return;
    const suggestion =
      name === undefined ? undefined : 'text stands in double quotes; NaN and Infinity are no values';
    throw new Slip(start, 'a value', suggestion);
  };

  const members = (close: string, member: () => void): void => {
    at++;
    if (peek() === close) {
      at++;
      return;
    }
    for (;;) {
      take(SPACE);
      member();
      const next = peek();
      at++;
      if (next === close) return;
      if (next !== ',') throw new Slip(at - 1, `a comma or ${close}`);
      if (peek() === close) throw new Slip(at, 'another entry', `remove the comma before ${close}`);
    }
  };

  const object = (depth: number): void => {
    const keys = new Set<string>();
    members('}', () => {
      const start = at;
      if (/\d/.test(text[at] ?? '')) throw new Slip(at, 'a key in double quotes', DECIMAL_POINT);
      if (text[at] !== '"') throw new Slip(at, 'a key in double quotes');
      const key = string();
      if (keys.has(key)) twice.push(new Slip(start, 'each key once', `keep one of the two ${shown(key)}`));
      keys.add(key);
      if (peek() !== ':') throw new Slip(at, 'a colon after the key');
      at++;
      value(depth + 1);
    });
  };

  const value = (depth: number): void => {
    const first = peek();
    if (depth > DEEPEST) throw new Slip(at, `at most ${DEEPEST} levels`);
    if (first === '{') object(depth);
    else if (first === '[') members(']', () => value(depth + 1));
    else if (first === '"') string();
    else if (first !== undefined && /[-+.\d]/.test(first)) number();
    else word();
  };

  value(0);
  if (peek() !== undefined) throw new Slip(at, 'the end of the text');
}
