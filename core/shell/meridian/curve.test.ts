import { expect, test } from 'vitest';
import { arc, type Curve, line, mirrored, quarterEllipse } from './curve.ts';

test('a quarter of a 2 : 1 ellipse is as long as the complete elliptic integral says', () => {
  // E(60°) = 1.2110560276 (Abramowitz & Stegun, table 17.2): the quarter of an ellipse of axes 2 and 1 is 2 E(60°).
  expect(quarterEllipse(250, 125).length).toBeCloseTo(250 * 1.2110560276, 6);
});

test('a circle is an ellipse: quarter of 2 pi r', () => {
  expect(quarterEllipse(217, 217).length).toBeCloseTo((Math.PI / 2) * 217, 9);
});

const curves: [string, Curve][] = [
  ['quarter ellipse', quarterEllipse(213, 71)],
  ['steep ellipse', quarterEllipse(88, 160)],
  ['arc', arc([12, 7], 61, 0.3, 1.2)],
  ['line', line([40, -90], [103, -21])],
  ['mirrored ellipse', mirrored(quarterEllipse(213, 71), 640)],
];

test.each(curves)('a %s is run by its arc length, along its tangent', (_, curve) => {
  const h = 1e-4 * curve.length;
  for (const f of [0.03, 0.31, 0.62, 0.97]) {
    const [a, p, b] = [f * curve.length - h, f * curve.length, f * curve.length + h].map((s) => curve.at(s));
    // A chord is shorter than its arc by h²/6R², here under 1e-6.
    expect(Math.hypot(b.r - a.r, b.z - a.z) / (2 * h)).toBeCloseTo(1, 5);
    expect(Math.atan2(b.z - a.z, b.r - a.r)).toBeCloseTo(p.angle, 4);
  }
});

test('an ellipse begins level at its pole and ends upright at its side', () => {
  const head = quarterEllipse(213, 71);
  const pole = head.at(0);
  [pole.r, pole.z + 71, pole.angle].forEach((value) => expect(value).toBeCloseTo(0, 12));
  const side = head.at(head.length);
  expect(side.r).toBeCloseTo(213, 10);
  expect(side.z).toBeCloseTo(0, 6);
  expect(side.angle).toBeCloseTo(Math.PI / 2, 6);
});

test('mirrored, a bottom head is run the other way at the top', () => {
  const head = quarterEllipse(213, 71);
  const top = mirrored(head, 640);
  const [a, b] = [head.at(80), top.at(head.length - 80)];
  expect([b.r, b.z, b.angle]).toEqual([a.r, 640 - a.z, Math.PI - a.angle]);
});
