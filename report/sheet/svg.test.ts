import { expect, test } from 'vitest';
import { LINES, NARROW, WIDE } from './line.ts';
import { lettering, type Mark, type Scene, stroke } from './mark.ts';
import { px, toSvg } from './svg.ts';

const scene = (marks: Mark[]): Scene => ({ width: 1200, height: 848, title: 'A & B', marks, patches: [] });

test('wide and narrow lines stand in the ratio 2:1 of ISO 128', () => {
  expect(WIDE / NARROW).toBeCloseTo(2, 1);
});

test('each line type has the elements that its name says', () => {
  // ISO 128-2: 01 continuous, 02 dashed, 04 long-dashed dotted, 05 long-dashed double-dotted.
  const elements = (['outline', 'narrow', 'hidden', 'centre', 'initial'] as const).map((type) => [
    LINES[type].number,
    LINES[type].dashes.length,
  ]);
  expect(elements).toEqual([
    ['01.2', 0],
    ['01.1', 0],
    ['02.1', 2],
    ['04.1', 4],
    ['05.1', 6],
  ]);
});

test('a sheet prints at the size of A3, so that its scale holds on paper', () => {
  expect(toSvg(scene([]))).toContain('width="420mm" height="296.8mm" viewBox="0 0 1200 848"');
});

test('what people wrote is text in the drawing, never markup', () => {
  const svg = toSvg(scene([lettering([1, 2], '<script>"&</script>', { of: 'a"b' })]));
  expect(svg).not.toContain('<script>');
  expect(svg).toContain('&lt;script&gt;&quot;&amp;');
  expect(svg).toContain('<title>A &amp; B</title>');
});

test('a place that is no number is our fault and is not drawn', () => {
  const bad = scene([stroke('narrow', [[0, Number.NaN]])]);
  expect(() => toSvg(bad)).toThrow('must be a number, got NaN');
});

test('places are written short, and nothing is minus nothing', () => {
  expect([px(12.345), px(-0.001), px(100), px(0.5)]).toEqual(['12.35', '0', '100', '0.5']);
});
