import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Json, canonical } from './canonical.ts';

describe('canonical JSON', () => {
  it('writes the sample of RFC 8785 section 3.2.2 as section 3.2.3 prints it', () => {
    const sample: unknown = JSON.parse(String.raw`{
      "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
      "literals": [null, true, false]
    }`);
    expect(canonical(sample)).toBe(
      String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
    );
  });

  it('sorts keys by UTF-16 code units, as in the sample of RFC 8785 section 3.2.3', () => {
    const sample: Json = {
      '\u20ac': 'Euro Sign',
      '\r': 'Carriage Return',
      '\ufb33': 'Hebrew Letter Dalet With Dagesh',
      '1': 'One',
      '\ud83d\ude00': 'Emoji: Grinning Face',
      '\u0080': 'Control',
      '\u00f6': 'Latin Small Letter O With Diaeresis',
    };
    const order = [...canonical(sample).matchAll(/:"([^"]*)"/g)].map((hit) => hit[1]);
    expect(order).toEqual([
      'Carriage Return',
      'One',
      'Control',
      'Latin Small Letter O With Diaeresis',
      'Euro Sign',
      'Emoji: Grinning Face',
      'Hebrew Letter Dalet With Dagesh',
    ]);
  });

  it('gives back the same value when read, and the same text when written again', () => {
    fc.assert(
      fc.property(fc.jsonValue({ stringUnit: 'grapheme' }), (value) => {
        const text = canonical(value);
        expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(value)));
        expect(canonical(JSON.parse(text))).toBe(text);
      }),
    );
  });

  it('refuses what JSON cannot hold, and names the place', () => {
    expect(() => canonical({ a: [1.5, Number.NaN] })).toThrow('$.a[1] is NaN');
    expect(() => canonical({ a: undefined })).toThrow('$.a is undefined');
    expect(() => canonical(['\ud83d'])).toThrow('$[0] holds half a surrogate pair');
  });
});
