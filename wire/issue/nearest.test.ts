import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { editDistance, nearest } from './nearest.ts';

test.each([
  // Textbook pairs of the Levenshtein distance, and one swap of neighbours, which counts once.
  ['kitten', 'sitting', 3],
  ['saturday', 'sunday', 3],
  ['barel', 'barrel', 1],
  ['brarel', 'barrel', 1],
  ['', 'wall', 4],
])('from %j to %j it takes %i slips', (from, to, slips) => {
  expect(editDistance(from, to)).toBe(slips);
});

test('the distance is the same both ways and nothing only for equal words', () => {
  const word = fc.string({ maxLength: 8, unit: fc.constantFrom('a', 'b', 'c') });
  fc.assert(
    fc.property(word, word, (one, other) => {
      expect(editDistance(one, other)).toBe(editDistance(other, one));
      expect(editDistance(one, other) === 0).toBe(one === other);
    }),
    { seed: 20260914, numRuns: 500 },
  );
});

test('the nearest word is offered, whatever its capitals, and none where none is near', () => {
  const words = ['barrel', 'heads', 'steel', 'straightFlange_mm'];
  expect(nearest('BARREL', words)).toBe('barrel');
  expect(nearest('straightflang_mm', words)).toBe('straightFlange_mm');
  expect(nearest('temperature', words)).toBeUndefined();
  expect(nearest('barrel', [])).toBeUndefined();
});

test('a word as long as a page is not compared', () => {
  expect(nearest('x'.repeat(1_000_000), ['barrel'])).toBeUndefined();
});
