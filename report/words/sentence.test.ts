import { expect, test } from 'vitest';
import { USUAL_MANNER } from '../figure/manner.ts';
import { ENGLISH } from './english.ts';
import { cut, sentence } from './sentence.ts';

test('placeholders are filled, each with its own text', () => {
  const filling = { length: 'A', wall: 'B' };
  expect(sentence(USUAL_MANNER, 'headSkirt', filling)).toBe('skirt A × B');
});

test('a placeholder that was not filled is our fault and is named', () => {
  const wrong = { length: 'A' } as unknown as { length: string; wall: string };
  expect(() => sentence(USUAL_MANNER, 'headSkirt', wrong)).toThrow('"headSkirt" wants {wall}');
});

test('a sentence is cut at its placeholders and nothing is lost', () => {
  for (const key of Object.keys(ENGLISH) as (keyof typeof ENGLISH)[]) {
    const pieces = cut(USUAL_MANNER, key);
    expect(pieces.map((p) => ('text' in p ? p.text : `{${p.hole}}`)).join('')).toBe(ENGLISH[key]);
  }
});

test('no sentence begins or ends with a space, as a piece of another would', () => {
  const glue = Object.entries(ENGLISH).filter(([, text]) => text !== text.trim() || text.includes('  '));
  expect(glue).toEqual([]);
});
