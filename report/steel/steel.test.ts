import { believe } from '@hoopwright/core/steel';
import { expect, test } from 'vitest';
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
    'P9: not counted. it slipped',
  );
});
