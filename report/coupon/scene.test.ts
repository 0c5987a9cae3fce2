import { type CouponTest, evaluateCoupon, flowOf, madeCoupon } from '@hoopwright/core/steel';
import { describe, expect, test } from 'vitest';
import { toSvg } from '../sheet/svg.ts';
import { couponScene } from './scene.ts';
import { couponTable } from './table.ts';

const seeded = (seed: number) => () => {
  seed = (seed * 48271) % 2147483647;
  return seed / 2147483647;
};
const { test: made } = madeCoupon(
  {
    flow: flowOf({ law: 'swift', K: 1313, n: 0.457, e0: 0.0289 }),
    young: 196_500,
    rate: 2.3e-4,
    points: { elastic: 44, yield: 51, plastic: 83, neck: 17 },
    neck: { strain: 0.083, left: 0.71 },
    noise: { strain: 2e-6, stress: 0.3 },
  },
  seeded(29),
);
const result = evaluateCoupon(made);
const slipped: CouponTest = { ...made, strain: made.strain.map((e) => (e > 0.03 ? e + 0.02 : e)) };

const textsOf = (svg: string) => [...svg.matchAll(/<tspan[^>]*>([^<]*)/g)].map(([, text]) => text);

describe('the drawing of a test', () => {
  const svg = toSvg(couponScene({ name: 'plate 7', test: made, result }));

  test('names the points of ISO 6892-1 with their figures', () => {
    const texts = textsOf(svg);
    expect(texts).toContain(`Rp0.2 ${result.proof02!.toFixed(0)} MPa`);
    expect(texts).toContain(
      `Rm ${result.strength!.toFixed(0)} MPa, Ag ${(100 * result.uniform!).toFixed(2)} %`,
    );
    expect(texts).toContain(`A ${(100 * result.elongation!).toFixed(2)} %`);
    expect(texts).toContain('may be used');
  });

  test('draws the offset lines parallel to the elastic part', () => {
    const slope = (of: string) => {
      const [, x1, y1, x2, y2] = new RegExp(
        `data-of="${of}"[^>]* d="M([\\d.]+) ([\\d.]+)L([\\d.]+) ([\\d.]+)"`,
      ).exec(svg)!;
      return (Number(y1) - Number(y2)) / (Number(x2) - Number(x1));
    };
    expect(slope('Rp0.2 line')).toBeCloseTo(slope('Rp1.0 line'), 0);
  });

  test('is the same twice, and in ink on paper only', () => {
    expect(toSvg(couponScene({ name: 'plate 7', test: made, result }))).toBe(svg);
    expect(svg).not.toContain('#0a5ad4');
  });

  test('says nothing of invention unless told', () => {
    expect(svg).not.toContain('INVENTED');
    expect(toSvg(couponScene({ name: 'x', test: made, result, invented: true }))).toContain('INVENTED DATA');
  });
});

test('what lies beyond a slip is hatched', () => {
  const slip = evaluateCoupon(slipped);
  const svg = toSvg(couponScene({ name: 'slipped', test: slipped, result: slip }));
  expect(svg).toContain('data-of="not trusted"');
  expect(textsOf(svg).some((text) => text.startsWith('not used'))).toBe(true);
});

test('a name with angle brackets and a test of a handful of points are drawn', () => {
  const few = { strain: [0, 0.001, 0.01, 0.1, 0.2], stress: [0, 190, 280, 400, 470] };
  const svg = toSvg(couponScene({ name: '<b>', test: few, result: evaluateCoupon(few) }));
  expect(svg).toContain('&lt;b&gt;');
  expect(svg).not.toMatch(/NaN|Infinity/);
});

test('the table sets figures under each other, and a dash for what was not measured', () => {
  const lines = couponTable([
    { name: 'plate 7', result },
    { name: 'slipped', result: evaluateCoupon(slipped) },
  ]);
  expect(lines).toHaveLength(3);
  expect(lines[1].indexOf(result.proof02!.toFixed(1)) + 5).toBe(lines[0].indexOf('Rp0.2 MPa') + 9);
  expect(lines[2]).toMatch(/–\s+–.*not used$/);
});
