import { assert, constantFrom, property, string } from 'fast-check';
import { describe, expect, test } from 'vitest';
import { figure, type LineFormat, LONGEST_LINE, readLine } from './line.ts';

const fields: LineFormat = { form: 'fields', separator: ';', channels: ['P1', null, 'G2'], decimal: ',' };
const pairs: LineFormat = { form: 'pairs', names: { P: 'P1', g: 'G2' } };
const json: LineFormat = { form: 'json', names: { p: 'P1', girth: 'G2' } };

describe('a line of fields', () => {
  test('gives each channel its field, with the decimal mark that was stated', () => {
    expect(readLine('12,3;ok;1257,10', fields)).toEqual({ ok: true, raw: { P1: 12.3, G2: 1257.1 } });
  });
  test('may leave a field empty: missing is not zero', () => {
    expect(readLine(';;1257,10', fields)).toEqual({ ok: true, raw: { G2: 1257.1 } });
    expect(readLine(';;', fields)).toEqual({ ok: false, why: 'no figure that is asked for' });
  });
  test.each([
    ['12,3;1257,10', '2 fields where 3 belong'],
    ['12.3;a;1257,10', 'field 1 is no number'],
    ['12,3;a;1257,1O', 'field 3 is no number'],
    ['\u0000\u0007;;\uFFFD', 'field 1 is no number'],
  ])('"%s" is no reading', (text, why) => {
    expect(readLine(text, fields)).toEqual({ ok: false, why });
  });
  test('parted by blanks may have several of them', () => {
    const blanks: LineFormat = { form: 'fields', separator: ' ', channels: ['P1', 'G2'] };
    expect(readLine('  7.25   1200.4 ', blanks)).toEqual({ ok: true, raw: { P1: 7.25, G2: 1200.4 } });
  });
});

test('pairs are read by their names, in any order, and others are passed over', () => {
  expect(readLine('g=1257.1 t=20.5 P=-0.4', pairs)).toEqual({ ok: true, raw: { P1: -0.4, G2: 1257.1 } });
  expect(readLine('t=20.5', pairs)).toMatchObject({ ok: false });
  expect(readLine('P=', pairs)).toEqual({ ok: false, why: 'P has no number' });
});

test('an object is read by its keys; null is missing, a text is no number, "__proto__" is nothing special', () => {
  expect(readLine('{"girth": 1257.1, "p": 3e1, "x": {}}', json)).toEqual({
    ok: true,
    raw: { P1: 30, G2: 1257.1 },
  });
  expect(readLine('{"girth": null, "p": 4.5}', json)).toEqual({ ok: true, raw: { P1: 4.5 } });
  expect(readLine('{"p": "4.5"}', json)).toMatchObject({ ok: false });
  expect(readLine('{"p": 1e999}', json)).toMatchObject({ ok: false });
  expect(readLine('[1, 2]', json)).toMatchObject({ ok: false });
  expect(readLine('{"__proto__": {"p": 1}}', json)).toMatchObject({ ok: false });
  expect(readLine('{"p": 1', json)).toMatchObject({ ok: false });
});

test('an endless line is no reading', () => {
  expect(readLine(`P=1${' '.repeat(LONGEST_LINE)}`, pairs)).toMatchObject({ ok: false });
});

test.each(['0x1F', '1e400', 'NaN', 'Infinity', '--3', '1.2.3', '1 2', '', '.', '1,5', '٣'])(
  '"%s" is no number',
  (text) => {
    expect(figure(text, '.')).toBeUndefined();
  },
);

test('whatever a line holds, it is read or refused, never thrown over', () => {
  assert(
    property(string({ unit: 'binary', maxLength: 60 }), constantFrom(fields, pairs, json), (text, format) => {
      const read = readLine(text, format);
      if (read.ok) expect(Object.values(read.raw).every(Number.isFinite)).toBe(true);
      else expect(read.why).not.toBe('');
    }),
    { seed: 20_260_704, numRuns: 500 },
  );
});
