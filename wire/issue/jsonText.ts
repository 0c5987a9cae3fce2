/**
 * JSON text to value, or to issues with line and column. The text is walked before the engine reads it, because the
 * engines word and place their errors differently and take the last of two equal keys without a word.
 */
import type { Issue } from './issue.ts';
import { shown } from './issue.ts';

export type JsonText =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly issues: readonly Issue[] };

/** Reads JSON text strictly (RFC 8259); a byte order mark in front is passed over. */
export function readJson(given: string): JsonText {
  const text = given.startsWith('\uFEFF') ? given.slice(1) : given;
  const walk = new Walk(text);
  try {
    walk.whole();
  } catch (slip) {
    if (!(slip instanceof Slip)) throw slip;
    return { ok: false, issues: [issueOf(slip, text)] };
  }
  if (walk.twice.length === 0) return { ok: true, value: JSON.parse(text) };
  return { ok: false, issues: walk.twice.map((slip) => issueOf(slip, text)) };
}

/** Where the text is no JSON. Thrown inside this file only. */
class Slip {
  readonly at: number;
  readonly expected: string;
  readonly suggestion: string;
  constructor(at: number, expected: string, suggestion: string) {
    this.at = at;
    this.expected = expected;
    this.suggestion = suggestion;
  }
}

function issueOf({ at, expected, suggestion }: Slip, text: string): Issue {
  const lines = text.slice(0, at).split('\n');
  return {
    path: `line ${lines.length}, column ${lines[lines.length - 1].length + 1}`,
    expected,
    received: wordAt(text, at),
    suggestion,
  };
}

/** The word, number, quoted text or sign that stands at a place. */
function wordAt(text: string, at: number): string {
  const word = /^(?:"[^"\n]*"?|[\w.+-]+|\S)/u.exec(text.slice(at, at + 200))?.[0];
  if (word === undefined) return at < text.length ? 'a blank' : 'the end of the text';
  return word.startsWith('"') ? shown(word.slice(1).replace(/"$/, '')) : word.slice(0, 40);
}

/** Files of this trade nest five or six deep; what nests deeper than this is an accident. */
const DEEPEST = 64;
const DECIMAL_POINT = 'a number has a decimal point, not a comma';
const QUOTES = 'text stands in double quotes; NaN and Infinity are no values';

const SPACE = /[ \t\n\r]*/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
// eslint-disable-next-line no-control-regex -- JSON forbids control characters in text
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
const WORD = /[A-Za-z_$][\w$]*/y;

/** Goes through the text once; throws the first Slip and collects keys that stand twice. */
class Walk {
  readonly twice: Slip[] = [];
  private readonly text: string;
  private at = 0;

  constructor(text: string) {
    this.text = text;
  }

  whole(): void {
    this.value(0);
    if (this.next() !== undefined)
      throw new Slip(this.at, 'the end of the text', 'the file is one value: take out what follows it');
  }

  private take(pattern: RegExp): string | undefined {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text)?.[0];
    if (found !== undefined) this.at += found.length;
    return found;
  }

  /** The next sign after blanks, undefined at the end. */
  private next(): string | undefined {
    this.take(SPACE);
    return this.text[this.at];
  }

  private value(depth: number): void {
    const first = this.next();
    if (depth > DEEPEST) throw new Slip(this.at, `at most ${DEEPEST} levels`, 'is a bracket repeated?');
    if (first === '{') this.object(depth);
    else if (first === '[') this.entries(']', () => this.value(depth + 1));
    else if (first === '"') this.quoted();
    else if (first !== undefined && /[-+.\d]/.test(first)) this.number();
    else this.word();
  }

  private object(depth: number): void {
    const keys = new Set<string>();
    this.entries('}', () => {
      const start = this.at;
      const key = this.key();
      if (keys.has(key))
        this.twice.push(new Slip(start, 'each key once', `keep one of the two ${shown(key)}`));
      keys.add(key);
      if (this.next() !== ':') throw new Slip(this.at, 'a colon after the key', 'write "key": value');
      this.at++;
      this.value(depth + 1);
    });
  }

  private key(): string {
    const first = this.text[this.at] ?? '';
    if (first === '"') return this.quoted();
    throw new Slip(
      this.at,
      'a key in double quotes',
      /\d/.test(first) ? DECIMAL_POINT : 'write "key": value',
    );
  }

  private entries(close: string, entry: () => void): void {
    this.at++;
    if (this.next() === close) {
      this.at++;
      return;
    }
    for (;;) {
      this.take(SPACE);
      entry();
      const sign = this.next();
      if (sign !== close && sign !== ',')
        throw new Slip(
          this.at,
          `a comma or ${close}`,
          `end this with ${close}, or put a comma before the next`,
        );
      this.at++;
      if (sign === close) return;
      if (this.next() === close) throw new Slip(this.at, 'another entry', `remove the comma before ${close}`);
    }
  }

  private quoted(): string {
    const start = this.at;
    const literal = this.take(STRING);
    if (literal === undefined)
      throw new Slip(start, 'text in double quotes', 'end it on the same line; write \\\\ for a backslash');
    return JSON.parse(literal);
  }

  private number(): void {
    const start = this.at;
    if (this.take(NUMBER) === undefined) throw new Slip(start, 'a number', 'begin with a digit, as in 0.5');
    if (!/[\w.]/.test(this.text[this.at] ?? '')) return;
    this.at = start;
    throw new Slip(start, 'a bare number', 'the unit is part of the key');
  }

  private word(): void {
    const start = this.at;
    const name = this.take(WORD);
    if (name === 'true' || name === 'false' || name === 'null') return;
    throw new Slip(start, 'a value', name === undefined ? 'give a value here' : QUOTES);
  }
}
