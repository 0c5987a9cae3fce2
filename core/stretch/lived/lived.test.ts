import { describe, expect, test } from 'vitest';
import { fromKgPerM3, fromLitre } from '../../units.ts';
import type { Steel } from '../../steel/steel.ts';
import type { Duty, Head, Tank } from '../../tank/tank.ts';
import { forecast } from '../forecast.ts';
import { pumpedFor } from '../growth.ts';
import { airCompliance, STEEL_EXPANSION, waterCompliance, waterExpansion } from '../water.ts';
import { type Act, advance, burst, justFilled, type Lived, livedTank } from './lived.ts';
import { filledAgain } from './before.ts';
import { truthBetween, truthOf } from './truth.ts';

const steel: Steel = {
  young: 200000,
  poisson: 0.3,
  density: fromKgPerM3(7900),
  flow: { law: 'ludwigson', K: 1380, n: 0.49, k1: 5.3, k2: -21 },
  biaxialFactor: 1,
  rate: { on: 'yield', perEfold: 2.7, reference: 1e-4 },
};
const head: Head = { shape: { kind: 'semi-ellipsoidal', depth: 131 }, wall: 2.3, straightFlange: 0, steel };
const tank: Tank = {
  name: 'that lives',
  insideDiameter: 540,
  length: 610,
  courses: [{ length: 610, wall: 1.9, steel }],
  heads: { top: head, bottom: head },
  girthSeams: [],
  baffles: [],
  skirts: [],
  girths: [
    { name: 'low', at: 190 },
    { name: 'high', at: 430 },
  ],
  openings: [],
  water: { temperature: 14, trappedAir: fromLitre(0.35) },
};
const shell = { elements: 60, layers: 5 } as const;
const coarse = { elements: 20, layers: 3 } as const;
const flow = fromLitre(1.1) / 60;
const pump = (upTo: number, seconds: number): Act => ({ does: 'pump', flow, upTo, seconds });

const lived = livedTank(tank, { shell });
const upTo = (pressure: number, from: Lived = justFilled(lived), on = lived): Lived => {
  let now = from;
  while (now.walk.now.pressure < pressure * (1 - 1e-6)) now = advance(on, now, pump(pressure, 1));
  return now;
};
const stretched = upTo(2.4);

describe('the living tank against the forecast, which steps along another path', () => {
  const duty: Duty = {
    workingPressure: 1.6,
    stretchFactor: 1.5,
    pump: flow,
    holds: [{ pressure: 2.4, time: 1800, valve: 'open' }],
  };
  const foreseen = forecast(tank, duty, { shell, until: 0.09 });

  test('arrives with the same girths and litres', () => {
    const [now, then] = [truthOf(lived, stretched), foreseen.arrived];
    // Up to a second of the hold is in it, and backward Euler of other steps: some 1e-4 of growth, half a percent of water.
    expect(now.growth).toBeCloseTo(then?.largest.growth ?? NaN, 4);
    expect(now.drawn / (then?.pumped.all ?? NaN)).toBeCloseTo(1, 2);
  });

  test('takes the time that the pump needs for its litres', () => {
    expect(stretched.seconds * flow).toBeCloseTo(stretched.drawn, -4.3);
  });

  test('creeps through a hold as the forecast does', () => {
    const held = truthOf(lived, advance(lived, stretched, pump(2.4, 1800)));
    const crept = held.growth - truthOf(lived, stretched).growth;
    const then = (foreseen.held?.largest.growth ?? NaN) - (foreseen.arrived?.largest.growth ?? NaN);
    expect(then).toBeGreaterThan(5e-4);
    // Both by backward Euler in steps that lengthen by 12 %: within one percent of each other.
    expect(crept / then).toBeCloseTo(1, 1.7);
  });
});

test('water is kept: what was drawn and not lost is growth, compression and air', () => {
  const leaking: Lived = { ...stretched, leak: 700 };
  for (const now of [
    stretched,
    advance(lived, leaking, pump(2.4, 120)),
    advance(lived, leaking, { does: 'rest', seconds: 90 }),
  ]) {
    const { room, pressure } = truthOf(lived, now);
    const needed = pumpedFor(lived.datum, room, pressure).all;
    // A step takes the inside to follow the line: 1e-5 of the litres.
    expect(needed / (now.drawn - now.lost)).toBeCloseTo(1, 4);
  }
});

test('with the valve shut a leak takes the pressure down by its water over wall, water and air', () => {
  const sound = advance(lived, stretched, pump(2.4, 7200));
  const before = truthOf(lived, sound);
  const after = truthOf(lived, advance(lived, { ...sound, leak: 90 }, { does: 'rest', seconds: 30 }));
  const springs = (before.room - after.room) / (before.pressure - after.pressure);
  const give =
    waterCompliance(lived.datum.volume, 2.4, 14) + airCompliance(tank.water.trappedAir, 2.4) + springs;
  expect(after.lost).toBeGreaterThan(4000);
  expect((before.pressure - after.pressure) * give).toBeCloseTo(after.lost, -2.5);
});

test('sun on a shut tank first widens its wall and lowers the pressure; in time the water warms and drives it up', () => {
  const sunny = livedTank(tank, { shell, weather: () => ({ air: 14, sun: 400, wind: 5 }) });
  const from = upTo(0.5, justFilled(sunny), sunny);
  const before = truthOf(sunny, from);
  const changeAfter = (seconds: number): number => {
    const after = truthOf(sunny, advance(sunny, from, { does: 'rest', seconds }));
    const rise = after.pressure - before.pressure;
    const springs = (after.room - before.room) / rise;
    const give =
      waterCompliance(lived.datum.volume, 0.5, 14) + airCompliance(tank.water.trappedAir, 0.5) + springs;
    const { volume } = lived.datum;
    const middle = 0.5 * (before.water + after.water);
    // Air at 0.5 MPa is 0.04 % of the volume and warms by a hundredth of a part: nothing here.
    const pushed =
      volume * waterExpansion(middle) * (after.water - before.water) -
      3 * STEEL_EXPANSION * volume * (after.wall - before.wall);
    // The air gives less as the pressure rises: a twentieth at 1 bar more.
    if (Math.abs(pushed) > 2000) expect((rise * give) / pushed).toBeCloseTo(1, 0.9);
    return rise;
  };
  expect(changeAfter(60)).toBeLessThan(0);
  expect(changeAfter(3600)).toBeGreaterThan(0.1);
});

test('a released tank keeps its growth and yields anew only near the pressure it has seen', () => {
  let now = stretched;
  while (now.walk.now.pressure > 1e-3)
    now = advance(lived, now, { does: 'bleed', seconds: 20, opening: 15e3 });
  const left = truthOf(lived, now).growth;
  expect(left).toBeGreaterThan(0.005);
  const again = truthOf(lived, upTo(2.2, now));
  expect(again.growth).toBeLessThan(truthOf(lived, stretched).growth);
  expect(again.growth - left).toBeLessThan(0.0025);
});

test('a tank that was stretched on an earlier day is elastic up to the pressure it has seen, and yields beyond', () => {
  const again = filledAgain(lived, 2.4, flow);
  const zero = truthOf(lived, again);
  expect(again.seconds).toBe(0);
  expect(zero.drawn).toBe(0);
  expect(zero.pressure).toBeLessThan(2e-3);
  expect(zero.growth).toBeGreaterThan(0.005);
  const grown = (bar: number, from: Lived): number =>
    truthOf(lived, upTo(bar / 10, from)).growth - truthOf(lived, from).growth;
  // 18 to 21 bar take as much as 3 to 6 do; as welded they take several times more.
  const slope = (low: number, from: Lived): number => grown(low + 3, from) - grown(low, from);
  expect(slope(18, again) / slope(3, again)).toBeCloseTo(1, 1);
  expect(slope(18, justFilled(lived)) / slope(3, justFilled(lived))).toBeGreaterThan(4);
  // Beyond what it has seen it goes on where it was.
  expect(truthOf(lived, upTo(2.7, again)).growth).toBeCloseTo(truthOf(lived, upTo(2.7)).growth, 3);
});

test('a weak long seam bursts the tank under a pump that does not stop, and its clock goes on', () => {
  const weak = livedTank({ ...tank, longSeam: { width: 6, strength: 0.62 } }, { shell: coarse });
  const now = advance(weak, justFilled(weak), pump(9, 20_000));
  expect(now.burst?.why).toBe('seam');
  expect(now.seconds).toBe(20_000);
  expect(truthOf(weak, now).pressure).toBe(0);
});

test('without a seam it is the plate that ends it, at several times the growth of the stretch', () => {
  const strong = livedTank(tank, { shell: coarse });
  const now = advance(strong, justFilled(strong), pump(9, 40_000));
  expect(['local necking', 'no balance']).toContain(now.burst?.why);
  expect(now.burst?.growth).toBeGreaterThan(0.15);
});

test('a state is never written into, so that a day can be played twice from the same moment', () => {
  const once = truthOf(lived, advance(lived, stretched, pump(2.6, 60)));
  const twice = truthOf(lived, advance(lived, stretched, pump(2.6, 60)));
  expect(twice).toEqual(once);
  expect(truthOf(lived, stretched).pressure).toBeCloseTo(2.4, 6);
});

test('how often one looks does not change what happens, also where the pump arrives', () => {
  const from = upTo(2.2);
  const once = truthOf(lived, advance(lived, from, pump(2.5, 300)));
  let now = from;
  for (let i = 0; i < 150; i++) now = advance(lived, now, pump(2.5, 2));
  // Backward Euler in steps of 2 s against steps of up to 60 s: 6e-4 of the water.
  expect(truthOf(lived, now).growth).toBeCloseTo(once.growth, 4);
  expect(now.drawn / once.drawn).toBeCloseTo(1, 2.7);
});

test('the trapped air is taken up by the water while it stands under pressure', () => {
  const thirsty = livedTank(tank, { shell, dissolves: 1e-4 });
  const now = advance(thirsty, upTo(1.2, justFilled(thirsty), thirsty), pump(1.2, 1000));
  expect(now.air).toBeLessThan(0.9 * tank.water.trappedAir);
});

test('a burst that is ordered ends the pressure, not the growth', () => {
  const now = burst(lived, stretched, 'ordered');
  expect(truthOf(lived, now).pressure).toBe(0);
  expect(now.burst?.pressure).toBeCloseTo(2.4, 6);
});

test('between two moments truth goes straight', () => {
  const [a, b] = [truthOf(lived, stretched), truthOf(lived, advance(lived, stretched, pump(2.5, 40)))];
  const middle = truthBetween(a, b, a.seconds + 10);
  expect(middle.pressure).toBeCloseTo(0.75 * a.pressure + 0.25 * b.pressure, 12);
  expect(middle.girths[1]).toBeCloseTo(0.75 * a.girths[1] + 0.25 * b.girths[1], 9);
});
