import { believe, GRADES } from '@hoopwright/core/steel';
import { expect, test } from 'vitest';
import { booksText } from './books.ts';
import { rollingText } from './rolling.ts';
import { accountText } from './steelText.ts';
import { steelCurveSvg } from './steelCurve.ts';
import { steelText } from './steelText.ts';

const plate = { grade: '1.4307', form: 'cold-rolled', thickness: 2, wall: 2, radius: 301 } as const;
const nothing = { certificates: [], coupons: [], seams: [], walls: [], rolling: [], trials: [] };
const belief = believe({ plate, ...nothing }, { seed: 11, draws: 90 });

test('the curve is drawn the same twice, with numbers throughout and its name made safe', () => {
  const svg = steelCurveSvg('a <tank> & more', belief);
  expect(steelCurveSvg('a <tank> & more', belief)).toBe(svg);
  expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  expect(svg).toContain('a &lt;tank&gt; &amp; more');
});

test('the text names the middle and both ends of the biaxial factor, and what was assumed', () => {
  const lines = steelText({ tank: 'a tank', wall: 2, belief });
  expect(lines.find((text) => text.startsWith('Biaxial factor'))).toMatch(
    /^Biaxial factor 0\.9\d+ \(0\.9\d+ to 1\.0\d+\)\.$/,
  );
  expect(lines.some((text) => text.startsWith('Assumed, biaxial'))).toBe(true);
  expect(lines.join()).not.toMatch(/posterior|prior|ensemble|emulator/);
});

test('a piece that is left out says why', () => {
  expect(accountText({ kind: 'excluded', what: 'coupon', name: 'P9', reason: 'it slipped' })).toBe(
    'P9: not counted: it slipped.',
  );
});

test('the plain finding about rolling says what it adds, and whether it explains a stiffer tank', () => {
  const said = {
    thickness_mm: 2,
    insideDiameter_mm: 600,
    surface_percent: 0.45,
    average_percent: 0.17,
    stiffer_percent: 0.9,
    at_percent: 3,
    outOfRange_percent: 5.9,
    explains: false,
    noted: true,
  };
  expect(rollingText(said)).toMatch(
    /^Rolling 2 mm plate to 600 mm adds 0\.45 % at the surface, 0\.17 % on average: it cannot explain a stiffer tank\./,
  );
  expect(rollingText({ ...said, explains: true, noted: false })).toMatch(/it can explain .* No rolling note/);
});

test('of a grade every least and typical value is told with its source; where sources differ, both', () => {
  const strip = booksText('1.4307', 'hot-rolled');
  expect(strip.filter((text) => text.startsWith('At least'))).toHaveLength(2);
  expect(strip.some((text) => text.startsWith('Sources differ'))).toBe(true);
  for (const text of strip.slice(1).filter((one) => !one.startsWith('Sources')))
    expect(text).toMatch(/; (seen in print|from memory, (high|middling) confidence)\)\.$/);
  for (const grade of GRADES) expect(booksText(grade, 'cold-rolled').length, grade).toBeGreaterThan(4);
});
