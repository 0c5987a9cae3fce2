import { describe, expect, test } from 'vitest';
import type { Tank } from '../../tank/tank.ts';
import { meridianOf } from './meridian.ts';
import { type Mesh, meshOf } from './mesh.ts';
import { EVEN, EVERYTHING, PLATE } from '../specimen.ts';

const meshed = (tank: Tank, elements = 60, split = 1): Mesh => meshOf(meridianOf(tank), elements, split);
const spineOf = (mesh: Mesh) =>
  mesh.pieces.filter(({ span }) => !['baffle', 'skirt', 'link'].includes(span.part));

describe('the tree of elements', () => {
  const mesh = meshed(EVERYTHING);

  test('every node but the root has one parent, of higher number', () => {
    const parents = new Map<number, number>();
    for (const { from, to } of mesh.pieces) {
      expect(to).toBeGreaterThan(from);
      expect(parents.has(from)).toBe(false);
      parents.set(from, to);
    }
    expect(parents.size).toBe(mesh.nodes - 1);
    expect(parents.has(mesh.nodes - 1)).toBe(false);
  });

  test('the meridian runs from pole to pole without a gap', () => {
    const spine = spineOf(mesh);
    expect(spine[0].a.r).toBeCloseTo(0, 9);
    expect(spine[spine.length - 1].b.r).toBeCloseTo(0, 9);
    spine.slice(1).forEach(({ a }, i) => {
      expect(Math.hypot(a.r - spine[i].b.r, a.z - spine[i].b.z)).toBeLessThan(1e-6);
    });
  });

  test('parts stand where the tank has them', () => {
    const ends = (part: string) =>
      mesh.pieces.filter(({ span }) => span.part === part).flatMap(({ a, b }) => [a, b]);
    const range = (values: number[]): [number, number] => [Math.min(...values), Math.max(...values)];
    const [foot, joint] = range(ends('skirt').map(({ z }) => z));
    expect([foot, joint]).toEqual([-83, 0]);
    const [edge, root] = range(ends('baffle').map(({ r }) => r));
    expect(edge).toBeCloseTo(431 / 2 - 47, 9);
    // The outermost metal, half its thickness deep, is part of the wall.
    expect(root).toBeCloseTo(431 / 2 - 0.8, 9);
    expect(range(ends('baffle').map(({ z }) => z))).toEqual([190, 190]);
    const seams = mesh.pieces.filter(({ span }) => span.seam === 0);
    expect(range(seams.flatMap(({ a, b }) => [a.z, b.z]))).toEqual([298.5, 307.5]);
  });
});

test('twice as fine, every element is halved: the old nodes stay where they are', () => {
  const [coarse, fine] = [meshed(EVERYTHING, 40), meshed(EVERYTHING, 40, 2)];
  const nodes = (mesh: Mesh): [number, number][] => mesh.pieces.map(({ b }) => [b.r, b.z]);
  const all = nodes(fine);
  expect(fine.pieces.length).toBe(2 * coarse.pieces.length);
  for (const [r, z] of nodes(coarse))
    expect(Math.min(...all.map(([x, y]) => Math.hypot(x - r, y - z)))).toBeLessThan(1e-6);
});

describe('halves', () => {
  test('a tank that is the same upside down is cut at mid-height', () => {
    const mesh = meshed(EVEN);
    expect(mesh.half).toBe(true);
    expect(mesh.pieces[mesh.pieces.length - 1].b.z).toBeCloseTo(617 / 2, 9);
  });

  const head = EVEN.heads.top;
  const odd: [string, Partial<Tank>][] = [
    [
      'heads of two depths',
      { heads: { ...EVEN.heads, top: { ...head, shape: { kind: 'semi-ellipsoidal', depth: 90 } } } },
    ],
    ['heads of two walls', { heads: { ...EVEN.heads, top: { ...head, wall: 1.9 } } }],
    ['one head harder', { heads: { ...EVEN.heads, top: { ...head, formingStrain: 0.08 } } }],
    ['one head measured', { heads: { ...EVEN.heads, top: { ...head, measuredWalls: [1.8, 1.6] } } }],
    ['one boss', { heads: { ...EVEN.heads, top: { ...head, boss: { diameter: 60, thickness: 7 } } } }],
    ['one flange', { heads: { ...EVEN.heads, top: { ...head, straightFlange: 9 } } }],
    ['a water column', { stand: { axis: 'upright', gauge: 300 } }],
    ['a skirt', { skirts: [{ end: 'top', length: 70, wall: 2, steel: PLATE }] }],
    ['a baffle', { baffles: [{ at: 308.5, width: 30, thickness: 2, steel: PLATE }] }],
    ['a girth seam', { girthSeams: [{ at: 200, width: 8, steel: PLATE }] }],
    [
      'two courses',
      {
        courses: [
          { length: 300, wall: 2.1, steel: PLATE },
          { length: 317, wall: 2.1, steel: PLATE },
        ],
      },
    ],
  ];
  test.each(odd)('a tank with %s is solved whole', (_, change) => {
    expect(meshed({ ...EVEN, ...change }).half).toBe(false);
  });

  test('lying changes nothing for the shell: no head of water acts', () => {
    expect(meshed({ ...EVEN, stand: { axis: 'lying', gauge: 300 } }).half).toBe(true);
  });

  test('a tank solved whole gets as fine a mesh as one that is cut', () => {
    const half = meshed(EVEN).pieces.length;
    const whole = meshed({ ...EVEN, stand: { axis: 'upright', gauge: 300 } }).pieces.length;
    expect(Math.abs(whole - 2 * half)).toBeLessThan(5);
  });
});

describe('walls', () => {
  const measured = { ...EVEN.heads.top, measuredWalls: [1.5, 1.6, 2] };
  const mesh = meshed({ ...EVEN, heads: { top: measured, bottom: measured } }, 80);
  const head = mesh.pieces.filter(({ span }) => span.part === 'bottom head');

  test('measured walls run straight from place to place, pole to tangent line', () => {
    expect(head[0].wall).toBeCloseTo(1.5, 2);
    expect(head[head.length - 1].wall).toBeCloseTo(2, 2);
    const run = head.reduce((sum, { a, b }) => sum + Math.hypot(b.r - a.r, b.z - a.z), 0);
    let s = 0;
    const middle = head.find(({ a, b }) => (s += Math.hypot(b.r - a.r, b.z - a.z)) > run / 2);
    expect(middle?.wall).toBeCloseTo(1.6, 2);
  });

  test('every wall is flush inside: the mid-surface lies half the difference outside the line', () => {
    for (const { wall, offset } of head) expect(offset).toBeCloseTo((wall - 2.1) / 2, 12);
  });

  test('the straight flange has the wall measured at the tangent line', () => {
    const flange = mesh.pieces.find(({ span }) => span.part === 'barrel');
    expect(flange?.wall).toBe(2);
  });

  test('a boss stands at its thickness out to its edge, whatever was measured and formed', () => {
    const bossed = { ...measured, boss: { diameter: 71, thickness: 8.3 }, formingStrain: 0.1 };
    const pieces = meshed({ ...EVEN, heads: { top: bossed, bottom: bossed } }, 80).pieces.filter(
      ({ span }) => span.part === 'bottom head',
    );
    for (const { a, b, wall, span } of pieces) {
      const inside = 0.5 * (a.r + b.r) < 35.5;
      if (inside) expect(wall).toBe(8.3);
      else expect(wall).toBeLessThan(2.001);
      expect(span.formed).toBe(inside ? undefined : 0.1);
    }
  });
});
