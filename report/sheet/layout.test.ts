import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { lettering, type Text } from './mark.ts';
import { boxOf, fitted, overlap, textWidth, wrapped } from './measure.ts';
import { settle } from './settle.ts';
import { spread } from './spread.ts';

test('labels that have room stay where they want to be', () => {
  expect(spread([10, 30, 70], 12)).toEqual([10, 30, 70]);
});

test('labels that would touch are moved apart evenly about the middle of their places', () => {
  expect(spread([20, 22], 12)).toEqual([15, 27]);
  expect(spread([0, 40, 41, 42, 90], 10)).toEqual([0, 31, 41, 51, 90]);
});

test('labels keep their order, their distance and, where there is room, their limits', () => {
  const wanted = fc.array(fc.double({ min: 0, max: 500, noNaN: true }), { minLength: 1, maxLength: 20 });
  fc.assert(
    fc.property(wanted, (places) => {
      const rising = [...places].sort((a, b) => a - b);
      const placed = spread(rising, 17, -20, 420);
      placed.slice(1).forEach((y, i) => expect(y - placed[i]).toBeGreaterThan(17 - 1e-9));
      expect(placed[0]).toBeGreaterThan(-20 - 1e-9);
      expect(placed[placed.length - 1]).toBeLessThan(420 + 1e-9);
    }),
  );
});

test('a box follows the anchor of its text, and turns with it', () => {
  const width = textWidth('27.0', 10);
  const start = boxOf(lettering([100, 50], '27.0', { size: 10 }));
  expect([start.left, start.right]).toEqual([100, 100 + width]);
  const end = boxOf(lettering([100, 50], '27.0', { size: 10, anchor: 'end' }));
  expect([end.left, end.right]).toEqual([100 - width, 100]);
  const upright = boxOf(lettering([100, 50], '27.0', { size: 10, anchor: 'middle', upright: true }));
  expect([upright.top, upright.bottom]).toEqual([50 - width / 2, 50 + width / 2]);
  expect(upright.right - upright.left).toBeLessThan(width);
});

test('every character has a width, the ones of the trade too', () => {
  expect(textWidth('Ø × ° ± → …', 10)).toBeGreaterThan(40);
});

test('a long text is wrapped between words and cut with an ellipsis', () => {
  const lines = wrapped('nobody stands near a tank under pressure', 10, 90);
  expect(lines.length).toBeGreaterThan(1);
  expect(lines.join(' ')).toBe('nobody stands near a tank under pressure');
  for (const line of lines) expect(textWidth(line, 10)).toBeLessThanOrEqual(90);
  expect(fitted('near the bottom weld', 10, 60)).toMatch(/^near.*…$/);
  expect(fitted('near', 10, 60)).toBe('near');
});

test('lettering goes to the first place where it meets nothing', () => {
  const at = (x: number): Text[] => [lettering([x, 20], 'label', { size: 10 })];
  const bounds = { left: 0, right: 300, top: 0, bottom: 100 };
  const [a, b] = settle([[at(10)], [at(20), at(100)]], bounds);
  expect([a.at[0], b.at[0]]).toEqual([10, 100]);
  const [outside] = settle([[at(290), at(40)]], bounds);
  expect(outside.at[0]).toBe(40);
  expect(overlap(boxOf(a), boxOf(b))).toBe(false);
});
