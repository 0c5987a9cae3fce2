import { expect, test } from 'vitest';
import { flowOf } from '../../steel/flow.ts';
import { metalOf } from '../../steel/plane.ts';
import type { Steel } from '../../steel/steel.ts';
import type { SteelDraw } from '../../steel/belief/draw.ts';
import type { Tank } from '../../tank/tank.ts';
import { arrival, creepFor, settle } from '../thin/creep.ts';
import { longCylinder } from '../thin/vessel.ts';
import { creep } from './creep.ts';
import { elasticPerStress, growthAt, pressureAt, type QuickPath, valueAt } from './path.ts';
import { thinTable } from './thin.ts';

const plate: Steel = {
  grade: '1.4307',
  young: 198_000,
  poisson: 0.29,
  density: 7.9e-9,
  biaxialFactor: 1,
  flow: { law: 'swift', K: 1350, n: 0.45, e0: 0.0155 },
};
const draw: SteelDraw = {
  factors: [],
  flow: plate.flow,
  biaxialFactor: 1.03,
  rate: { on: 'yield', perEfold: 4, reference: 1e-4 },
  wallFactor: 1,
  seamStrength: 1,
  coldWork: 0,
};
const WALL = 1.9;
const head = {
  shape: { kind: 'semi-ellipsoidal', depth: 131 },
  wall: WALL,
  straightFlange: 0,
  steel: plate,
} as const;
const tank: Tank = {
  name: 'a long cylinder',
  insideDiameter: 530,
  length: 640,
  courses: [{ length: 640, wall: WALL, steel: plate }],
  heads: { top: head, bottom: head },
  girthSeams: [],
  baffles: [],
  skirts: [],
  girths: [],
  openings: [],
  water: { temperature: 14, trappedAir: 2e5 },
};
/** The quick tank of a long cylinder is that cylinder: fine enough that nothing is left of the table. */
const growth = Float64Array.from({ length: 2000 }, (_, k) => 1e-3 * 250 ** (k / 1999));
const path: QuickPath = {
  growth,
  ...thinTable(tank, plate, draw, growth),
  girths: [],
  elastic: elasticPerStress(plate),
  maximum: Infinity,
  firstYield: 0,
  creep: { growth: 1, volume: 1, girths: [] },
};
const flow = flowOf(draw.flow, draw.biaxialFactor);
const vessel = longCylinder(metalOf(plate.young, plate.poisson, flow, draw.rate), 265 + WALL / 2, WALL);
/** Arrival at a growth that rises by 4e-5 a second; the closed form takes logarithmic strain and its rate. */
const RATE = 4e-5;
const arrived = (at: number) => arrival(vessel, Math.log1p(at), RATE / (1 + at));

test.each([0.02, 0.12])(
  'at %f growth it carries what the closed form of the long cylinder carries there',
  (at) => {
    const { pressure } = arrived(at);
    expect(Math.abs(pressureAt(path, draw, at, RATE) / pressure - 1)).toBeLessThan(1e-4);
    expect(Math.abs((growthAt(path, draw, pressure, RATE) ?? 0) / at - 1)).toBeLessThan(1e-3);
  },
);

// The table of the cylinder is off by up to 1e-4 of pressure, and at 12 % growth that is 0.5 % of an hour's creep.
test.each([0.02, 0.12])(
  'from %f growth it creeps as the closed form does, for a time and until it has settled',
  (at) => {
    const start = arrived(at);
    const from = { growth: at, pressure: start.pressure };
    const gained = (hoop: number): number => Math.expm1(hoop) - at;
    const held = creep(path, draw, from, 1800, 0);
    expect(
      Math.abs(((held?.growth ?? 0) - at) / gained(creepFor(vessel, start, 1800).state.hoop) - 1),
    ).toBeLessThan(0.01);
    const settled = 1e-3 / 3600;
    const end = creep(path, draw, from, 1e6, settled);
    const theirs = settle(vessel, start, settled / (1 + (end?.growth ?? 0)));
    expect(Math.abs((end?.time ?? 0) / theirs.time - 1)).toBeLessThan(0.02);
  },
);

test('a tank that is still elastic stands still in a hold, however often it is held', () => {
  const elastic = path.growth[path.plastic.findIndex((plastic) => plastic > 0) - 1];
  for (const share of [0.3, 0.6, 1]) {
    const at = share * elastic;
    const from = { growth: at, pressure: valueAt(path.growth, path.pressure, at) };
    expect(creep(path, draw, from, 600, 0)).toEqual({ growth: at, time: 600, rate: 0 });
    expect(creep(path, draw, from, 600, 1e-3 / 3600)).toEqual({ growth: at, time: 0, rate: 0 });
  }
});

test.each([2e-5, 8e-5, 3e-4])(
  'held twice at any pressure, arrived at %f a second, it never shrinks and creeps less the second time',
  (rate) => {
    const highest = Math.max(...path.pressure);
    for (let pressure = 0.3 * highest; pressure < 0.93 * highest; pressure += 0.003 * highest) {
      const met = growthAt(path, draw, pressure, rate) ?? 0;
      const first = creep(path, draw, { growth: met, pressure }, 600, 0);
      const second = creep(path, draw, { growth: first?.growth ?? 0, pressure }, 600, 0);
      const [once, twice] = [(first?.growth ?? 0) - met, (second?.growth ?? 0) - (first?.growth ?? 0)];
      expect(once, `${pressure} MPa, ${met}`).toBeGreaterThanOrEqual(0);
      expect(twice, `${pressure} MPa, ${met}`).toBeGreaterThanOrEqual(0);
      expect(twice, `${pressure} MPa, ${met}`).toBeLessThanOrEqual(once);
    }
  },
);

test('held far under what it has crept past, a tank that yielded stands to the end of the hold', () => {
  const low = 0.5 * valueAt(path.growth, path.pressure, 0.03);
  const end = creep(path, draw, { growth: 0.03, pressure: low }, 600, 0);
  expect(end?.time).toBe(600);
  expect(end?.rate).toBe(0);
  expect(end?.growth).toBeCloseTo(0.03, 8);
});
