import { ellipsoid, type Head, type Tank, torisphere } from '@hoopwright/core/tank';
import { expect, test } from 'vitest';
import { formedWall } from './formed.ts';
import { depthOf, wallOf, type WallPiece } from './wall.ts';

const steel = {
  young: 200e3,
  poisson: 0.3,
  density: 7.9e-9,
  flow: { law: 'swift', K: 1350, n: 0.45, e0: 0.0155 },
  biaxialFactor: 1,
} as const;

const head = (shape: Head['shape'], more: Partial<Head> = {}): Head => ({
  shape,
  wall: 3,
  straightFlange: 0,
  steel,
  ...more,
});

const tankWith = (bottom: Head, top: Head = bottom): Tank => ({
  name: 'a tank',
  insideDiameter: 600,
  length: 700,
  courses: [{ length: 700, wall: 2, steel }],
  heads: { top, bottom },
  girthSeams: [],
  baffles: [],
  skirts: [],
  girths: [],
  openings: [],
  water: { temperature: 15, trappedAir: 0 },
});

/** Volume inside the contour, by cones between its points. */
function insideVolume(pieces: readonly WallPiece[]): number {
  const points = pieces.flatMap((piece) => piece.points);
  return points.slice(1).reduce((sum, b, i) => {
    const a = points[i];
    return sum + (Math.PI / 3) * (b.z - a.z) * (a.r * a.r + a.r * b.r + b.r * b.r);
  }, 0);
}

const BARREL = Math.PI * 300 ** 2 * 700;

test('the drawn inside contour of a tank encloses what its closed forms say', () => {
  // Chords cut corners: 48 to a curve leave 0.1 % out.
  const dished = tankWith(head({ kind: 'torispherical', crownRadius: 484.8, knuckleRadius: 93.3 }));
  const tori = torisphere(600, 484.8, 93.3);
  expect(insideVolume(wallOf(dished)) / (BARREL + 2 * tori.volume)).toBeCloseTo(1, 3);
  const half = tankWith(head({ kind: 'semi-ellipsoidal', depth: 150 }), head({ kind: 'hemispherical' }));
  const both = ellipsoid(600, 150).volume + ellipsoid(600, 300).volume;
  expect(insideVolume(wallOf(half)) / (BARREL + both)).toBeCloseTo(1, 3);
});

test('the depth of a dished head is that of its closed form', () => {
  const shape = { kind: 'torispherical', crownRadius: 484.8, knuckleRadius: 93.3 } as const;
  expect(depthOf(head(shape), 600)).toBeCloseTo(torisphere(600, 484.8, 93.3).depth, 9);
});

test('a cone with a knuckle runs smoothly into its cap and into the barrel', () => {
  const cone = head({ kind: 'conical', halfAngle: Math.PI / 6, knuckleRadius: 50 });
  const [bottom] = wallOf(tankWith(cone));
  bottom.points.slice(1).forEach((b, i) => {
    const a = bottom.points[i];
    expect(a.nr * b.nr + a.nz * b.nz).toBeGreaterThan(0.99);
    expect(b.z).toBeGreaterThan(a.z - 1e-9);
    expect(b.r).toBeGreaterThan(a.r - 1e-9);
  });
  expect(bottom.points[0].r).toBeCloseTo(0, 9);
});

test('a boss is a thick piece of its own, flush inside, as wide as stated', () => {
  const pieces = wallOf(
    tankWith(head({ kind: 'semi-ellipsoidal', depth: 150 }, { boss: { diameter: 90, thickness: 12 } })),
  );
  expect(pieces.map(({ kind }) => kind)).toEqual(['thick', 'head', 'course', 'head', 'thick']);
  const [boss, dish] = pieces;
  expect(boss.points[boss.points.length - 1]).toMatchObject({ r: 45, wall: 12 });
  expect(dish.points[0]).toMatchObject({ r: 45, wall: 3, z: boss.points[boss.points.length - 1].z });
});

test('a straight flange lies within the length, with the wall of its head', () => {
  const flanged = head({ kind: 'semi-ellipsoidal', depth: 150 }, { straightFlange: 25 });
  const pieces = wallOf(tankWith(flanged));
  const course = pieces.find(({ kind }) => kind === 'course');
  expect([course?.points[0].z, course?.points[course.points.length - 1].z]).toEqual([25, 675]);
  expect(pieces[0].points[pieces[0].points.length - 1]).toMatchObject({ z: 25, r: 300, wall: 3 });
});

test('a wall carried along by a profile that swells by 1 % grows by as much as is asked', () => {
  const pieces = wallOf(tankWith(head({ kind: 'hemispherical' })));
  const zero = { inside: 0, mid: 0, outside: 0 };
  const profile = Array.from({ length: 200 }, (_, i) => {
    // Mid-surface of a capsule, walked by its angle; the whole swells about mid-height.
    const z0 = -301 + (1302 * i) / 199;
    const out = z0 < 0 ? -z0 : z0 > 700 ? z0 - 700 : 0;
    const r0 = Math.sqrt(Math.max(301 ** 2 - out ** 2, 1));
    const swell = (x: number): number => 1.01 * x;
    return {
      part: 'barrel',
      r0,
      z0,
      r: swell(r0),
      z: 350 + swell(z0 - 350),
      wall: 2,
      wall0: 2,
      hoop: zero,
      meridional: zero,
      plastic: zero,
    };
  });
  const middle = (times: number): number => {
    const course = formedWall(pieces, profile, times).find(({ kind }) => kind === 'course');
    return course?.points[Math.floor(course.points.length / 2)].r ?? 0;
  };
  expect(middle(1)).toBeCloseTo(300 + 3.01, 6);
  expect(middle(5)).toBeCloseTo(300 + 5 * 3.01, 6);
});
