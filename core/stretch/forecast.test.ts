import { describe, expect, test } from 'vitest';
import { CREEPING, EVEN, EVERYTHING, PLATE } from '../shell/specimen.ts';
import type { Duty, Tank } from '../tank/tank.ts';
import { type Forecast, forecast, type ForecastOrders, GivenUp } from './forecast.ts';
import { forecastToGrowth } from './target.ts';

const COARSE = { shell: { elements: 40, layers: 5 } } as const;
const run = (tank: Tank, duty?: Duty, more: ForecastOrders = {}): Forecast =>
  forecast(tank, duty, { ...COARSE, ...more });
const duty = (working: number, holds: Duty['holds'] = []): Duty => ({
  workingPressure: working,
  stretchFactor: 1.5,
  holds,
});
const codes = (result: Forecast): string[] => result.remarks.map(({ code }) => code);
const creeping: Tank = { ...EVEN, courses: [{ length: 617, wall: 2.1, steel: CREEPING }] };

test('a target under first yield is met, not passed, and what is left is nothing', () => {
  const whole = run(EVEN);
  const target = 0.4 * (whole.firstYield?.pressure ?? Number.NaN);
  const result = run(EVEN, undefined, { target });
  expect(result.arrived?.pressure).toBeCloseTo(target, 8);
  // mm³ of a tank of 1e8.
  expect(Math.abs(result.released?.left.growth ?? Number.NaN)).toBeLessThan(10);
  expect(result.maximum?.pressure).toBeCloseTo(whole.maximum?.pressure ?? Number.NaN, 2);
  expect(result.firstYield?.pressure).toBeCloseTo(whole.firstYield?.pressure ?? Number.NaN, 2);
});

test('holds come in rising order at their own pressures, under first yield as well', () => {
  const holds = [2.7, 0.5, 3.3].map((pressure) => ({ pressure, time: 120, valve: 'open' as const }));
  const result = run(creeping, duty(2.2, holds));
  const held = result.path.filter(({ phase }) => phase === 'hold').map((m) => m.pressure.toFixed(6));
  expect([...new Set(held)].map(Number)).toEqual([0.5, 2.7, 3.3]);
  const times = result.path.filter(({ phase }) => phase !== 'release').map((m) => m.time);
  expect(times).toEqual(times.toSorted((a, b) => a - b));
  expect(result.held?.largest.growth).toBeGreaterThan(result.arrived?.largest.growth ?? Number.NaN);
});

test('without duty and target nothing is released and the path runs to its end', () => {
  const result = run(EVEN);
  expect([result.arrived, result.released, result.unstretched]).toEqual([undefined, undefined, undefined]);
  expect(result.maximum).toBeDefined();
  expect(codes(result)).toEqual([]);
});

test('a target over the maximum is not reached, and the remark says where it ends', () => {
  const result = run(EVEN, undefined, { target: 9 });
  expect([result.arrived, result.released]).toEqual([undefined, undefined]);
  expect(codes(result)).toEqual(['bursts before target']);
  expect(result.maximum?.pressure).toBeLessThan(9);
});

test('a hold at the target that cannot stand gives way, and nothing is released', () => {
  const target = 0.9995 * Math.max(...run(creeping).path.map((m) => m.pressure));
  const result = run(creeping, duty(target / 1.5, [{ pressure: target, time: 36_000, valve: 'open' }]));
  expect(result.arrived?.pressure).toBeCloseTo(target, 8);
  expect([result.held, result.released]).toEqual([undefined, undefined]);
  expect(codes(result)).toContain('gives way in hold');
  expect(codes(result)).toContain('bursts before target');
});

test('no unstretched wall is given where no wall would carry the pressure', () => {
  expect(run(EVEN, duty(0.9)).unstretched?.wall).toBeGreaterThan(0);
  expect(run(EVEN, duty(400)).unstretched).toBeUndefined();
});

describe('a flat head', () => {
  const flat = (wall: number): Tank => ({
    ...EVEN,
    heads: { ...EVEN.heads, top: { shape: { kind: 'flat' }, wall, straightFlange: 0, steel: PLATE } },
  });

  test('of sheet ends the path where the plate dishes', () => {
    const result = run(flat(3.1), undefined, { target: 2 });
    // 6.51 Y t² / (4 a²) with Y at 0.2 % of the plate's curve.
    const Y = 1330 * 0.0191 ** 0.46;
    const limit = (6.51 * Y * 3.1 ** 2) / (4 * 215.5 ** 2);
    expect(result.remarks).toMatchObject([{ code: 'flat head', end: 'top' }]);
    expect(Math.max(...result.path.map((m) => m.pressure))).toBeCloseTo(limit, 6);
    expect(result.arrived).toBeUndefined();
  });

  test('thick enough is stretched like any other, and the remark names where it would dish', () => {
    const result = run(flat(24), undefined, { target: 2.6 });
    expect(result.arrived?.pressure).toBeCloseTo(2.6, 8);
    expect(codes(result)).toEqual(['flat head']);
  });
});

describe('heads as they come from the former', () => {
  const heads = (change: object): Tank => ({
    ...EVEN,
    heads: { top: { ...EVEN.heads.top, ...change }, bottom: { ...EVEN.heads.bottom, ...change } },
  });

  test('hardened by forming they yield later', () => {
    const [soft, hard] = [EVEN, heads({ formingStrain: 0.09 })].map((tank) => run(tank));
    expect(soft.firstYield?.at.part).toBe('bottom head');
    expect(hard.firstYield?.pressure).toBeGreaterThan(1.1 * (soft.firstYield?.pressure ?? Number.NaN));
    // Their forming strain is not counted as yield of the barrel.
    expect(hard.barrelYield).toBeCloseTo(soft.barrelYield ?? Number.NaN, 1);
  });

  test('measured thinner, the head rises more', () => {
    const [even, thin] = [EVEN, heads({ measuredWalls: [1.3, 1.4, 1.6, 1.7] })].map((tank) =>
      run(tank, undefined, { target: 2.8 }),
    );
    expect(thin.arrived?.rise).toBeGreaterThan(1.05 * (even.arrived?.rise ?? Number.NaN));
    expect(thin.mass).toBeLessThan(even.mass);
  });
});

test('a soft long seam is strained more than its plate, and the remark says by how much', () => {
  const result = run({ ...EVEN, longSeam: { width: 11, strength: 0.93 } }, undefined, { target: 3.2 });
  expect(result.seam?.strain).toBeGreaterThan((result.seam?.plate ?? Number.NaN) + 0.002);
  expect(result.seam?.use).toBeLessThan(1);
  expect(codes(result)).toContain('seam strain');
});

test('a baffle takes its metal from the water and holds the wall beside it', () => {
  const ring = { at: 308.5, width: 47, thickness: 1.6, steel: PLATE };
  const [bare, ringed] = [EVEN, { ...EVEN, baffles: [ring] }].map((tank) =>
    run(tank, undefined, { target: 2.9 }),
  );
  const metal = Math.PI * (215.5 ** 2 - 168.5 ** 2) * 1.6;
  // A mesh of chords moves the whole volume by 1e-5 of itself.
  expect(Math.abs((bare.datum.volume - ringed.datum.volume) / metal - 1)).toBeLessThan(0.05);
  expect(ringed.arrived?.girths[0].growth).toBeLessThan(0.5 * (bare.arrived?.girths[0].growth ?? Number.NaN));
});

test('asked to stop, it gives up; asked to end at a growth, it ends there', () => {
  expect(() => run(EVEN, undefined, { progress: (done) => done > 0.05 })).toThrow(GivenUp);
  const result = run(EVEN, undefined, { until: 0.03 });
  expect(result.path.at(-1)?.largest.growth).toBeGreaterThanOrEqual(0.03);
  expect(result.path.at(-2)?.largest.growth).toBeLessThan(0.03);
});

test('everything at once ends whole, in numbers', () => {
  const result = run(EVERYTHING, duty(1.7, [{ pressure: 2, time: 300, valve: 'shut' }]));
  for (const m of result.path)
    expect(Number.isFinite(m.pressure + m.growth + m.rise + m.thinnest + m.pumped.all)).toBe(true);
  expect(result.released).toBeDefined();
});

describe('a growth that is asked', () => {
  test.each([
    ['under pressure', false],
    ['left', true],
  ])('is met to 0.001 % %s', (_, left) => {
    const answer = forecastToGrowth(EVEN, undefined, { growth: 0.037, left }, COARSE);
    expect(answer.kind).toBe('released');
    const { released, arrived } = answer.forecast;
    const reached = (left ? released?.left : arrived)?.largest.growth ?? Number.NaN;
    expect(Math.abs(reached - 0.037)).toBeLessThan(1e-5);
  });

  test('beyond the maximum is refused with the path to its end', () => {
    const answer = forecastToGrowth(EVEN, undefined, { growth: 2, left: false }, COARSE);
    expect(answer.kind).toBe('bursts before');
    expect(answer.forecast.maximum).toBeDefined();
    expect(answer.forecast.target).toBeUndefined();
    expect(answer.forecast.remarks).toMatchObject([{ code: 'growth not reached', asked: 2 }]);
  });
});
