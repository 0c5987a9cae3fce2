import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { readJson } from './jsonText.ts';

const issuesOf = (text: string) => {
  const read = readJson(text);
  return read.ok ? [] : read.issues;
};

test('whatever the engine writes as JSON is read as the same value', () => {
  fc.assert(
    fc.property(fc.jsonValue({ maxDepth: 5 }), fc.constantFrom(0, 2), (value, indent) => {
      const text = JSON.stringify(value, null, indent);
      expect(readJson(text)).toEqual({ ok: true, value: JSON.parse(text) });
    }),
    { seed: 20260912, numRuns: 500 },
  );
});

test('a text with one sign changed is refused exactly where the engine refuses it', () => {
  const text = '{ "a": [1.5, -2e3, true, null], "b": { "c": "x\\n\\u00e9", "d": {} } }';
  // oxlint-disable-next-line typescript/no-misused-spread -- code points are meant
  const signs = [...'{}[]",:.-+eE01\\nt x\u0007'];
  const place = fc.nat(text.length - 1);
  fc.assert(
    fc.property(place, fc.constantFrom(...signs), fc.nat(2), (at, sign, cut) => {
      const changed = text.slice(0, at) + sign + text.slice(at + cut);
      const twice = issuesOf(changed).some(({ expected }) => expected === 'each key once');
      expect(readJson(changed).ok || twice).toBe(engineReads(changed));
    }),
    { seed: 20260913, numRuns: 4000 },
  );
});

function engineReads(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

test('an issue names the line and the column, both counted from one', () => {
  expect(issuesOf('{\n  "a": 1,\n  "b": 2,5\n}')).toEqual([
    {
      path: 'line 3, column 10',
      expected: 'a key in double quotes',
      received: '5',
      suggestion: 'a number has a decimal point, not a comma',
    },
  ]);
});

test.each([
  ['{"a":1,}', 'line 1, column 8', 'remove the comma before }'],
  ['[1,2,]', 'line 1, column 6', 'remove the comma before ]'],
  ['{"a": NaN}', 'line 1, column 7', 'text stands in double quotes; NaN and Infinity are no values'],
  ['{"a": 2mm}', 'line 1, column 7', 'the unit is part of the key'],
  ['{"a": .5}', 'line 1, column 7', 'begin with a digit, as in 0.5'],
  ['{"a": 1, "a": 2}', 'line 1, column 10', 'keep one of the two "a"'],
])('%s is refused at %s: %s', (text, path, suggestion) => {
  expect(issuesOf(text)[0]).toMatchObject({ path, suggestion });
});

test('a text that stops too early says so', () => {
  expect(issuesOf('{"a": [1, 2')).toMatchObject([
    { path: 'line 1, column 12', received: 'the end of the text' },
  ]);
  expect(issuesOf('')).toMatchObject([{ path: 'line 1, column 1', received: 'the end of the text' }]);
});

test('a byte order mark in front is passed over', () => {
  expect(readJson('\uFEFF{"a": 3}')).toEqual({ ok: true, value: { a: 3 } });
});

test('a text that nests a hundred thousand deep is an issue, not an overflow', () => {
  expect(issuesOf('['.repeat(100_000))).toMatchObject([{ expected: 'at most 64 levels' }]);
});
